import { copyFile, constants, mkdir, readdir, readFile, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { Part } from "../../core/shop/part.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { Output } from "../contract.ts";
import { writeAtomically } from "./atomic-write.ts";
import { besideShop, meshFolderOf } from "./beside-shop.ts";
import { troubleOf } from "./file-trouble.ts";
import { freePath, plainFileName } from "./free-name.ts";
import { sha256 } from "./sha256.ts";

/** Reads the mesh of a part from beside its shop. */
export async function readMesh(shopPath: string, part: Part | undefined): Promise<Output<"readMesh">> {
  if (!part) return failed("The shop has no such part any more.");
  const { geometry } = part;
  if (geometry.kind !== "mesh") return failed(`Part ${part.id} has measures but no mesh file.`);
  const path = await besideShop(shopPath, geometry.file);
  if (path === null)
    return failed(
      `Part ${part.id} names a mesh outside the shop's folder: ${geometry.file}. Drop the file anew.`,
    );
  try {
    const bytes = new Uint8Array(await readFile(path));
    const sameAsMeasured = sha256(bytes) === geometry.sha256;
    return { status: "read", fileName: basename(path), sameAsMeasured, bytes };
  } catch (error) {
    const words =
      (error as NodeJS.ErrnoException).code === "ENOENT" ? "it is not there" : troubleOf(error).words;
    return failed(
      `The mesh ${geometry.file} of part ${part.id} cannot be read: ${words}. Drop the file anew.`,
    );
  }
}

/** Keeps a dropped mesh in the folder "meshes" beside the shop; the same mesh is kept once. */
export async function storeMesh(
  shopPath: string,
  fileName: string,
  bytes: Uint8Array,
): Promise<Output<"storeMesh">> {
  const folder = meshFolderOf(shopPath);
  const digest = sha256(bytes);
  try {
    await mkdir(folder, { recursive: true });
    const same = await sameFile(folder, digest, bytes.length);
    const path = same ?? (await freePath(folder, plainFileName(fileName)));
    if (same === null) await writeAtomically(path, bytes);
    return { status: "stored", file: `${basename(folder)}/${basename(path)}`, sha256: digest };
  } catch (error) {
    return failed(`${fileName} could not be kept beside the shop: ${troubleOf(error).words}.`);
  }
}

/** Brings the meshes that a shop names along to where a copy of it lies. What is there already stays. */
export async function copyMeshes(shop: Shop, fromShopPath: string, toShopPath: string): Promise<void> {
  for (const { geometry } of shop.parts) {
    if (geometry.kind !== "mesh") continue;
    const from = await besideShop(fromShopPath, geometry.file);
    const to = await besideShop(toShopPath, geometry.file);
    if (from === null || to === null || from === to) continue;
    await mkdir(dirname(to), { recursive: true });
    // A mesh that is missing is told when somebody looks at the part.
    await copyFile(from, to, constants.COPYFILE_EXCL).catch(() => undefined);
  }
}

async function sameFile(folder: string, digest: string, bytes: number): Promise<string | null> {
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    const { size } = await stat(path);
    if (size === bytes && sha256(await readFile(path)) === digest) return path;
  }
  return null;
}

function failed(sentence: string): { status: "failed"; sentence: string } {
  return { status: "failed", sentence };
}
