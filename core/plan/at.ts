/** An entry of a list that must be there: a number out of range is a programmer's mistake. Example: at(["a"], 0) is "a". */
export function at<Entry>(list: readonly Entry[], index: number): Entry {
  const entry = list[index];
  if (entry === undefined) throw new RangeError(`no such entry: ${index} of ${list.length}`);
  return entry;
}
