// Looking into a value whose schema may not hold: what is not there reads as undefined or as an empty list.

/** The value an object holds of its own under a key. */
export const fieldOf = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;

export const asList = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

export const listOf = (value: unknown, key: string): readonly unknown[] => asList(fieldOf(value, key));

export const textOf = (value: unknown, key: string): string | undefined => {
  const text = fieldOf(value, key);
  return typeof text === 'string' ? text : undefined;
};
