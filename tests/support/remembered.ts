/** Makes a thing once for each key: things are readonly, so tests can share them. */
export function remembered<K, T>(make: (key: K) => T): (key: K) => T {
  const made = new Map<K, T>();
  return (key) => {
    const before = made.get(key);
    if (before !== undefined) return before;
    const thing = make(key);
    made.set(key, thing);
    return thing;
  };
}
