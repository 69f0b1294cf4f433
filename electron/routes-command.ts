import { makeBuildCosting } from "../core/cost/build-cost.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import { wrapped } from "../core/report/plain-text.ts";
import { displayWords } from "../core/shop/display-words.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import { EXIT, UsageError } from "./exit-status.ts";
import { assumedText, readFilePart } from "./file-part.ts";
import { cheapest, partRoutes } from "./part-routes.ts";
import { printFindings } from "./print-findings.ts";
import { readShopFile } from "./read-shop-file.ts";
import { cheapestLine, machineLines, partLine, type RouteTextContext } from "./route-lines.ts";
import { type RoutesCall, readRoutesCall } from "./routes-call.ts";
import { showProfile } from "./routes-profile.ts";

const WIDTH = 78;

/**
 * `routes SHOP.json [--part ID|FILE] ...`: how each part, or a mesh file, goes on each kind of machine, or every reason why it does
 * not; `--profile` shows the layer times of the cheapest way. Status 0; 2 for a file that cannot be used; 1 where a profile is
 * asked for and there is no route.
 */
export async function routesCommand(words: string[]): Promise<number> {
  const call = readRoutesCall(words);
  const { shop, findings } = await readShopFile(call.path);
  printFindings(findings, shop ? ["error"] : undefined);
  if (!shop) return EXIT.badInput;
  if (call.machineId !== null && !shop.machines.some(({ id }) => id === call.machineId)) {
    throw new UsageError(`the shop has no machine "${call.machineId}"`);
  }
  const known = shop.parts.filter((part) => call.part === null || part.id === call.part);
  if (known.length > 0) {
    const context = contextOf(shop);
    let status: number = EXIT.planned;
    for (const part of known) status = Math.max(status, await tellPart(call, context, part, null));
    return status;
  }
  return tellFile(call, shop, call.part ?? "");
}

/** A part that the shop does not have is a mesh file. */
async function tellFile(call: RoutesCall, shop: Shop, path: string): Promise<number> {
  const { part, mesh, findings } = await readFilePart(path, call.unit);
  if (!part && findings.some(({ code }) => code === "file") && !MESH_NAME.test(path)) {
    throw new UsageError(`the shop has no part "${path}", and there is no mesh file of that name`);
  }
  printFindings(findings);
  if (!part) return EXIT.badInput;
  // Costs are those of the shop's parts, so for once it has one more.
  return tellPart(call, contextOf({ ...shop, parts: [...shop.parts, part] }), part, mesh);
}

function contextOf(shop: Shop): RouteTextContext {
  return { shop, costing: makeBuildCosting(shop) };
}

const MESH_NAME = /\.(stl|3mf)$/i;

async function tellPart(
  call: RoutesCall,
  context: RouteTextContext,
  part: Part,
  mesh: Mesh | null,
): Promise<number> {
  const { shop, costing } = context;
  const quantity = call.quantity ?? largestOrder(shop, part);
  const asked = { shop, part, quantity, withOtherForms: call.all, machineId: call.machineId };
  const routes = partRoutes(asked, costing);
  console.log(`\n${partLine(shop, part)}`);
  if (mesh) console.log(wrapped(assumedText(part, quantity), WIDTH).join("\n"));
  const words = displayWords(shop);
  for (const kind of routes) console.log(machineLines(context, kind).map(words).join("\n"));
  const best = cheapest(routes);
  if (call.part !== null) console.log(`\n${best ? cheapestLine(context, best) : "It cannot be made there."}`);
  if (!call.profile) return EXIT.planned;
  if (!best) return EXIT.lateOrUnplanned;
  await showProfile({ ...best, shop, part, mesh }, call.svg);
  return EXIT.planned;
}

/** Copies of the largest order of a part, as the plan takes them; 1 where nobody has ordered it. */
function largestOrder(shop: Shop, part: Part): number {
  const ordered = shop.orders.filter(({ partId }) => partId === part.id).map(({ quantity }) => quantity);
  return Math.max(1, ...ordered);
}
