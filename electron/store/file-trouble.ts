/** What kept a file from being written, as the contract names it. */
export type TroubleCode = "disk-full" | "read-only" | "no-folder" | "other";

export interface FileTrouble {
  readonly code: TroubleCode;
  /** what is the matter and what to do, to follow "… could not be saved: " */
  readonly words: string;
}

const DISK_FULL: FileTrouble = { code: "disk-full", words: "the disk is full. Free some space there" };
const READ_ONLY: FileTrouble = {
  code: "read-only",
  words: "it may not be written. Make it writable, or save under another name",
};
const NO_FOLDER: FileTrouble = {
  code: "no-folder",
  words: "its folder is not there any more. Bring it back, or save under another name",
};

const KNOWN: Readonly<Record<string, FileTrouble>> = {
  ENOSPC: DISK_FULL,
  EDQUOT: { ...DISK_FULL, words: "your share of the disk is used up. Free some space there" },
  EFBIG: { ...DISK_FULL, words: "the file would be larger than is allowed here. Save under another name" },
  EACCES: READ_ONLY,
  EPERM: READ_ONLY,
  EROFS: READ_ONLY,
  ENOENT: NO_FOLDER,
  ENOTDIR: NO_FOLDER,
  EBUSY: { code: "other", words: "another program holds it. Close it there" },
};

/** Puts a system's error into words. Example: ENOSPC gives "the disk is full. Free some space there". */
export function troubleOf(error: unknown): FileTrouble {
  const { code = "", message } = error as NodeJS.ErrnoException;
  return (
    KNOWN[code] ?? {
      code: "other",
      words: `the system says "${message}". Try again, or save under another name`,
    }
  );
}
