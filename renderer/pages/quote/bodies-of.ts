import type { Mesh } from "../../../core/geometry/mesh.ts";
import { readBody } from "../../../core/geometry/read-body.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import type { Stores } from "../../store/stores.ts";

/** Bodies of a quote's parts by part id, as far as their files can be read; the others are drawn as boxes. */
export async function bodiesOf(quote: Quote, { host, shop }: Stores): Promise<ReadonlyMap<string, Mesh>> {
  const bodies = new Map<string, Mesh>();
  for (const partId of new Set(quote.lines.map((line) => line.partId))) {
    const geometry = shop.shop().parts.find(({ id }) => id === partId)?.geometry;
    if (geometry?.kind !== "mesh") continue;
    const answer = await host.call("readMesh", { handle: shop.opened.handle, partId });
    if (!answer.ok || answer.value.status === "failed") continue;
    const { bytes, fileName } = answer.value;
    const { mesh } = readBody(bytes, { fileName, unit: geometry.unit });
    if (mesh) bodies.set(partId, mesh);
  }
  return bodies;
}
