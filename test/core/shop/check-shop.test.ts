import { describe, expect, test } from "vitest";
import { checkShop } from "../../../core/shop/check-shop.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { Part } from "../../../core/shop/part.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aBuild } from "../../fixtures/a-build.ts";
import {
  aCalendar,
  aCosting,
  aFeedstock,
  aMachine,
  aNozzle,
  anOrder,
  aPart,
  aShop,
} from "../../fixtures/a-route.ts";

/** Findings of the small works with one thing changed, as "severity code where". */
function short(overrides: Partial<Shop>): string[] {
  return checkShop(aShop(overrides)).map(({ severity, code, where }) => `${severity} ${code} ${where}`);
}

function only(overrides: Partial<Shop>): Finding | undefined {
  const findings = checkShop(aShop(overrides));
  expect(findings).toHaveLength(1);
  return findings[0];
}

const machine = (overrides: Parameters<typeof aMachine>[0]) => ({ machines: [aMachine(overrides)] });
const feedstock = (overrides: Parameters<typeof aFeedstock>[0]) => ({
  feedstocks: [aFeedstock(overrides)],
});
const body = (overrides: Partial<Part["geometry"]["measures"]>) => ({
  parts: [
    aPart({ geometry: { kind: "measures", measures: { ...aPart().geometry.measures, ...overrides } } }),
  ],
});
const order = (overrides: Parameters<typeof anOrder>[0]) => ({ orders: [anOrder(overrides)] });
const build = (overrides: Parameters<typeof aBuild>[0]) => ({ builds: [aBuild(overrides)] });
const closed = (from: string, to: string) => ({
  calendars: [aCalendar({ closures: [{ from, to, reason: "" }] })],
});
const out = (from: string, to: string) => machine({ outOfService: [{ from, to, reason: "" }] });
const cut = (zMm: number, areaMm2 = 600) => ({ zMm, areaMm2, perimeterMm: 100, islands: 1 });
const box = (side: number) =>
  body({ boxMm: { x: side, y: side, z: side }, areaMm2: 1e15, volumeMm3: side ** 3 / 2 });
const due = (dueAt: string) => short(order({ releaseAt: "2026-12-01T08:00:00+01:00", dueAt }));
const done = (copies: number, goodCopies?: number) => ({
  builds: [
    aBuild({ copies, state: "done", ...(goodCopies === undefined ? {} : { actual: { goodCopies } }) }),
  ],
});
const later = (setUpStart: string, id = "B-2", machineId = "F1") =>
  aBuild({
    id,
    machineId,
    setUpStart,
    printStart: "2026-11-30T08:00+01:00",
    printEnd: "2026-11-30T09:00+01:00",
    unloadEnd: "2026-11-30T09:05+01:00",
  });

test("a works whose records fit together has no findings", () => {
  expect(checkShop(aShop())).toEqual([]);
});

test("every sentence begins with a capital, ends with a full stop and is one line", () => {
  const shop = aShop({
    timeZone: "Berlin",
    currency: "QQQ",
    machines: [aMachine({ calendarId: "x", unattended: true, hourRate: 0 }), aMachine({ edgeMarginMm: 500 })],
    orders: [anOrder({ partId: "x", quantity: 100_000, dueAt: "2026-02-30T08:00" })],
    builds: [aBuild({ orderId: "x" })],
  });
  const findings = checkShop(shop);
  expect(findings.length).toBeGreaterThan(8);
  for (const { sentence } of findings) expect(sentence).toMatch(/^[A-Z][^\n]+\.$/);
});

test("errors come before warnings, and the order is always the same", () => {
  const shop = aShop({
    orders: [
      anOrder({ quantity: 20_000 }),
      anOrder({ id: "O-2", partId: "x" }),
      anOrder({ id: "O-3", partId: "x" }),
    ],
  });
  const places = checkShop(shop).map(({ where }) => where);
  expect(places).toEqual(["orders/O-2/partId", "orders/O-3/partId", "orders/O-1/quantity"]);
  expect(checkShop(structuredClone(shop))).toEqual(checkShop(shop));
});

