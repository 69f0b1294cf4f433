import { realpath } from "node:fs/promises";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";

/**
 * The path of a file that a shop document names, or null where that leads out of the shop's folder: a document from elsewhere
 * must not make the program read other files. Links are followed before the judgement.
 * Example: "../../secret" and "/etc/hosts" give null.
 */
export async function besideShop(shopPath: string, named: string): Promise<string | null> {
  if (isAbsolute(named) || named.includes("\0")) return null;
  const folder = await realpath(dirname(shopPath)).catch(() => dirname(shopPath));
  const wanted = resolve(folder, named);
  if (!isWithin(folder, wanted)) return null;
  const real = await realpath(wanted).catch(() => wanted);
  return isWithin(folder, real) ? real : null;
}

/** True where `path` is below `folder`, not the folder itself. */
export function isWithin(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** The plan that belongs to a shop file. Example: "/a/works.shop.json" gives "/a/works.plan.json". */
export function planPathOf(shopPath: string): string {
  return `${shopStem(shopPath)}.plan.json`;
}

/** A shop file's name or path without its ending. Example: "works.shop.json" and "works.json" give "works". */
export function shopStem(shopPath: string): string {
  return shopPath.replace(/(\.shop)?\.json$/i, "");
}

/** Where dropped meshes go. */
export function meshFolderOf(shopPath: string): string {
  return join(dirname(shopPath), "meshes");
}
