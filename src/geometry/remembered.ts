/**
 * Remembers what was worked out of an object under a key, for as long as the object is in use; the latest `most` keys of
 * each, so that what is asked along a drag does not pile up.
 */
export function remembered<Value>(most: number): (of: object, key: string, workOut: () => Value) => Value {
  const known = new WeakMap<object, Map<string, Value>>();
  return (of, key, workOut) => {
    const own = known.get(of) ?? new Map<string, Value>();
    known.set(of, own);
    const value = own.has(key) ? (own.get(key) as Value) : workOut();
    // asked for again it is the latest
    own.delete(key);
    own.set(key, value);
    const [oldest = key] = own.keys();
    if (own.size > most) own.delete(oldest);
    return value;
  };
}

const numbers = new WeakMap<object, number>();
let count = 0;

/** A number of its own for each object, for keys. */
export function numberOf(object: object): number {
  const known = numbers.get(object);
  if (known !== undefined) return known;
  count += 1;
  numbers.set(object, count);
  return count;
}