describe("the whole", () => {
  test("needs a known time zone", () => {
    expect(short({ timeZone: "Berlin" })).toEqual(["error unknown-time-zone timeZone"]);
  });

  test("warns of a currency that ISO 4217 does not have", () => {
    expect(short({ currency: "QQQ" })).toEqual(["warning unknown-currency currency"]);
    expect(short({ currency: "JPY" })).toEqual([]);
  });

  test("needs machines and feedstocks; without orders there is only nothing to do", () => {
    expect(short({ machines: [] })).toEqual(["error empty-list machines"]);
    expect(short({ feedstocks: [] })).toEqual(["error empty-list feedstocks"]);
    expect(short({ orders: [] })).toEqual(["warning empty-list orders"]);
  });

  test("has each id once in its list; the same id in two lists is nothing to remark", () => {
    expect(short({ orders: [anOrder(), anOrder(), anOrder()] })).toEqual([
      "error duplicate-id orders/O-1/id",
    ]);
    expect(short({ orders: [anOrder({ id: "clip" })] })).toEqual([]);
    expect(short({ calendars: [aCalendar(), aCalendar()] })).toEqual(["error duplicate-id calendars/day/id"]);
    expect(short({ parts: [aPart(), aPart()] })).toEqual(["error duplicate-id parts/clip/id"]);
    expect(short({ feedstocks: [aFeedstock(), aFeedstock()] })).toEqual([
      "error duplicate-id feedstocks/pla-white/id",
    ]);
    expect(short({ machines: [aMachine(), aMachine()] })).toEqual(["error duplicate-id machines/F1/id"]);
  });

  test("warns of money rules that look like slips", () => {
    expect(short({ costing: aCosting({ labourPerH: 0 }) })).toEqual([
      "warning costs-nothing costing/labourPerH",
    ]);
    expect(short({ costing: aCosting({ interestPctPerYear: 30 }) })).toEqual([]);
    expect(short({ costing: aCosting({ interestPctPerYear: 31 }) })).toEqual([
      "warning unusual costing/interestPctPerYear",
    ]);
    expect(short({ costing: aCosting({ overheadPct: 301 }) })).toEqual([
      "warning unusual costing/overheadPct",
    ]);
    expect(short({ costing: aCosting({ marginPct: 95 }) })).toEqual(["warning unusual costing/marginPct"]);
  });
});

describe("calendars", () => {
  const shift = { days: [1, 2], start: "06:00", end: "14:00", operators: 1 };

  test("without staffed time are an error where a machine needs them", () => {
    expect(only({ calendars: [aCalendar({ shifts: [] })] })).toEqual({
      severity: "error",
      code: "no-staffed-time",
      where: "calendars/day/shifts",
      sentence:
        "Calendar day: no staffed time at all, so nobody can set up or unload F1; add a shift with at least one operator.",
    });
    expect(short({ calendars: [aCalendar({ shifts: [{ ...shift, operators: 0 }] })] })).toEqual([
      "error no-staffed-time calendars/day/shifts",
    ]);
    expect(short({ calendars: [aCalendar(), aCalendar({ id: "spare", shifts: [] })] })).toEqual([]);
  });

  test("warn of shifts that overlap and how they are read", () => {
    const shifts = [shift, { ...shift, start: "13:30", end: "22:00" }];
    const finding = only({ calendars: [aCalendar({ shifts })] });
    expect(finding).toMatchObject({ severity: "warning", code: "shifts-overlap" });
    expect(finding?.sentence).toContain("shift 1 (06:00 to 14:00) and shift 2 (13:30 to 22:00) overlap");
  });

  test("warn of a shift that ends when it starts", () => {
    expect(short({ calendars: [aCalendar({ shifts: [{ ...shift, end: "06:00" }] })] })).toEqual([
      "warning shift-all-day calendars/day/shifts",
    ]);
  });

  test("have closed days that exist and end after they start", () => {
    expect(short(closed("2026-12-24", "2026-12-24"))).toEqual([]);
    expect(short(closed("2026-12-24", "2026-12-23"))).toEqual([
      "error ends-before-start calendars/day/closures",
    ]);
    expect(short(closed("2026-02-28", "2026-02-30"))).toEqual(["error no-such-date calendars/day/closures"]);
  });
});

