import type { Host } from "../../electron/contract.ts";
import { downloadFile } from "./download.ts";
import type { Notes } from "./notes.ts";

/** Writes a report or table where the person says: by the window's dialog, or as a download in a browser. */
export async function saveExport(
  host: Host,
  notes: Notes,
  fileName: string,
  bytes: Uint8Array<ArrayBuffer>,
  type: string,
): Promise<void> {
  const answer = await host.call("writeExport", { fileName, bytes });
  if (!answer.ok) return notes.alarm(answer.trouble.sentence);
  if (answer.value.status === "not-here") return downloadFile(fileName, bytes, type);
  if (answer.value.status === "failed") return notes.alarm(answer.value.sentence);
  if (answer.value.status === "written")
    notes.tell(`Written: ${answer.value.fileName} in ${answer.value.folder}.`);
}
