const widest = 110;

/** An object as a file a person can read: two blanks a step, whatever fits on one line on one line. */
export const jsonText = (value: object): string => `${written(value, 0, 0)}\n`;

/** A value as text; its own lines are indented by `indent`, and it starts `column` letters into its first. */
function written(value: unknown, indent: number, column: number): string {
  const short = onOneLine(value);
  if (column + short.length <= widest || typeof value !== 'object' || value === null) return short;
  const step = indent + 2;
  const items = Array.isArray(value)
    ? value.map((item) => written(item, step, step))
    : entriesOf(value).map(([key, item]) => `${JSON.stringify(key)}: ${written(item, step, step + key.length + 4)}`);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  const inner = `\n${' '.repeat(step)}`;
  return `${open}${inner}${items.join(`,${inner}`)}\n${' '.repeat(indent)}${close}`;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const items = entriesOf(value).map(([key, item]) => `${JSON.stringify(key)}: ${onOneLine(item)}`);
  return items.length === 0 ? '{}' : `{ ${items.join(', ')} }`;
}

/** A key without a value is not written, as JSON has none. */
const entriesOf = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, item]) => item !== undefined);