describe("machines", () => {
  test("name a calendar that exists", () => {
    expect(only(machine({ calendarId: "nights" }))?.sentence).toBe(
      "Machine F1: there is no calendar nights; name one that exists.",
    );
  });

  test("warn of loaded feedstock and nozzles that do not exist or do not go in", () => {
    expect(short(machine({ loaded: { feedstockId: "pla-white", nozzleId: "n04" } }))).toEqual([]);
    expect(short(machine({ loaded: { feedstockId: "x", nozzleId: "n04" } }))).toEqual([
      "warning unknown-feedstock machines/F1/loaded",
    ]);
    expect(short(machine({ loaded: { feedstockId: "pla-white", nozzleId: "n9" } }))).toEqual([
      "warning unknown-nozzle machines/F1/loaded",
    ]);
    expect(
      short(machine({ process: "pellet", loaded: { feedstockId: "pla-white", nozzleId: "n04" } })),
    ).toEqual(["warning wrong-form machines/F1/loaded"]);
  });

  test("have something left of the platform within the margin", () => {
    expect(short(machine({ edgeMarginMm: 124 }))).toEqual([]);
    expect(short(machine({ edgeMarginMm: 125 }))).toEqual([
      "error no-platform-left machines/F1/edgeMarginMm",
    ]);
  });

  test("have nozzles whose ranges are the right way round, each with its own id", () => {
    const nozzle = (overrides: Parameters<typeof aNozzle>[0]) => machine({ nozzles: [aNozzle(overrides)] });
    expect(short(nozzle({ beadWidthMm: { min: 0.6, max: 0.5 } }))).toEqual([
      "error min-above-max machines/F1/nozzles",
    ]);
    expect(short(nozzle({ layerHeightMm: { min: 0.3, max: 0.2 } }))).toEqual([
      "error min-above-max machines/F1/nozzles",
    ]);
    expect(short(nozzle({ layerHeightMm: { min: 0.7, max: 0.8 } }))).toEqual([
      "error layer-above-bead machines/F1/nozzles",
    ]);
    expect(short(nozzle({ layerHeightMm: { min: 0.1, max: 0.4 } }))).toEqual([]);
    expect(short(nozzle({ layerHeightMm: { min: 0.1, max: 0.41 } }))).toEqual([
      "warning layer-above-bore machines/F1/nozzles",
    ]);
    expect(short(machine({ nozzles: [aNozzle(), aNozzle()] }))).toEqual([
      "error duplicate-nozzle machines/F1/nozzles",
    ]);
  });

  test("have numbers that can be: unusual ones warn, impossible ones are errors", () => {
    expect(short(machine({ maxSpeedMmPerS: 1000 }))).toEqual([]);
    expect(short(machine({ maxSpeedMmPerS: 1001 }))).toEqual(["warning unusual machines/F1/maxSpeedMmPerS"]);
    expect(only(machine({ maxSpeedMmPerS: 10_000 }))?.sentence).toBe(
      "Machine F1: the fastest speed is 10000 mm/s, possible is 0.1 to 5000 mm/s; correct the number or its unit.",
    );
    expect(short(machine({ timeFactor: 60 }))).toEqual(["error absurd machines/F1/timeFactor"]);
    expect(short(machine({ envelopeMm: { x: 250, y: 250, z: 0.25 } }))).toEqual([
      "error absurd machines/F1/envelopeMm/z",
    ]);
  });

  test("are out of service for some time, from and to dates that exist", () => {
    expect(short(out("2026-12-01T08:00+01:00", "2026-12-01T08:01+01:00"))).toEqual([]);
    expect(short(out("2026-12-01T08:00+01:00", "2026-12-01T08:00+01:00"))).toEqual([
      "error ends-before-start machines/F1/outOfService",
    ]);
    expect(short(out("2026-12-01T08:00+01:00", "2026-12-01T07:30Z"))).toEqual([]);
    expect(short(out("2026-12-32T08:00+01:00", "2027-01-02T08:00+01:00"))).toEqual([
      "error no-such-date machines/F1/outOfService",
    ]);
  });

  test("can be set up within a shift, else nothing is ever planned on them", () => {
    expect(short(machine({ setUpMin: 240 }))).toEqual([]);
    const shifts = [{ days: [1], start: "06:00", end: "08:00", operators: 1 }];
    expect(short({ ...machine({ setUpMin: 121 }), calendars: [aCalendar({ shifts })] })).toEqual([
      "warning no-shift-long-enough machines/F1/setUpMin",
    ]);
    expect(short({ ...machine({ setUpMin: 120 }), calendars: [aCalendar({ shifts })] })).toEqual([]);
  });

  test("that may run unattended bring one caution that says who decides and promises nothing", () => {
    const machines = [
      aMachine({ unattended: true }),
      aMachine({ id: "F2", unattended: true, unattendedMaxH: 12 }),
      aMachine({ id: "F3" }),
    ];
    const finding = only({ machines });
    expect(finding).toMatchObject({ severity: "warning", code: "unattended", where: "machines" });
    expect(finding?.sentence).toMatch(
      /F1 and F2\..*person responsible.*local fire and building codes.*qualified people/,
    );
    expect(finding?.sentence).toMatch(/No longest time is set for F1\.$/);
    expect(finding?.sentence).not.toMatch(/\bsafe\b/);
  });

  test("warn of a limit without approval, a free hour and odd inputs of the rate", () => {
    const inputs = {
      purchasePrice: 10_000,
      residualValue: 0,
      lifeYears: 5,
      floorM2: 2,
      powerKW: 1,
      maintenancePctPerYear: 5,
      plannedHoursPerYear: 8784,
    };
    expect(short(machine({ unattendedMaxH: 10 }))).toEqual(["warning no-effect machines/F1/unattendedMaxH"]);
    expect(short(machine({ hourRate: 0 }))).toEqual(["warning costs-nothing machines/F1/hourRate"]);
    expect(short(machine({ hourRate: inputs }))).toEqual([]);
    expect(short(machine({ hourRate: { ...inputs, plannedHoursPerYear: 8785 } }))).toEqual([
      "error absurd machines/F1/hourRate",
    ]);
    expect(short(machine({ hourRate: { ...inputs, residualValue: 10_001 } }))).toEqual([
      "warning residual-above-purchase machines/F1/hourRate",
    ]);
  });
});

