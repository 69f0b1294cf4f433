import { describe, expect, test } from "vitest";
import { planJsonSchema } from "../../../core/plan/json-schema.ts";
import { shopJsonSchema } from "../../../core/shop/json-schema.ts";
import { SHOP_SCHEMA } from "../../../core/shop/shop.ts";

const DOCUMENTS = [
  ["Shop document", shopJsonSchema()],
  ["Plan document", planJsonSchema()],
] as const;

describe.each(DOCUMENTS)("the JSON Schema of the %s", (title, json) => {
  test("names its draft and its title and allows no other fields", () => {
    expect(json).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      title,
      type: "object",
      additionalProperties: false,
    });
  });

  test("describes every field", () => {
    expect(fieldsWithoutDescription(json, "")).toEqual([]);
  });
});

test("the shop's schema fixes the version and requires the lists", () => {
  const json = shopJsonSchema() as { properties: Record<string, { const?: number }>; required: string[] };
  expect(json.properties["schema"]?.const).toBe(SHOP_SCHEMA);
  expect(json.required).toEqual(expect.arrayContaining(["machines", "orders", "timeZone"]));
});

/** Paths of fields (not of list elements) that have neither a description nor, as x, y, z, min and max, a plain meaning. */
function fieldsWithoutDescription(node: unknown, path: string): string[] {
  if (node === null || typeof node !== "object") return [];
  if (Array.isArray(node)) return node.flatMap((child) => fieldsWithoutDescription(child, path));
  return Object.entries(node).flatMap(([key, child]) => {
    if (key !== "properties") return fieldsWithoutDescription(child, path);
    return Object.entries(child as Record<string, { description?: string }>).flatMap(([name, field]) => {
      const here = `${path}/${name}`;
      const isPlain = ["x", "y", "z", "min", "max", "kind"].includes(name);
      const own = field.description === undefined && !isPlain ? [here] : [];
      return [...own, ...fieldsWithoutDescription(field, here)];
    });
  });
}
