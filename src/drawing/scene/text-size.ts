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

/** The width of a letter in font sizes. */
const letterEms = (letter: string): number => letterWidths.find(([letters]) => letters.test(letter))?.[1] ?? widest;

export type WidthOfText = (text: string, sizeMm: number, bold?: boolean) => number;

/** How wide a line of text is at a font size, never less than it will be. */
export function textWidthMm(text: string, sizeMm: number, bold = false): number {
  let ems = 0;
  for (const letter of text) ems += letterEms(letter);
  return ems * sizeMm * (bold ? boldFactor : 1);
}

/** Whether a letter is drawn as one with the letter before it: an accent, a part of a picture made of several. */
const isOneWith = (before: string, letter: string): boolean =>
  before === '\u200d' || /[\p{M}\p{Emoji_Modifier}\u200d]/u.test(letter);

/** The text cut to a width, with an ellipsis where something is left out; of what is left out nothing is looked at. */
export function fitText(text: string, sizeMm: number, widthMm: number, bold = false): string {
  const fits = (ems: number): boolean => ems * sizeMm * (bold ? boldFactor : 1) <= widthMm;
  let ems = 0;
  let end = 0;
  let cutAt = 0;
  let before = '';
  for (const letter of text) {
    if (fits(ems + letterEms('…')) && !isOneWith(before, letter)) cutAt = end;
    ems += letterEms(letter);
    end += letter.length;
    before = letter;
    if (!fits(ems)) return `${text.slice(0, cutAt).trimEnd()}…`;
  }
  return text;
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