describe("feedstocks", () => {
  test("need a price; a price of 0 warns", () => {
    expect(short(feedstock({ pricePerKg: null }))).toEqual([
      "error missing-price feedstocks/pla-white/pricePerKg",
    ]);
    expect(short(feedstock({ pricePerKg: 0 }))).toEqual([
      "warning costs-nothing feedstocks/pla-white/pricePerKg",
    ]);
  });

  test("have densities of something solid: 50 and 50,000 kg/m3 are slips, 1.24 is g/cm3", () => {
    expect(short(feedstock({ densityKgPerM3: 50 }))).toEqual([
      "error absurd feedstocks/pla-white/densityKgPerM3",
    ]);
    expect(short(feedstock({ densityKgPerM3: 50_000 }))).toEqual([
      "error absurd feedstocks/pla-white/densityKgPerM3",
    ]);
    expect(short(feedstock({ densityKgPerM3: 1.24 }))).toEqual([
      "error absurd feedstocks/pla-white/densityKgPerM3",
    ]);
    expect(short(feedstock({ densityKgPerM3: 699 }))).toEqual([
      "warning unusual feedstocks/pla-white/densityKgPerM3",
    ]);
    expect(short(feedstock({ densityKgPerM3: 700 }))).toEqual([]);
  });

  test("have ranges the right way round", () => {
    expect(short(feedstock({ nozzleC: { min: 230, max: 190 } }))).toEqual([
      "error min-above-max feedstocks/pla-white/nozzleC",
    ]);
    expect(short(feedstock({ minLayerS: 20, maxLayerS: 19 }))).toEqual([
      "error min-above-max feedstocks/pla-white/minLayerS",
    ]);
    expect(short(feedstock({ minLayerS: 20, maxLayerS: 20 }))).toEqual([]);
    expect(short(feedstock({ bondC: 110 }))).toEqual([
      "error no-layer-temperature feedstocks/pla-white/bondC",
    ]);
    expect(short(feedstock({ bondC: 109 }))).toEqual([]);
    expect(short(feedstock({ carryC: 231 }))).toEqual([
      "warning carry-above-nozzle feedstocks/pla-white/carryC",
    ]);
  });

  test("are not dried at no temperature or as hot as the nozzle", () => {
    expect(short(feedstock({ dryC: 0 }))).toEqual([
      "warning no-drying-temperature feedstocks/pla-white/dryC",
    ]);
    expect(short(feedstock({ dryC: 0, dryH: 0 }))).toEqual([]);
    expect(short(feedstock({ dryC: 190 }))).toEqual(
      expect.arrayContaining(["warning dries-too-hot feedstocks/pla-white/dryC"]),
    );
  });

  test("have a heat deflection temperature that can be", () => {
    const properties = aFeedstock().properties;
    const field = "feedstocks/pla-white/properties/heatDeflectionC";
    expect(short(feedstock({ properties: { ...properties, heatDeflectionC: 351 } }))).toEqual([
      `warning unusual ${field}`,
    ]);
    expect(short(feedstock({ properties: { ...properties, heatDeflectionC: 5500 } }))).toEqual([
      `error absurd ${field}`,
    ]);
  });
});

