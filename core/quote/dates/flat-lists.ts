/** Where each of several lists begins when they are laid end to end, and where the last one ends. Example: lists of 2 and 3 entries give 0, 2, 5. */
export function flatFrom(lists: readonly (readonly unknown[])[]): Int32Array {
  const from = new Int32Array(lists.length + 1);
  lists.forEach((list, index) => {
    from[index + 1] = from[index]! + list.length;
  });
  return from;
}

/** One number of each entry of several lists, laid end to end. */
export function flatOf<Entry>(
  lists: readonly (readonly Entry[])[],
  valueOf: (entry: Entry) => number,
): Float64Array {
  return Float64Array.from(lists.flat(), valueOf);
}
