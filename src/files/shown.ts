const mostLetters = 60;

/** A value of a file in a few words, whatever it is: for messages, so never longer than a line. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return JSON.stringify(shortened(value));
  if (Array.isArray(value)) return shownList(value);
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

function shownList(list: readonly unknown[]): string {
  const plain = list.length <= 4 && list.every((item) => typeof item !== 'object');
  return plain ? `[${list.map(shown).join(', ')}]` : `a list of ${list.length}`;
}

const shortened = (text: string): string => (text.length <= mostLetters ? text : `${text.slice(0, mostLetters)}…`);
