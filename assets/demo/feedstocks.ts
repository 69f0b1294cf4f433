import type { Feedstock } from "../../core/shop/feedstock.ts";
import { FILAMENTS } from "./filaments.ts";
import { PELLETS } from "./pellets.ts";

/**
 * Invented grades of generic polymer families. Properties and prices are common practice, no source, for the user to
 * overwrite; those of amorphous families bond down to the glass transition and carry up to 45 K above it.
 */
export const FEEDSTOCKS: Feedstock[] = [...FILAMENTS, ...PELLETS];