describe("parts", () => {
  const measures = "parts/clip/geometry/measures";

  test("have no more volume than their box", () => {
    expect(short(body({ volumeMm3: 24_000, areaMm2: 5200 }))).toEqual([]);
    expect(short(body({ volumeMm3: 24_100, areaMm2: 5200 }))).toEqual([
      `error volume-above-box ${measures}/volumeMm3`,
    ]);
  });

  test("have no less surface than a ball of their volume (isoperimetric inequality)", () => {
    // A ball of radius 10 mm: V = 4/3 pi r^3 = 4188.79 mm3, A = 4 pi r^2 = 1256.64 mm2.
    const ball = { volumeMm3: 4188.79, boxMm: { x: 20, y: 20, z: 20 } };
    expect(short(body({ ...ball, areaMm2: 1256.64 }))).toEqual([]);
    expect(short(body({ ...ball, areaMm2: 1254 }))).toEqual([
      `error surface-below-sphere ${measures}/areaMm2`,
    ]);
    expect(checkShop(aShop(body({ ...ball, areaMm2: 1254 })))[0]?.sentence).toContain("1257 mm2");
  });

  test("have no more overhang than surface", () => {
    expect(short(body({ overhangAreaMm2: 5200 }))).toEqual([]);
    expect(short(body({ overhangAreaMm2: 5201 }))).toEqual([
      `error overhang-above-surface ${measures}/overhangAreaMm2`,
    ]);
  });

  test("have cuts from the bottom up that lie within the box", () => {
    expect(short(body({ layers: [cut(0), cut(10), cut(20)] }))).toEqual([]);
    expect(short(body({ layers: [cut(10), cut(10)] }))).toEqual([
      `error layers-out-of-order ${measures}/layers`,
    ]);
    expect(short(body({ layers: [cut(10), cut(21)] }))).toEqual([
      `error layer-outside-box ${measures}/layers`,
    ]);
    expect(short(body({ layers: [cut(10, 1300)] }))).toEqual([`error layer-outside-box ${measures}/layers`]);
  });

  test("can be built along some axis that is not the load axis", () => {
    expect(short({ parts: [aPart({ orientations: ["z"], loadAxis: "z" })] })).toEqual([
      "error no-orientation parts/clip/orientations",
    ]);
    expect(short({ parts: [aPart({ orientations: ["z", "x"], loadAxis: "z" })] })).toEqual([]);
    expect(short({ parts: [aPart({ orientations: ["z"] })] })).toEqual([]);
  });

  test("warn where no feedstock is of an accepted family, and of having them made for nothing", () => {
    expect(short({ parts: [aPart({ families: ["PEEK"] })] })).toEqual([
      "warning no-such-family parts/clip/families",
    ]);
    expect(short({ parts: [aPart({ families: ["PEEK", "PLA"] })] })).toEqual([]);
    expect(short({ parts: [aPart({ buyOut: { pricePerPiece: 0, leadTimeDays: 5 } })] })).toEqual([
      "warning costs-nothing parts/clip/buyOut",
    ]);
  });

  test("have sizes of works, not of atoms or ships", () => {
    expect(short(box(20_000))).toEqual([]);
    expect(short(box(20_001))).toEqual([`warning unusual ${measures}/boxMm`]);
    expect(short(box(250_000))).toEqual([`error absurd ${measures}/boxMm`]);
  });
});

