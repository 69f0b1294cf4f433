import { describe, expect, test } from "vitest";
import { makeFormat } from "../../../renderer/format/format.ts";
import { createDirectionColumns } from "../../../renderer/pages/parts/direction-list.tsx";
import { newPart, partOfBody } from "../../../renderer/store/part-of-body.ts";
import { partWays } from "../../../renderer/worker/part-ways.ts";
import { BRITISH_RULES } from "../format-rules.ts";
import { aWorks } from "../../fixtures/a-works.ts";

const WORKS = aWorks();
const FORMAT = makeFormat(BRITISH_RULES);
const GEOMETRY = WORKS.parts[0]!.geometry;

describe("ways to make a part", () => {
  const ways = partWays(WORKS, WORKS.parts[0]!.id, 10);

  test("answer every kind of machine with every nozzle and feedstock: a route with its cost, or reasons", () => {
    const kinds = new Set(ways.map(({ machineIds }) => machineIds.join()));
    expect([...kinds].join().split(",").toSorted()).toEqual(WORKS.machines.map(({ id }) => id).toSorted());
    for (const kind of kinds) {
      const own = ways.filter(({ machineIds }) => machineIds.join() === kind);
      const machine = WORKS.machines.find(({ id }) => id === own[0]?.machineIds[0])!;
      expect(own.length).toBe(machine.nozzles.length * WORKS.feedstocks.length);
    }
    for (const { routes, reasons } of ways) expect(routes.length > 0).toBe(reasons.length === 0);
  });

  test("stand the cheapest on top, and cost by copies reaches from the fewest to the most that go", () => {
    const costs = ways.flatMap(({ routes: [best] }) => (best ? [best.costPerCopy] : []));
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    expect(costs.length).toBeGreaterThan(0);
    for (const { routes } of ways) {
      for (const { route, builds } of routes) {
        expect(builds[0]?.copies).toBe(route.copiesMin);
        expect(builds.at(-1)?.copies).toBe(route.copiesMax);
      }
    }
  });
});

describe("a direction of a part's own", () => {
  const [label, x, y] = createDirectionColumns(
    () => FORMAT,
    () => ["tilted", "leaning"],
  );
  const row = { label: "tilted", x: 0, y: 1, z: 0 };

  test.each([
    ["x", "be none of x, y and z"],
    ["-up", "begin with neither a sign nor a blank"],
    ["leaning", "another direction is called leaning already"],
    ["", "must have 1 to 64 characters"],
  ])("is not called %j, and a sentence says why", (text, words) => {
    expect(label?.put(row, text)).toEqual({ unfit: expect.stringContaining(words) });
  });

  test("takes a new name, its own again, and numbers below 0", () => {
    expect(label?.put(row, "on its back")).toEqual({ ...row, label: "on its back" });
    expect(label?.put(row, "tilted")).toEqual(row);
    expect(x?.put(row, "-2.5")).toEqual({ ...row, x: -2.5 });
  });

  test("must point somewhere", () => {
    expect(y?.put(row, "0")).toEqual({ unfit: expect.stringContaining("points nowhere") });
    expect(y?.put({ ...row, x: 1 }, "0")).toEqual({ ...row, x: 1, y: 0 });
  });
});

test("a part is named after its file, and never takes the id of another", () => {
  expect(partOfBody("Clip tray (2).stl", GEOMETRY, new Set())).toMatchObject({
    id: "clip-tray-2",
    name: "Clip tray (2)",
  });
  expect(partOfBody("clip.STL", GEOMETRY, new Set(["clip"])).id).toBe("clip-2");
  expect(partOfBody("鍵.3mf", GEOMETRY, new Set()).id).toBe("part");
  expect(newPart(new Set(["part-1"])).id).toBe("part-2");
});
