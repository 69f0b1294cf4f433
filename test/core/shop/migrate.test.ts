import { expect, test } from "vitest";
import { migrate, type Migrations } from "../../../core/shop/migrate.ts";

/** Invented steps: the name was called title, then got a note. */
const STEPS: Migrations = {
  0: ({ title, ...rest }) => ({ ...rest, name: title }),
  1: (document) => ({ ...document, note: "" }),
};

test("a document of this version comes through untouched", () => {
  const document = { schema: 2, name: "A" };
  expect(migrate(document, STEPS, 2)).toEqual({ document });
});

test("an older one goes through every step in turn and carries the new number", () => {
  const old = Object.freeze({ schema: 0, title: "A" });
  expect(migrate(old, STEPS, 2)).toEqual({ document: { schema: 2, name: "A", note: "" } });
  expect(migrate({ schema: 1, name: "A" }, STEPS, 2)).toEqual({
    document: { schema: 2, name: "A", note: "" },
  });
});

test.each([
  [3, "schema-newer"],
  [-1, "schema-missing"],
  [1.5, "schema-missing"],
  ["1", "schema-missing"],
  [undefined, "schema-missing"],
])("schema %j is refused with a sentence", (schema, code) => {
  expect(migrate({ schema }, STEPS, 2)).toMatchObject({
    finding: { severity: "error", code, where: "schema" },
  });
});

test("an old one that no step leads on from is refused with its number", () => {
  const answer = migrate({ schema: 0 }, {}, 1);
  expect("finding" in answer && answer.finding.sentence).toContain("schema 0");
});
