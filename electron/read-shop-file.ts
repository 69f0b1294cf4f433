import { readFile } from "node:fs/promises";
import { checkShop } from "../core/shop/check-shop.ts";
import type { Finding } from "../core/shop/finding.ts";
import { readShop } from "../core/shop/read-shop.ts";
import type { Shop } from "../core/shop/shop.ts";
import { usableShop, type SetAside } from "../core/shop/usable-shop.ts";

/** A shop file as read: the shop that can be worked with (null: none), what was set aside, and every finding. */
export interface ShopFile {
  readonly shop: Shop | null;
  readonly setAside: readonly SetAside[];
  readonly findings: readonly Finding[];
}

/** Reads and checks one shop file. Nothing throws for a bad file: it comes back as findings. */
export async function readShopFile(path: string): Promise<ShopFile> {
  const text = await readText(path);
  if (typeof text !== "string") return { shop: null, setAside: [], findings: [text] };
  const { shop, findings, unreadCopies } = readShop(text);
  if (!shop) return { shop: null, setAside: [], findings };
  const all = [...findings, ...checkShop(shop)];
  const usable = usableShop(shop, all, unreadCopies);
  return { shop: usable.shop, setAside: usable.setAside, findings: all };
}

async function readText(path: string): Promise<string | Finding> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "unknown";
    return {
      severity: "error",
      code: "file",
      where: path,
      sentence: `${path}: ${FILE_TROUBLE[code] ?? code}`,
    };
  }
}

const FILE_TROUBLE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file. Check the name and the folder.",
  EISDIR: "this is a folder. Name the shop file in it.",
  EACCES: "the file may not be read. Ask for the right to read it.",
};
