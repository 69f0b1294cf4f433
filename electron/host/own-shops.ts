import { mkdir, readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { readShop } from "../../core/shop/read-shop.ts";
import { writeAtomically } from "../store/atomic-write.ts";
import { shopStem } from "../store/beside-shop.ts";
import { freePath, plainFileName } from "../store/free-name.ts";
import { copyMeshes } from "../store/mesh-files.ts";

const ENDING = ".shop.json";
const DEMO = "demo";

/** Where copies of the demo shop are, in the program's folder for shops. */
export function demoFolderIn(shops: string): string {
  return join(shops, DEMO);
}

/** Shops that lie in the program's own folder, each in a folder of its own with its meshes: new ones, uploads, copies. */
export class OwnShops {
  private readonly folder: string;
  private readonly assets: string;

  constructor(folder: string, assets: string) {
    this.folder = folder;
    this.assets = assets;
  }

  /** Makes a folder for a new shop and gives the path of its file, which is not there yet. */
  async place(name: string): Promise<string> {
    const stem = plainFileName(shopStem(name));
    await mkdir(this.folder, { recursive: true });
    const own = await freePath(this.folder, stem);
    try {
      await mkdir(own);
    } catch (error) {
      // Another window was quicker with the same name.
      if ((error as NodeJS.ErrnoException).code === "EEXIST") return this.place(name);
      throw error;
    }
    return join(own, `${basename(own)}${ENDING}`);
  }

  /** Writes a text as a new file and gives its path; nothing that is there is written over. */
  async add(name: string, text: string): Promise<string> {
    const path = await this.place(name);
    await writeAtomically(path, text);
    return path;
  }

  /** The same, with the meshes that lie beside the shop it was copied from. */
  async addCopy(name: string, text: string, from: string): Promise<string> {
    const path = await this.add(name, text);
    const { shop } = readShop(text);
    if (shop) await copyMeshes(shop, from, path);
    return path;
  }

  /** A fresh copy of the demo shop; the one that the program brings along is never opened itself. */
  async addDemo(): Promise<string> {
    const from = join(this.assets, `${DEMO}${ENDING}`);
    const text = await readFile(from, "utf8");
    const folder = demoFolderIn(this.folder);
    return new OwnShops(folder, this.assets).addCopy("Demo works", text, from);
  }
}
