/**
 * Widths of letters in font sizes, on the wide side of the common sans-serif faces, so that what fits by this
 * estimate fits on any machine.
 */
const letterWidths: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[ijl.,:;'|!·°]/, 0.32],
  [/[frtI()[\]\- /"*]/, 0.42],
  [/[cksvxyzJ]/, 0.6],
  [/[MW@%mw—…]/, 0.95],
  [/[A-ZÄÖÜ&±+=<>×→]/, 0.76],
  [/[ -ɏ–²³]/, 0.65],
];
const widest = 1.05;
const boldFactor = 1.12;

/** How wide a line of text is at a font size, never less than it will be. */
export function textWidthMm(text: string, sizeMm: number, bold = false): number {
  let widths = 0;
  for (const letter of text) widths += letterWidths.find(([letters]) => letters.test(letter))?.[1] ?? widest;
  return widths * sizeMm * (bold ? boldFactor : 1);
}

/** The text cut to a width, with an ellipsis where something is left out. */
export function fitText(text: string, sizeMm: number, widthMm: number, bold = false): string {
  if (textWidthMm(text, sizeMm, bold) <= widthMm) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidthMm(`${letters.join('')}…`, sizeMm, bold) > widthMm) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** The text broken between words into lines no wider than a width; a word too long for a line is cut. */
export function wrapText(text: string, sizeMm: number, widthMm: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidthMm(longer, sizeMm, bold) > widthMm) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line].map((text) => fitText(text, sizeMm, widthMm, bold));
}
