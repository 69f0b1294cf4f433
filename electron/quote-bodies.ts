import type { Mesh } from "../core/geometry/mesh.ts";
import type { Part } from "../core/shop/part.ts";
import { readBodyFile } from "./read-body-file.ts";
import { besideShop } from "./store/beside-shop.ts";

/**
 * Bodies of parts for their drawings, by part id: mesh files beside the shop that are still the ones that were measured. A part
 * without one is drawn as its box, so nothing is said of it here.
 */
export async function bodiesBesideShop(shopPath: string, parts: readonly Part[]): Promise<Map<string, Mesh>> {
  const bodies = new Map<string, Mesh>();
  for (const { id, geometry } of parts) {
    if (geometry.kind !== "mesh") continue;
    const path = await besideShop(shopPath, geometry.file);
    if (path === null) continue;
    const file = await readBodyFile(path, geometry.unit);
    if (!("reading" in file) || file.sha256 !== geometry.sha256) continue;
    if (file.reading.mesh) bodies.set(id, file.reading.mesh);
  }
  return bodies;
}
