import { jsonSchemaOf } from "../shop/json-schema.ts";
import { planSchema } from "./plan-document.ts";

/** JSON Schema of the plan document. Example: its `required` lists "builds". */
export function planJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(planSchema, "Plan document");
}
