import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import type { Finding } from "../core/units/finding.ts";
import { readFile, stat } from "node:fs/promises";
import { besideShop } from "./store/beside-shop.ts";
import { sha256 } from "./store/sha256.ts";

/**
 * Compares the mesh file of each part with the one that was measured: changed, missing, not to be read, or outside the shop's
 * folder is a warning; the plan is made with the stored measures.
 */
export async function bodyFileFindings(shopPath: string, shop: Shop): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const part of shop.parts) {
    const what = await whatIsOdd(shopPath, part);
    if (what !== null) findings.push(meshFileFinding("warning", part, what));
  }
  return findings;
}

/** What is the matter with the mesh file of a part. */
export function meshFileFinding(severity: Finding["severity"], { id }: Part, what: string): Finding {
  return {
    severity,
    code: "mesh-file",
    where: `parts/${id}/geometry/file`,
    sentence: `Part ${id}: ${what}`,
  };
}

/** A mesh file that a shop may not name. */
export function outsideWords(file: string): string {
  return `its mesh file ${file} is outside the shop's folder and is not read; bring it there.`;
}

async function whatIsOdd(shopPath: string, { geometry }: Part): Promise<string | null> {
  if (geometry.kind !== "mesh") return null;
  const { file } = geometry;
  const path = await besideShop(shopPath, file);
  if (path === null) return outsideWords(file);
  try {
    const isFile = (await stat(path)).isFile();
    if (isFile && sha256(await readFile(path)) === geometry.sha256) return null;
    if (!isFile)
      return `its mesh file ${file} cannot be read; the stored measures are used. Measure another file.`;
    return `its mesh file ${file} has changed since it was measured; the stored measures are used. Measure it again.`;
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === "ENOENT";
    const trouble = isMissing ? "is not there" : "cannot be read";
    return `its mesh file ${file} ${trouble}; the stored measures are used. Bring it back, or measure another file.`;
  }
}
