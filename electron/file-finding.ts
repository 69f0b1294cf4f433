import type { Finding } from "../core/units/finding.ts";

/** A file named on the command line that cannot be used at all. */
export function fileFinding(path: string, words: string): Finding {
  return { severity: "error", code: "file", where: path, sentence: `${path}: ${words}` };
}

/**
 * Why a file could not be read and what to do; `files` says what is wanted of a folder. Example: EISDIR with "the shop file"
 * gives "this is a folder. Name the shop file in it."
 */
export function readingWords(error: unknown, files: string): string {
  const { code = "", message } = error as NodeJS.ErrnoException;
  if (code === "EISDIR") return `this is a folder. Name ${files} in it.`;
  return FILE_TROUBLE[code] ?? `the system says "${message}".`;
}

const FILE_TROUBLE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file. Check the name and the folder.",
  EACCES: "the file may not be read. Ask for the right to read it.",
};
