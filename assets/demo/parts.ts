import type { Part } from "../../core/shop/part.ts";
import { LARGE, MIDDLE } from "./large-parts.ts";
import { SMALL, WARM } from "./small-parts.ts";

/** Forty invented parts, from clip to boat-mould half. */
export const PARTS: Part[] = [...SMALL, ...WARM, ...MIDDLE, ...LARGE];
