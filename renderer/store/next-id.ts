/**
 * An id that is not taken, counted on from one like it: its last number goes up, with as many digits.
 * Examples: like "O-099" gives "O-100"; like "clip" gives "clip-2".
 */
export function nextId(like: string, taken: ReadonlySet<string>): string {
  const [, head = `${like}-`, digits = "1", tail = ""] = /^(.*?)(\d+)(\D*)$/.exec(like) ?? [];
  const start = Number(digits.slice(-9));
  const kept = digits.slice(0, -9);
  for (let number = start + 1; ; number += 1) {
    const id = `${head}${kept}${String(number).padStart(digits.length - kept.length, "0")}${tail}`;
    if (!taken.has(id)) return id;
  }
}
