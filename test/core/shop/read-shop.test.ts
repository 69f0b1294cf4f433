import { describe, expect, test } from "vitest";
import { readShop } from "../../../core/shop/read-shop.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aFeedstock, aMachine, aPart, aShop, anOrder } from "../../fixtures/a-route.ts";

/** A shop file as plain data, to be spoilt. */
type PlainShop = Record<string, unknown[]> & { costing: object };

/** The shop as JSON text, with one change to the plain document. */
function textOf(shop: Shop, change: (document: PlainShop) => void = () => {}): string {
  const document = JSON.parse(JSON.stringify(shop));
  change(document);
  return JSON.stringify(document);
}

function sentences(text: string): string[] {
  return readShop(text).findings.map(({ sentence }) => sentence);
}

const placesOf = (build: unknown): string[] =>
  readShop(textOf(aShop({ builds: [build as never] }))).findings.map(({ where }) => where);

describe("a good file", () => {
  test("gives the shop as it was written, and no finding", () => {
    const shop = aShop();
    expect(readShop(textOf(shop))).toEqual({ shop, findings: [], unreadCopies: new Map() });
  });

  test("may begin with a byte order mark", () => {
    expect(readShop(`\uFEFF${textOf(aShop())}`).findings).toEqual([]);
  });
});

describe("a file that is no shop at all gives no shop and one sentence", () => {
  const cases: readonly (readonly [name: string, text: string, code: string, words: string])[] = [
    ["empty", "", "empty", "The file is empty"],
    ["only space", " \n\t", "empty", "The file is empty"],
    ["only a byte order mark", "\uFEFF", "empty", "The file is empty"],
    ["not JSON", '{\n "name": "A",\n}', "not-json", "line 3, column 1, expected a name in double quotes"],
    ["plain text", "Dear colleague", "not-json", "line 1, column 1, expected a value"],
    ["a list", "[]", "not-a-record", "the outermost brackets must be { and }"],
    ["a number", "7", "not-a-record", "the outermost brackets"],
    ["null", "null", "not-a-record", "the outermost brackets"],
    ["without a version", "{}", "schema-missing", 'add "schema": 1'],
    ["of a newer version", '{"schema": 2}', "schema-newer", "update the program"],
    ["of an unknown version", '{"schema": 0}', "schema-unknown", "it reads schema 1"],
  ];

  test.each(cases)("%s", (_, text, code, words) => {
    const { shop, findings } = readShop(text);
    expect(shop).toBe(null);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ severity: "error", code });
    expect(findings[0]?.sentence).toContain(words);
  });
});

describe("a fault outside the lists gives no shop and names every field", () => {
  test("missing, wrong and unknown fields", () => {
    const text = textOf(aShop(), (document) => {
      Object.assign(document, { timeZone: undefined, currency: "euro", colour: "red" });
      Object.assign(document["costing"], { labourPerH: -1, interestOn: "all" });
    });
    const { shop, findings } = readShop(text);
    expect(shop).toBe(null);
    expect(findings.map(({ where, sentence }) => [where, sentence])).toEqual([
      ["timeZone", "timeZone is missing."],
      ["currency", "currency must be three capital letters by ISO 4217."],
      ["costing/labourPerH", "costing, labourPerH must not be negative."],
      [
        "costing/interestOn",
        'costing, interestOn must be "mean-capital" or "half-purchase", not the text "all".',
      ],
      ["", 'The shop file has no field "colour": correct its name or remove it.'],
    ]);
  });

  test("a list that is missing or no list", () => {
    const text = textOf(aShop(), (document) => Object.assign(document, { orders: {}, parts: undefined }));
    expect(readShop(text).shop).toBe(null);
    expect(sentences(text)).toEqual(["parts is missing.", "orders must be a list in [ ], not a record."]);
  });
});

