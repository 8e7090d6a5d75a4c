import Papa from 'papaparse';
import type { Finding, Reading } from '../../files/finding.ts';
import { suggesting } from '../../files/nearest.ts';
import { shown } from '../../files/shown.ts';

/** A row of a table: its cells by column name, blank ones left out, and the line it starts on. */
export interface Row {
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

/** A table with a header row; `decimalComma` says how its numbers may be written. */
export interface Table {
  readonly columns: ReadonlySet<string>;
  /** The unit written in brackets behind a column's name, such as `x [mm]`; null where there is none. */
  readonly unit: string | null;
  readonly decimalComma: boolean;
  readonly rows: readonly Row[];
}

/**
 * Reads a table parted by tabs, semicolons or commas, whichever its header row holds first in this order. Columns go
 * by name, in any order and letter case; one that is not in `known` is a finding with the nearest that is.
 */
export function readTable(file: string, text: string, known: readonly string[]): Reading<Table> {
  const delimiter = delimiterOf(text);
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, header: false, skipEmptyLines: false });
  const [fault] = errors;
  if (fault !== undefined) return refused(file, (fault.row ?? 0) + 1, fault.message, 'cells with their quotes closed');
  const [header, ...rest] = withLines(data);
  if (header === undefined || header.cells.every((cell) => cell.trim() === '')) {
    return refused(file, 1, 'no header row', `a row of column names first: ${known.join(', ')}`);
  }
  const columns = header.cells.map(columnOf);
  const findings = columnFindings(file, columns, known);
  if (findings.length > 0) return { ok: false, findings };
  const names = columns.map(({ name }) => name);
  const tooLong = rest.find(({ cells }) => cells.slice(names.length).some((cell) => cell.trim() !== ''));
  if (tooLong !== undefined) {
    return refused(file, tooLong.line, `${tooLong.cells.length} cells`, `${names.length} as in the header row`);
  }
  const rows = rest.map(({ line, cells }) => ({ line, cells: cellsByName(names, cells) }));
  const unit = columns.find((column) => column.unit !== null)?.unit ?? null;
  const filled = rows.filter(({ cells }) => cells.size > 0);
  return { ok: true, value: { columns: new Set(names), unit, decimalComma: delimiter !== ',', rows: filled } };
}

const refused = (file: string, line: number, found: string, expected: string): Reading<never> => ({
  ok: false,
  findings: [{ file, at: `line ${line}`, found, expected }],
});

function delimiterOf(text: string): string {
  const header = text.split(/\r\n|\n|\r/).find((line) => line.trim() !== '') ?? '';
  return ['\t', ';'].find((delimiter) => header.includes(delimiter)) ?? ',';
}

interface LineOfCells {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Rows with the line each starts on, blank ones before the header left out; a quoted cell may run over lines. */
function withLines(rows: readonly (readonly string[])[]): LineOfCells[] {
  let line = 1;
  const lined = rows.map((cells) => {
    const start = line;
    line += 1 + cells.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
    return { line: start, cells };
  });
  const header = lined.findIndex(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  return header < 0 ? [] : lined.slice(header);
}

interface Column {
  readonly name: string;
  readonly unit: string | null;
}

/** `X [mm]` is the column `x` in mm. */
function columnOf(cell: string): Column {
  const [, name = cell, unit = null] = /^(.*?)\s*[[(]\s*(\w+)\s*[\])]\s*$/.exec(cell.trim()) ?? [];
  return {
    name: name
      .trim()
      .toLowerCase()
      .replace(/[\s_-]+/g, ' '),
    unit,
  };
}

function columnFindings(file: string, columns: readonly Column[], known: readonly string[]): Finding[] {
  const named = columns.filter(({ name }) => name !== '');
  const expected = `one of ${known.join(', ')}`;
  return named.flatMap(({ name }, i): Finding[] => {
    const finding = { file, at: 'line 1', found: `the column ${shown(name)}`, expected };
    if (!known.includes(name)) return [suggesting(finding, name, known)];
    const first = named.findIndex((column) => column.name === name);
    return first === i ? [] : [{ ...finding, found: `the column ${shown(name)} twice`, expected: 'each column once' }];
  });
}

function cellsByName(names: readonly string[], cells: readonly string[]): Map<string, string> {
  const byName = new Map<string, string>();
  cells.forEach((cell, i) => {
    const [name, text] = [names[i] ?? '', cell.trim()];
    if (name !== '' && text !== '') byName.set(name, text);
  });
  return byName;
}
