import { planJsonSchema } from "../core/plan/json-schema.ts";
import { shopJsonSchema } from "../core/shop/json-schema.ts";
import { EXIT, UsageError } from "./exit-status.ts";

/** `schema [shop|plan]`: prints the JSON Schema of one document, or of both by name. */
export async function schemaCommand(words: string[]): Promise<number> {
  const [which] = words;
  const schemas = { shop: shopJsonSchema(), plan: planJsonSchema() };
  if (which !== undefined && which !== "shop" && which !== "plan") {
    throw new UsageError(`schema knows "shop" and "plan", not "${which}"`);
  }
  console.log(JSON.stringify(which ? schemas[which] : schemas, null, 2));
  return EXIT.planned;
}
