/** Things by a key, in the order in which they come. Example: [1, 2, 3] by odd or even gives odd: [1, 3], even: [2]. */
export function groupBy<Key, Thing>(
  things: readonly Thing[],
  keyOf: (thing: Thing) => Key,
): Map<Key, Thing[]> {
  const groups = new Map<Key, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
