/** Letters that Windows code page 1252 lacks, and what stands for them. */
const instead: Readonly<Record<string, string>> = {
  '→': '->',
  '←': '<-',
  '≥': '>=',
  '≤': '<=',
  '−': '-',
  '⌀': 'Ø',
  '≈': '~',
  '′': "'",
  '″': '"',
};

/** Letters of code page 1252 beyond Latin-1, which standard PDF fonts show as well. */
const beyondLatin = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ');

/** A text in the letters a standard PDF font can show; what has no stand-in becomes a question mark. */
export const winAnsi = (text: string): string =>
  [...text.normalize('NFC')].map((letter) => (isShown(letter) ? letter : (instead[letter] ?? '?'))).join('');

function isShown(letter: string): boolean {
  const code = letter.codePointAt(0) as number;
  return (code >= 0x20 && code < 0x7f) || (code >= 0xa0 && code <= 0xff) || beyondLatin.has(letter);
}
