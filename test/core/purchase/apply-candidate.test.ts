import { describe, expect, test } from "vitest";
import { applyCandidates } from "../../../core/purchase/apply-candidate.ts";
import { idleCandidates } from "../../../core/purchase/idle-candidate.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aMachine, aPart, aShop } from "../../fixtures/a-route.ts";
import { aCandidate } from "../../fixtures/some-weeks.ts";

function changed(...changes: PurchaseChange[]): ReturnType<typeof applyCandidates> {
  return applyCandidates(aShop(), [aCandidate({ changes })]);
}

const alike: PurchaseChange = { kind: "add-alike", alike: "F1", id: "F2", name: "Second" };

const approve = (mostH?: number): PurchaseChange => ({
  kind: "approve-unattended",
  machineId: "F1",
  ...(mostH === undefined ? {} : { mostH }),
});

describe("a shop with candidates", () => {
  test("has one more machine like another, with nothing loaded and never out of service", () => {
    const { machines } = changed(alike);
    const [first] = aShop().machines;
    expect(machines).toHaveLength(2);
    expect(machines[1]).toEqual({ ...first, id: "F2", name: "Second", loaded: null, outOfService: [] });
  });

  test("has a machine given in full, served by the people it names", () => {
    const machine = aMachine({ id: "P9", calendarId: "night" });
    expect(changed({ kind: "add-machine", machine }).machines.map(({ id }) => id)).toEqual(["F1", "P9"]);
    expect(changed({ ...alike, calendarId: "night" }).machines[1]?.calendarId).toBe("night");
  });

  test("loses a sold machine even where its copy is bought by the same or an earlier candidate", () => {
    const sale: PurchaseChange = { kind: "sell-machine", machineId: "F1", proceeds: 500 };
    expect(changed(sale, alike).machines.map(({ id }) => id)).toEqual(["F2"]);
    const both = [aCandidate({ changes: [sale] }), aCandidate({ id: "other", changes: [alike] })];
    expect(applyCandidates(aShop(), both)).toEqual(applyCandidates(aShop(), both.toReversed()));
  });

  test("has an added shift beside the others", () => {
    const shift = { days: [6], start: "06:00", end: "12:00", operators: 1 };
    const { calendars } = changed({
      kind: "add-shift",
      calendarId: "day",
      shift,
      premiumPct: 25,
      otherWorkPct: 0,
    });
    expect(calendars[0]?.shifts).toEqual([...(aShop().calendars[0]?.shifts ?? []), shift]);
  });

  test("has an approval for as long as it says, an earlier limit being replaced", () => {
    const limited = aShop({ machines: [aMachine({ unattended: true, unattendedMaxH: 4 })] });
    const after = (change: PurchaseChange): object =>
      applyCandidates(limited, [aCandidate({ changes: [change] })]).machines[0] ?? {};
    expect(after(approve(10))).toMatchObject({ unattended: true, unattendedMaxH: 10 });
    expect(after(approve())).not.toHaveProperty("unattendedMaxH");
  });

  test("may have a part made elsewhere", () => {
    const { parts } = changed({ kind: "buy-out", partId: "clip", pricePerPiece: 3, leadTimeDays: 6 });
    expect(parts[0]?.buyOut).toEqual({ pricePerPiece: 3, leadTimeDays: 6 });
  });

  test("is as it was where a change names what is not there", () => {
    const shift = { days: [6], start: "06:00", end: "12:00", operators: 1 };
    expect(
      changed(
        { ...alike, alike: "X" },
        { kind: "sell-machine", machineId: "X", proceeds: 1 },
        { kind: "approve-unattended", machineId: "X" },
        { kind: "add-shift", calendarId: "X", shift, premiumPct: 0, otherWorkPct: 0 },
        { kind: "buy-out", partId: "X", pricePerPiece: 1, leadTimeDays: 1 },
      ),
    ).toEqual(aShop());
  });
});

describe("a candidate that can make nothing", () => {
  const tiny = aMachine({ id: "tiny", envelopeMm: { x: 15, y: 15, z: 15 } });
  const adds = (machine: typeof tiny): PurchaseChange => ({ kind: "add-machine", machine });

  test("is told, with what that is worth", () => {
    const [finding, ...more] = idleCandidates(
      aShop(),
      aCase({ candidates: [aCandidate({ changes: [adds(tiny)] })] }),
    );
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: "warning", code: "makes-nothing" });
    expect(finding?.sentence).toContain("worth minus what is paid for it");
  });

  test("is none that also adds a machine that can, or does something else", () => {
    const withGood = aCandidate({ changes: [adds(tiny), alike] });
    const withShift = aCandidate({
      changes: [adds(tiny), { kind: "buy-out", partId: "clip", pricePerPiece: 1, leadTimeDays: 1 }],
    });
    expect(idleCandidates(aShop(), aCase({ candidates: [withGood, withShift] }))).toEqual([]);
  });

  test("is judged by the parts that are ordered alone", () => {
    const shop = aShop({ parts: [aPart(), aPart({ id: "unordered" })] });
    const demand = {
      kind: "typed" as const,
      lines: [{ partId: "unordered", ordersPerWeek: 1, quantity: 1 }],
    };
    const candidates = [aCandidate({ changes: [alike] })];
    expect(idleCandidates(shop, aCase({ candidates, demand }))).toEqual([]);
    expect(idleCandidates(shop, aCase({ candidates, demand: { kind: "rows", rows: [] } }))).toHaveLength(1);
  });
});
