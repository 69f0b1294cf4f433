import { readFile } from "node:fs/promises";
import { checkShop } from "../core/shop/check-shop.ts";
import type { Finding } from "../core/shop/finding.ts";
import { readShop } from "../core/shop/read-shop.ts";
import type { Shop } from "../core/shop/shop.ts";
import { usableShop, type SetAside } from "../core/shop/usable-shop.ts";
import { fileFinding, readingWords } from "./file-finding.ts";

/** A shop file as read: the shop that can be worked with (null: none), what was set aside, and every finding. */
export interface ShopFile {
  /** the document as it stands in the file; empty where it cannot be read */
  readonly text: string;
  readonly shop: Shop | null;
  readonly setAside: readonly SetAside[];
  readonly findings: readonly Finding[];
}

/** Reads and checks one shop file. Nothing throws for a bad file: it comes back as findings. */
export async function readShopFile(path: string): Promise<ShopFile> {
  const text = await readText(path);
  if (typeof text !== "string") return { text: "", shop: null, setAside: [], findings: [text] };
  const { shop, findings, unreadCopies } = readShop(text);
  if (!shop) return { text, shop: null, setAside: [], findings };
  const all = [...findings, ...checkShop(shop)];
  const usable = usableShop(shop, all, unreadCopies);
  return { text, shop: usable.shop, setAside: usable.setAside, findings: all };
}

async function readText(path: string): Promise<string | Finding> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    return fileFinding(path, readingWords(error, "the shop file"));
  }
}
