import { troubleOf } from "./file-trouble.ts";

const KEPT = "Your edits are kept in the program's journal until then.";

/** Why a shop could not be saved, where, and what to do. */
export function notSavedWords(fileName: string, error: unknown): string {
  return `${fileName} could not be saved: ${troubleOf(error).words}. ${KEPT}`;
}

/** Something else has written or removed the file. */
export function conflictWords(fileName: string, reason: "changed" | "removed"): string {
  return reason === "changed"
    ? `${fileName} was changed by something else since it was opened here. Read it again, save yours under another name, or write over it; a backup is kept of what was there. ${KEPT}`
    : `${fileName} is not there any more: it was moved, renamed or deleted. Save it again at the same place, or under another name. ${KEPT}`;
}

/** The journal could not be written, so a crash would cost the edits that are not in the file. */
export function journalWords(error: unknown): string {
  return `The journal of edits cannot be written: ${troubleOf(error).words}. Until then save often: edits that are not in the file would be lost in a crash.`;
}

/** What was found after a crash, and what the choices do. */
export function recoveryWords(fileName: string, edits: number, followsOn: boolean): string {
  const count = edits === 1 ? "1 edit" : `${edits} edits`;
  const found = `The program ended last time before ${count} had been written to ${fileName}.`;
  const doubt = followsOn
    ? ""
    : " The file was changed since, so an edit whose place is gone is left out, and one that is there already is put again.";
  return `${found}${doubt} Keep puts them on the shop as it is now; drop sets them aside for 30 days.`;
}