describe("orders", () => {
  test("name a part that exists", () => {
    expect(only(order({ partId: "P-9" }))?.sentence).toBe(
      "Order O-1: there is no part P-9; name one that exists or add it.",
    );
  });

  test("are pinned to what exists and goes together", () => {
    const pellets = aFeedstock({ id: "pla-pellets", form: "pellet" });
    expect(short(order({ pinned: { machineId: "F1", feedstockId: "pla-white" } }))).toEqual([]);
    expect(short(order({ pinned: { machineId: "F9" } }))).toEqual([
      "error unknown-machine orders/O-1/pinned/machineId",
    ]);
    expect(short(order({ pinned: { feedstockId: "x" } }))).toEqual([
      "error unknown-feedstock orders/O-1/pinned/feedstockId",
    ]);
    expect(
      short({
        ...order({ pinned: { machineId: "F1", feedstockId: "pla-pellets" } }),
        feedstocks: [aFeedstock(), pellets],
      }),
    ).toEqual(["error wrong-form orders/O-1/pinned"]);
  });

  test("are due on dates that exist", () => {
    expect(only(order({ dueAt: "2026-02-30T08:00:00+01:00" }))?.sentence).toBe(
      "Order O-1: dueAt 2026-02-30T08:00:00+01:00 is no date and time that exists; correct it.",
    );
    expect(short(order({ releaseAt: "2026-11-31T08:00" }))).toEqual([
      "error no-such-date orders/O-1/releaseAt",
    ]);
  });

  test("are due at or after their release, by the instant and not by the text", () => {
    expect(due("2026-12-01T07:59:00+01:00")).toEqual(["error due-before-release orders/O-1/dueAt"]);
    expect(due("2026-12-01T08:00:00+01:00")).toEqual([]);
    expect(due("2026-12-01T07:30:00Z")).toEqual([]);
  });

  test("may be released long ago, but a year far off warns", () => {
    const near = [anOrder(), anOrder({ id: "O-2" }), anOrder({ id: "O-3" })];
    expect(short({ orders: [...near, anOrder({ id: "O-4", releaseAt: "1999-01-01T00:00Z" })] })).toEqual([]);
    expect(short({ orders: [...near, anOrder({ id: "O-4", dueAt: "2036-11-01T00:00Z" })] })).toEqual([]);
    expect(short({ orders: [...near, anOrder({ id: "O-4", dueAt: "2126-12-01T00:00Z" })] })).toEqual([
      "warning far-future orders/O-4/dueAt",
    ]);
    expect(
      short({
        orders: [...near, anOrder({ id: "O-4", releaseAt: "2126-12-01T00:00Z", dueAt: "2126-12-02T00:00Z" })],
      }),
    ).toEqual(["warning far-future orders/O-4/releaseAt"]);
    expect(short(order({ dueAt: "2126-12-01T00:00Z" }))).toEqual(["warning far-future orders/O-1/dueAt"]);
  });

  test("due in the hour that the clocks skip say how it is read", () => {
    const skipped = { releaseAt: "2026-03-01T08:00:00+01:00", dueAt: "2026-03-29T02:30" };
    expect(only(order(skipped))).toEqual({
      severity: "warning",
      code: "local-time-skipped",
      where: "orders/O-1/dueAt",
      sentence:
        "Order O-1: dueAt 2026-03-29T02:30 is skipped when the clocks go forward: read as 2026-03-29T03:30:00+02:00; write it with its offset to be sure.",
    });
    const twice = { releaseAt: "2026-03-01T08:00:00+01:00", dueAt: "2026-10-25T02:30" };
    expect(only(order(twice))?.sentence).toContain("the first is meant, 2026-10-25T02:30:00+02:00");
    expect(short(order({ ...twice, dueAt: "2026-10-25T02:30+01:00" }))).toEqual([]);
  });

  test("of very many copies warn: 10,000 are quiet, 10,001 and 100,000 are not", () => {
    expect(short(order({ quantity: 10_000 }))).toEqual([]);
    expect(short(order({ quantity: 10_001 }))).toEqual(["warning many-copies orders/O-1/quantity"]);
    expect(only(order({ quantity: 100_000 }))?.sentence).toContain("100000 copies are ordered");
  });

  test("for nothing warn", () => {
    expect(short(order({ pricePerPiece: 0 }))).toEqual(["warning costs-nothing orders/O-1/pricePerPiece"]);
  });

  test("that builds of an earlier plan stand for warn once, since they are planned anew", () => {
    const builds = ["B-1", "B-2"].map((id) => aBuild({ id, state: "planned" }));
    expect(only({ builds })?.sentence).toBe(
      "Builds B-1 and B-2: in state planned, so they are planned anew at no cost (moveCostPerBuild in costing is 0); set what must keep its time to committed.",
    );
  });

  test("warn when builds have made all of them or more", () => {
    expect(short(done(9))).toEqual([]);
    expect(short(done(10))).toEqual(["warning all-made orders/O-1/quantity"]);
    expect(short(done(10, 9))).toEqual([]);
    expect(only({ ...order({ quantity: 1 }), ...done(1) })?.sentence).toContain("its only copy is made");
    expect(short(done(11))).toEqual(["warning more-than-ordered orders/O-1/quantity"]);
    expect(short({ builds: [aBuild({ copies: 11, state: "committed" })] })).toEqual([
      "warning more-than-ordered orders/O-1/quantity",
    ]);
    expect(short({ builds: [aBuild({ copies: 11, state: "planned" })] })).toEqual([
      "warning planned-anew builds",
    ]);
    expect(short({ builds: [aBuild({ copies: 11, state: "failed" })] })).toEqual([]);
  });
});

