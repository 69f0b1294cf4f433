import { expect, test } from "vitest";
import { checkShop } from "../../core/shop/check-shop.ts";
import { readShop } from "../../core/shop/read-shop.ts";
import { shopSchema } from "../../core/shop/shop.ts";
import { usableShop } from "../../core/shop/usable-shop.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import { aBuild } from "../fixtures/a-build.ts";
import { aMachine, anOrder, aShop } from "../fixtures/a-route.ts";

/** What people and broken programs put into files. */
const RUBBISH: readonly unknown[] = [
  null,
  0,
  -1,
  1e308,
  0.5,
  "",
  "abc",
  "2026-02-30T08:00",
  "2026-03-29T02:30",
  "9999-12-31T23:59Z",
  "0000-01-01T00:00",
  true,
  [],
  {},
  [null],
  { id: "O-1" },
  "x".repeat(100),
];

const WORKS = aShop({
  machines: [aMachine(), aMachine({ id: "F2", unattended: true })],
  orders: [anOrder(), anOrder({ id: "O-2", pinned: { machineId: "F2" } })],
  builds: [aBuild(), aBuild({ id: "B-2", machineId: "F2", state: "done", actual: { goodCopies: 2 } })],
});

test("one to four random values spoilt: a shop or a sentence, never a crash, and what is left is a valid shop (1000 files)", () => {
  const random = seededRandom(21);
  let shops = 0;
  for (let round = 0; round < 1000; round += 1) {
    const document: unknown = structuredClone(WORKS);
    for (let slips = 1 + Math.floor(random() * 4); slips > 0; slips -= 1) spoil(document, random);
    const read = readShop(JSON.stringify(document));
    if (!read.shop) {
      expect(read.findings.length).toBeGreaterThan(0);
      continue;
    }
    const findings = [...read.findings, ...checkShop(read.shop)];
    for (const { sentence } of findings) expect(sentence).toMatch(/^[A-Z][^\n]*[.]$/);
    const { shop, setAside } = usableShop(read.shop, findings);
    if (!shop) continue;
    shops += 1;
    expect(shopSchema.safeParse(shop).success).toBe(true);
    const errors = checkShop(shop).filter(
      ({ severity, code }) => severity === "error" && code !== "empty-list",
    );
    expect(errors).toEqual([]);
    if (setAside.length === 0) expect(shop.orders.length).toBeGreaterThanOrEqual(read.shop.orders.length);
  }
  expect(shops).toBeGreaterThan(200);
});

test("random cuts and slips in the text of a file give a sentence, never a crash (500 files)", () => {
  const random = seededRandom(22);
  const text = JSON.stringify(WORKS, null, 1);
  for (let round = 0; round < 500; round += 1) {
    const from = Math.floor(random() * text.length);
    const cut = text.slice(0, from) + text.slice(from + Math.floor(random() * 5));
    const { shop, findings } = readShop(random() < 0.3 ? text.slice(0, from) : cut);
    expect(shop !== null || findings.length > 0).toBe(true);
  }
});

/** Puts rubbish in place of one value somewhere in a document, or takes it out. */
function spoil(node: unknown, random: Random): void {
  if (node === null || typeof node !== "object") return;
  const record = node as Record<string, unknown>;
  const keys = Object.keys(record);
  const key = keys[Math.floor(random() * keys.length)];
  if (key === undefined) return;
  const child = record[key];
  if (child !== null && typeof child === "object" && random() < 0.9) spoil(child, random);
  else if (random() < 0.15) delete record[key];
  else record[key] = structuredClone(RUBBISH[Math.floor(random() * RUBBISH.length)]);
}
