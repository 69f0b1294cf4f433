import type { Machine } from "../../shop/machine.ts";

/**
 * Groups machines that differ in nothing but id, name, what is loaded and times out of service. Returns machine indices by
 * group, in order of first appearance. Example: three machines of which the first and last are alike: [[0, 2], [1]].
 */
export function groupAlike(machines: readonly Machine[]): number[][] {
  const groups = new Map<string, number[]>();
  machines.forEach((machine, index) => {
    const key = likenessKey(machine);
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  });
  return [...groups.values()];
}

function likenessKey(machine: Machine): string {
  const { id: _id, name: _name, loaded: _loaded, outOfService: _outOfService, ...rest } = machine;
  return JSON.stringify(rest, sortedKeys);
}

function sortedKeys(_key: string, value: unknown): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
