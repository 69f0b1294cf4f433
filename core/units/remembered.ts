/** A function that works each answer out once and then remembers it. Example: asked twice for one key, `of` runs once. */
export function remembered<K, T>(of: (key: K) => T): (key: K) => T {
  const known = new Map<K, T>();
  return (key) => {
    const value = known.get(key) ?? of(key);
    known.set(key, value);
    return value;
  };
}