describe("builds", () => {
  test("that are committed name what exists; of finished ones it is history", () => {
    expect(short(build({}))).toEqual([]);
    for (const [state, severity] of [
      ["committed", "error"],
      ["running", "error"],
      ["done", "warning"],
    ] as const) {
      expect(short(build({ state, machineId: "x" }))).toEqual([
        `${severity} unknown-machine builds/B-1/machineId`,
      ]);
      expect(short(build({ state, feedstockId: "x" }))).toEqual([
        `${severity} unknown-feedstock builds/B-1/feedstockId`,
      ]);
      expect(short(build({ state, nozzleId: "x" }))).toEqual([
        `${severity} unknown-nozzle builds/B-1/nozzleId`,
      ]);
      expect(short(build({ state, orderId: "x" }))).toEqual([`${severity} unknown-order builds/B-1/items`]);
    }
  });

  test("take feedstock in the machine's form", () => {
    const pellets = aFeedstock({ id: "pla-pellets", form: "pellet" });
    expect(short({ ...build({ feedstockId: "pla-pellets" }), feedstocks: [aFeedstock(), pellets] })).toEqual([
      "error wrong-form builds/B-1/feedstockId",
    ]);
  });

  test("have times that exist and follow each other", () => {
    expect(short(build({ printEnd: "2026-11-30T05:00:00+01:00" }))).toEqual([
      "error ends-before-start builds/B-1/printEnd",
    ]);
    expect(short(build({ unloadEnd: "2026-11-31T07:00:00+01:00" }))).toEqual([
      "error no-such-date builds/B-1/unloadEnd",
    ]);
    expect(short(build({ state: "done", printEnd: "2026-11-30T05:00:00+01:00" }))).toEqual([
      "warning ends-before-start builds/B-1/printEnd",
    ]);
  });

  test("do not overlap on one machine: the later one is in error, touching is fine", () => {
    expect(short({ builds: [later("2026-11-30T07:14:00+01:00"), aBuild()] })).toEqual([
      "error builds-overlap builds/B-2/setUpStart",
    ]);
    expect(short({ builds: [later("2026-11-30T07:15:00+01:00"), aBuild()] })).toEqual([]);
    expect(
      short({
        machines: [aMachine(), aMachine({ id: "F2" })],
        builds: [aBuild(), later("2026-11-30T07:00+01:00", "B-2", "F2")],
      }),
    ).toEqual([]);
  });

  test("warn where the machine is out of service meanwhile", () => {
    const outOfService = [{ from: "2026-11-30T07:00+01:00", to: "2026-11-30T09:00+01:00", reason: "" }];
    expect(short({ ...build({}), machines: [aMachine({ outOfService })] })).toEqual([
      "warning out-of-service builds/B-1/setUpStart",
    ]);
  });

  test("count no more good and failed copies than they built", () => {
    expect(short(build({ copies: 5, state: "done", actual: { goodCopies: 3, failedCopies: 2 } }))).toEqual(
      [],
    );
    expect(short(build({ copies: 5, state: "done", actual: { goodCopies: 3, failedCopies: 3 } }))).toEqual([
      "warning more-than-built builds/B-1/actual",
    ]);
  });
});
