import { LARGE, MIDDLE } from "./large-parts.ts";
import { SMALL, WARM } from "./small-parts.ts";
import type { PartPlan } from "./part-kinds.ts";

/** Forty invented parts, from clip to boat-mould half. */
export const PARTS: readonly PartPlan[] = [...SMALL, ...WARM, ...MIDDLE, ...LARGE];
