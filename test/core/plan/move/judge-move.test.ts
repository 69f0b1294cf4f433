import { describe, expect, test } from "vitest";
import { firstPlace } from "../../../../core/plan/move/first-place.ts";
import { judgeMove, type MoveVerdict } from "../../../../core/plan/move/judge-move.ts";
import { type MoveDesk, openMoves } from "../../../../core/plan/move/move-desk.ts";
import { type MoveWay, waysOn } from "../../../../core/plan/move/move-ways.ts";
import { minuteOf } from "../../../../core/shop/instants.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../../../fixtures/a-checked-week.ts";

const SHOP = aCheckedShop();
const PLAN = writtenPlan(SHOP, WEEK_SKETCH);
const PLANNED = PLAN.builds.filter(({ state }) => state === "planned");

function deskOf(buildId: string, shop: Shop = SHOP): MoveDesk {
  return openMoves(shop, PLAN, PLAN.builds, buildId);
}

function wayTo(desk: MoveDesk, machineId: string): MoveWay {
  const ways = waysOn(desk, machineId).flatMap((answer) => (answer.status === "way" ? [answer.way] : []));
  const way = ways.find(({ feedstockId }) => feedstockId === desk.build.feedstockId);
  if (!way) throw new Error(`no way on ${machineId}`);
  return way;
}

function judged(buildId: string, machineId: string, instant: string, shop?: Shop): MoveVerdict {
  const desk = deskOf(buildId, shop);
  return judgeMove(desk, wayTo(desk, machineId), minuteOf(instant, SHOP.timeZone));
}

describe("a build judged where it stands", () => {
  test.each(PLANNED.map(({ id }) => id))("%s is allowed, costs the same and keeps its times", (id) => {
    const build = PLANNED.find((candidate) => candidate.id === id);
    if (!build) throw new Error(id);
    const verdict = judged(id, build.machineId, build.setUpStart);
    expect(verdict.refusals).toEqual([]);
    expect(verdict.extraCost).toBeCloseTo(0, 6);
    const { printStart, printEnd, changeoverMin, items } = verdict.build;
    expect({ printStart, printEnd, changeoverMin, items }).toEqual({
      printStart: build.printStart,
      printEnd: build.printEnd,
      changeoverMin: build.changeoverMin,
      items: build.items,
    });
  });
});

test("a build that stands as nobody would make it any more costs what the plan said, not nothing", () => {
  const [build] = PLANNED;
  if (!build) throw new Error("the week has no builds");
  const builds = PLAN.builds.map((other) => (other === build ? { ...other, orientation: "own" } : other));
  const desk = openMoves(SHOP, PLAN, builds, build.id);
  const verdict = judgeMove(desk, wayTo(desk, build.machineId), minuteOf(build.setUpStart, SHOP.timeZone));
  expect(verdict.extraCost).toBeCloseTo(0, 6);
});

describe("a build that cannot stand there", () => {
  const first = PLANNED[0];
  if (!first) throw new Error("the week has no builds");
  const elsewhere = PLANNED.find((build) => build.machineId === first.machineId && build !== first);

  test("because another build stands on the machine then, which is named", () => {
    if (!elsewhere) throw new Error("one build alone");
    expect(judged(first.id, first.machineId, elsewhere.printStart).refusals.join(" ")).toContain(
      elsewhere.id,
    );
  });

  test("because nobody is there to set it up", () => {
    const sentences = judged(first.id, first.machineId, "2026-12-01T03:00:00+01:00").refusals;
    expect(sentences.join(" ")).toContain("not inside one shift");
  });

  test("because the machine is out of service", () => {
    const outOfService = [
      { from: "2026-12-14T00:00:00+01:00", to: "2026-12-15T00:00:00+01:00", reason: "service" },
    ];
    const machines = SHOP.machines.map((machine) => ({ ...machine, outOfService }));
    const at = "2026-12-14T07:00:00+01:00";
    expect(judged(first.id, first.machineId, at).refusals).toEqual([]);
    expect(judged(first.id, first.machineId, at, { ...SHOP, machines }).refusals.join(" ")).toContain(
      "out of service",
    );
  });

  test("because its order is pinned to another machine", () => {
    const pinnedId = PLANNED.find((build) => build.items.some(({ orderId }) => orderId === "O-4"))?.id ?? "";
    const sentences = judged(pinnedId, "F2", "2026-12-14T07:00:00+01:00").refusals;
    expect(sentences.join(" ")).toContain("Order O-4 is pinned to F1");
  });
});

describe("a build put off by two weeks", () => {
  const build = PLANNED.find(({ items }) => items.length === 1 && items[0]?.orderId === "O-1") ?? PLANNED[0];
  const at = "2026-12-14T07:00:00+01:00";
  const verdict = judged(build?.id ?? "", build?.machineId ?? "", at);

  test("is late by the time from its due date to when it is taken off", () => {
    const dues =
      build?.items.map(({ orderId }) => SHOP.orders.find(({ id }) => id === orderId)?.dueAt ?? "") ?? [];
    const dueMin = Math.min(...dues.map((due) => minuteOf(due, SHOP.timeZone)));
    expect(verdict.lateMin).toBe(minuteOf(verdict.build.unloadEnd, SHOP.timeZone) - dueMin);
  });

  test("costs more, and names the planned builds before it", () => {
    expect(verdict.extraCost).toBeGreaterThan(0);
    const before = PLANNED.filter(({ id, machineId }) => machineId === build?.machineId && id !== build?.id);
    expect(verdict.plannedBefore.toSorted()).toEqual(before.map(({ id }) => id).toSorted());
  });
});

describe("the first place", () => {
  test("is never later than where the build stands, and allowed", () => {
    for (const { id, machineId, setUpStart } of PLANNED) {
      const desk = deskOf(id);
      const found = firstPlace(desk, wayTo(desk, machineId), desk.source.startMin);
      expect(found?.refusals).toEqual([]);
      expect(desk.source.minute(found?.build.setUpStart ?? "")).toBeLessThanOrEqual(
        desk.source.minute(setUpStart),
      );
    }
  });
});

test("a feedstock that cannot make the part is answered with the reason", () => {
  const feedstocks = SHOP.feedstocks.map((feedstock) =>
    feedstock.id === "petg-grey" ? { ...feedstock, nozzleC: { min: 900, max: 950 } } : feedstock,
  );
  const desk = deskOf(PLANNED[0]?.id ?? "", { ...SHOP, feedstocks });
  const refused = waysOn(desk, "F1").find(
    (answer) => answer.status === "refused" && answer.feedstockId === "petg-grey",
  );
  expect(refused?.status === "refused" && refused.reasons.join(" ")).toContain("900");
});
