import { expect, test } from "vitest";
import { backupsToDrop } from "../../../electron/store/backups.ts";

const DAY_MS = 86_400_000;
const NOW = Date.parse("2026-11-25T12:00:00.000Z");

/** Ids of backups kept so many ms ago, newest first. */
function idsAgo(agesMs: readonly number[]): string[] {
  return agesMs.map((age) => new Date(NOW - age).toISOString().replaceAll(":", "-"));
}

function keptOf(ids: readonly string[]): string[] {
  const dropped = new Set(backupsToDrop(ids, NOW));
  return ids.filter((id) => !dropped.has(id));
}

test("ten of one day all stay", () => {
  expect(backupsToDrop(idsAgo(minutes(10)), NOW)).toEqual([]);
});

test("of eleven of one day the oldest goes", () => {
  const ids = idsAgo(minutes(11));
  expect(backupsToDrop(ids, NOW)).toEqual([ids[10]]);
});

test("of earlier days the newest of each stays for 14 days, today being the first", () => {
  const daily = Array.from({ length: 20 }, (_, day) => (day + 1) * DAY_MS);
  expect(keptOf(idsAgo([...minutes(10), ...daily]))).toHaveLength(10 + 13);
});

test("of two on an earlier day the older goes", () => {
  const ids = idsAgo([...minutes(10), DAY_MS, DAY_MS + 60_000]);
  expect(backupsToDrop(ids, NOW)).toEqual([ids[11]]);
});

test("ten old ones stay, however old, while there are no newer ones", () => {
  expect(backupsToDrop(idsAgo(minutes(10).map((age) => age + 100 * DAY_MS)), NOW)).toEqual([]);
});

function minutes(count: number): number[] {
  return Array.from({ length: count }, (_, minute) => minute * 60_000);
}
