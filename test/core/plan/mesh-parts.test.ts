import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../core/plan/check/check-plan.ts";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { csvFiles } from "../../../core/report/csv.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Part } from "../../../core/shop/part.ts";
import { aMeasuredPart, aStanding, boxStandings, rectangle } from "../../fixtures/a-measured-part.ts";
import { anOrder, aShop } from "../../fixtures/a-route.ts";
import { planWithSteps } from "../../fixtures/plan-with-steps.ts";

/** A beam that only lies across the diagonal, upside down, since it hangs over otherwise. */
const standings = boxStandings(300, 20, 20)
  .slice(0, 2)
  .map((standing) => ({ ...standing, overhangAreaMm2: standing.up === "z" ? 900 : 0 }));
const beam = partOf("beam", aMeasuredPart({ supportAllowed: false }, standings), 120_000, [300, 20, 20]);
const tilted = partOf(
  "wedge",
  aMeasuredPart(
    {
      orientations: ["tilted"],
      buildDirections: [{ label: "tilted", x: 1, y: 0, z: 1 }],
    },
    [aStanding({ up: "tilted", vector: { x: 1, y: 0, z: 1 }, hullMm: rectangle(50, 30) })],
  ),
  24_000,
  [40, 30, 20],
);

function partOf(
  id: string,
  part: Part,
  volumeMm3: number,
  [x, y, z]: readonly [number, number, number],
): Part {
  const measures = { ...part.geometry.measures, volumeMm3, boxMm: { x, y, z } };
  return { ...part, id, name: id, geometry: { ...part.geometry, measures } as Part["geometry"] };
}

const shop = aShop({
  parts: [beam, tilted],
  orders: [anOrder({ partId: "beam", quantity: 2 }), anOrder({ id: "O-2", partId: "wedge", quantity: 3 })],
});
const request = { fromMin: minuteOf("2026-11-30T06:00", shop.timeZone), days: 7 };
const plan = await planWithSteps({ shop, request }, 50);

function withItem(change: (item: { rotationDeg?: number | undefined }) => object): PlanDocument {
  const builds = plan.builds.map((build) => ({
    ...build,
    items: build.items.map((item) => ({ ...item, ...change(item) })),
  }));
  return { ...plan, builds } as PlanDocument;
}

function codes(changed: PlanDocument): Set<string> {
  return new Set(checkPlan(shop, changed).map(({ code }) => code));
}

describe("a week with parts from meshes", () => {
  test("plans every copy, and the check agrees from the document alone", () => {
    expect(plan.unplanned).toEqual([]);
    expect(checkPlan(JSON.parse(JSON.stringify(shop)), plan)).toEqual([]);
  });

  test("says which way is up and how far each copy is turned", () => {
    const builds = plan.builds.filter(({ items }) => items.some(({ orderId }) => orderId === "O-1"));
    expect(new Set(builds.map(({ orientation }) => orientation))).toEqual(new Set(["-z"]));
    for (const { items } of builds) expect(items[0]?.rotationDeg).toBeGreaterThan(0);
    const texts = plan.tasks.filter(({ kind }) => kind === "setUp").map(({ text }) => text);
    expect(texts.join()).toMatch(/z down, turned \d+(\.\d)?° about the vertical/);
    expect(texts.join()).toMatch(/tilted up(,|$)/);
  });

  test("gives the direction to spreadsheets in words that none of them runs", () => {
    const rows = csvFiles(shop, plan).find(({ name }) => name === "builds.csv")?.text ?? "";
    expect(rows).toContain(",z down,");
    expect(rows).toContain(",tilted,");
    expect(rows).not.toContain("-z");
  });

  test("is found out when a copy is turned otherwise, or stands a way that has no route", () => {
    expect(codes(withItem(({ rotationDeg }) => (rotationDeg ? { rotationDeg: 12 } : {})))).toEqual(
      new Set(["turn"]),
    );
    const upright = { ...plan, builds: plan.builds.map((build) => ({ ...build, orientation: "z" })) };
    expect(codes(upright)).toContain("route");
  });
});
