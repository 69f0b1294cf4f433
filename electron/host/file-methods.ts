import { readFile, rm } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { planSchema } from "../../core/plan/plan-document.ts";
import type { Output } from "../contract.ts";
import { writeAtomically } from "../store/atomic-write.ts";
import { planPathOf } from "../store/beside-shop.ts";
import { troubleOf } from "../store/file-trouble.ts";
import { readMesh, storeMesh } from "../store/mesh-files.ts";
import type { HostTools } from "./host-tools.ts";
import type { Methods } from "./methods.ts";
import type { ShopRoom } from "./shop-methods.ts";

type BesideShop = "readPlan" | "keepPlan" | "readMesh" | "storeMesh";

/** What lies beside a shop: its plan and its meshes. */
export function besideMethods({ desk }: ShopRoom): Pick<Methods, BesideShop> {
  return {
    readPlan: async ({ handle }) => ({ plan: await readPlan(planPathOf(desk.find(handle).file.path)) }),
    keepPlan: async ({ handle, plan }) => {
      const path = planPathOf(desk.find(handle).file.path);
      const keeping = plan
        ? writeAtomically(path, `${JSON.stringify(plan, null, 2)}\n`)
        : rm(path, { force: true });
      return keeping.then(
        () => ({ status: "kept" }),
        (error: unknown) => notWritten(basename(path), error),
      );
    },
    readMesh: async ({ handle, partId }) => {
      const { file, shop } = desk.find(handle);
      return readMesh(
        file.path,
        shop.parts.find(({ id }) => id === partId),
      );
    },
    storeMesh: ({ handle, fileName, bytes }) => storeMesh(desk.find(handle).file.path, fileName, bytes),
  };
}

/** A plan that is not there or is of another version is simply made anew. */
async function readPlan(path: string): Promise<Output<"readPlan">["plan"]> {
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null) return null;
  try {
    return planSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

type Reports = "writeExport" | "printPdf";

const DOWNLOAD = "A browser keeps downloads where it is set to: the page downloads the report itself.";
const PRINT = "A browser prints by its own dialog, which also makes PDF files: the page opens it.";

/** Reports that leave the program. */
export function reportMethods({ dialogs, makePdf }: HostTools): Pick<Methods, Reports> {
  const write = async (fileName: string, make: () => Promise<Uint8Array>): Promise<Output<"writeExport">> => {
    const path = await dialogs?.saveExport(fileName);
    if (!path) return { status: "cancelled" };
    try {
      await writeAtomically(path, await make());
    } catch (error) {
      return notWritten(basename(path), error);
    }
    return { status: "written", fileName: basename(path), folder: dirname(path) };
  };
  return {
    writeExport: async ({ fileName, bytes }) =>
      dialogs ? write(fileName, async () => bytes) : { status: "not-here", sentence: DOWNLOAD },
    printPdf: async ({ fileName, html, landscape }) =>
      makePdf ? write(fileName, () => makePdf(html, landscape)) : { status: "not-here", sentence: PRINT },
  };
}

/** A report or plan that could not be written. */
export function notWritten(fileName: string, error: unknown): { status: "failed"; sentence: string } {
  return { status: "failed", sentence: `${fileName} could not be written: ${troubleOf(error).words}.` };
}
