import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { UsageError } from "./exit-status.ts";

/** A file to be written into a folder. */
export interface OutFile {
  readonly name: string;
  readonly text: string;
}

/** Makes the folder before the work, so that nobody waits for something that cannot be written. */
export async function makeFolder(outDir: string): Promise<void> {
  try {
    await mkdir(outDir, { recursive: true });
  } catch (error) {
    throw folderTrouble(outDir, error);
  }
}

/** Writes files into a folder that is there. Throws a UsageError that says why it cannot be. */
export async function writeFiles(outDir: string, files: readonly OutFile[]): Promise<void> {
  try {
    for (const { name, text } of files) await writeFile(join(outDir, name), text);
  } catch (error) {
    throw folderTrouble(outDir, error);
  }
}

/** Why nothing can be written to a folder. Example: ENOSPC gives "the reports cannot be written to out: the disk is full". */
export function folderTrouble(outDir: string, error: unknown): UsageError {
  const { code, message } = error as NodeJS.ErrnoException;
  return new UsageError(
    `the reports cannot be written to ${outDir}: ${FOLDER_TROUBLE[code ?? ""] ?? message}`,
  );
}

const FOLDER_TROUBLE: Readonly<Record<string, string>> = {
  EEXIST: "there is a file of that name",
  ENOTDIR: "a part of that path is a file",
  EACCES: "that folder may not be written",
  EROFS: "that disk may not be written",
  ENOSPC: "the disk is full",
};
