/** Widest line of a text: fits a terminal, and a printed page in a fixed face. */
export const textColumns = 92;

export const indent = '  ';

/** Rows as left-aligned columns two spaces apart, each line indented. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  return rows.map(
    (row) =>
      indent +
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
  );
}

/** A space at which a line may break: not before a unit. */
const breakable = / (?!(?:mm|in|mm²|in²|cm³|in³|g)(?![a-z]))/;

/** A sentence broken between words to `textColumns`, each line indented by `margin`. */
export function wrapped(text: string, margin = indent): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(breakable)) {
    if (line !== '' && margin.length + line.length + 1 + word.length > textColumns) {
      lines.push(margin + line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, margin + line];
}

/** Sentences as a list, hanging by a dash. */
export const listed = (texts: readonly string[]): string[] =>
  texts.flatMap((text) =>
    wrapped(text, `${indent}${indent}`).map((line, i) => (i === 0 ? `${indent}- ${line.trim()}` : line)),
  );

/** Lines broken for a terminal as one running line again. */
export const unwrapped = (lines: readonly string[]): string => lines.join(' ').replace(/\s+/g, ' ').trim();

/** A paragraph under its heading; nothing at all where it has no lines. */
export const paragraph = (heading: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', heading, ...lines];

/** `a`, `a and b`, `a, b and c`. */
export function inWords(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** `1 hole`, `3 holes`. */
export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** Words that begin a sentence. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
