/** A column of a table: its heading, and what it says of a row. */
export interface CsvColumn<Row> {
  readonly heading: string;
  readonly of: (row: Row) => string;
}

/** A table as CSV (RFC 4180), its headings first. */
export function csvOf<Row>(columns: readonly CsvColumn<Row>[], rows: readonly Row[]): string {
  const lines = [columns.map(({ heading }) => heading), ...rows.map((row) => columns.map(({ of }) => of(row)))];
  return lines.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

/** Quoted where it must be; a name that a spreadsheet would take for a formula is kept a name by an apostrophe. */
function cell(words: string): string {
  const harmless = /^[=+\-@\t\r]/.test(words) && Number.isNaN(Number(words)) ? `'${words}` : words;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