describe("a fault in an entry of a list leaves out that entry alone", () => {
  test("an order with quantity 0", () => {
    const shop = aShop({ orders: [anOrder(), anOrder({ id: "O-2", quantity: 0 }), anOrder({ id: "O-3" })] });
    const answer = readShop(textOf(shop));
    expect(answer.shop?.orders.map(({ id }) => id)).toEqual(["O-1", "O-3"]);
    expect(answer.findings).toEqual([
      {
        severity: "error",
        code: "schema",
        where: "orders/O-2/quantity",
        sentence: "Order O-2: quantity must be at least 1.",
      },
    ]);
  });

  test.each([
    [-1, "quantity must be at least 1"],
    [1.5, "quantity must be a whole number"],
    ["10", "quantity must be a whole number"],
    [null, "quantity must be a whole number"],
  ])("a quantity of %j", (quantity, words) => {
    const shop = aShop({ orders: [anOrder({ quantity: quantity as number })] });
    expect(sentences(textOf(shop))).toEqual([`Order O-1: ${words}.`]);
  });

  test("a number too large to hold, which JSON reads as infinite", () => {
    const text = textOf(aShop()).replace('"densityKgPerM3":1240', '"densityKgPerM3":1e999');
    const answer = readShop(text);
    expect(answer.shop?.feedstocks.map(({ id }) => id)).not.toContain("pla-white");
    expect(answer.findings[0]?.sentence).toBe(
      "Feedstock pla-white: densityKgPerM3 must be a number, not a number too large to hold.",
    );
  });

  test("a missing and an unknown field, deep within", () => {
    const text = textOf(aShop({ machines: [aMachine()] })).replace('"diameterMm"', '"diameter"');
    expect(sentences(text)).toEqual([
      "Machine F1: nozzles 1, diameterMm is missing.",
      'Machine F1: nozzles 1 has no field "diameter": correct its name or remove it.',
    ]);
  });

  test("of values with several shapes, only the faults of the closest shape", () => {
    const rate = { ...aMachine(), hourRate: { purchasePrice: -3 } };
    const text = textOf(aShop({ machines: [rate as never] }));
    expect(sentences(text)).toContain("Machine F1: hourRate, purchasePrice must not be negative.");
    expect(sentences(text)).toContain("Machine F1: hourRate, lifeYears is missing.");
    const mesh = {
      kind: "mesh",
      file: "a.stl",
      sha256: "zz",
      unit: "inch",
      measures: aPart().geometry.measures,
    };
    const parts = [{ ...aPart(), geometry: mesh }];
    expect(sentences(textOf(aShop({ parts: parts as never })))).toEqual([
      "Part clip: geometry, sha256 must be 64 hexadecimal digits.",
    ]);
  });

  test("an entry without a usable id is named by its place", () => {
    const shop = aShop({ feedstocks: [aFeedstock(), aFeedstock({ id: "" })] });
    const { findings } = readShop(textOf(shop));
    expect(findings[0]?.where).toBe("feedstocks/#2/id");
    expect(findings[0]?.sentence).toContain("Entry 2 of the feedstocks");
  });

  test("an entry that is no record", () => {
    expect(sentences(textOf(aShop({ orders: [7 as never, anOrder()] })))).toEqual([
      "Entry 1 of the orders (no usable id): must be a record in { }, not 7.",
    ]);
  });

  test("every list can lose an entry and keep the rest", () => {
    for (const list of ["calendars", "machines", "feedstocks", "parts", "orders", "builds"] as const) {
      const text = textOf(aShop(), (document) => document[list]?.push({ id: "bad" }));
      const { shop, findings } = readShop(text);
      expect(shop).toEqual(aShop());
      expect(findings.length).toBeGreaterThan(0);
      expect(findings.every(({ where }) => where.startsWith(`${list}/bad`))).toBe(true);
    }
  });
});

describe("an unreadable build takes with it what nobody can know without it", () => {
  const broken = { id: "B-1", state: "running", machineId: "F1", items: [{ orderId: "O-1", copies: 2 }, 3] };

  test("its machine and its orders while it runs", () => {
    expect(placesOf(broken)).toEqual(expect.arrayContaining(["machines/F1", "orders/O-1"]));
  });

  test("only its orders when it is over", () => {
    const places = placesOf({ ...broken, state: "done" });
    expect(places).toContain("orders/O-1");
    expect(places).not.toContain("machines/F1");
  });

  test("nothing when it was only planned", () => {
    expect(placesOf({ ...broken, state: "planned" }).every((place) => place.startsWith("builds/"))).toBe(
      true,
    );
  });

  test("nothing more than itself when it is no record", () => {
    expect(placesOf("B-1")).toEqual(["builds/#1"]);
  });
});
