import { z } from "zod";
import { shopSchema } from "./shop.ts";

/** JSON Schema of the shop document. Example: its `required` lists "machines". */
export function shopJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(shopSchema, "Shop document");
}

/**
 * JSON Schema (draft 2020-12) of a document, for editors and other programs; descriptions and units come from the same
 * definition that checks the files. Example: jsonSchemaOf(z.object({}), "Empty").title is "Empty".
 */
export function jsonSchemaOf(schema: z.ZodType, title: string): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, { target: "draft-2020-12" });
  return { $schema, title, ...rest };
}
