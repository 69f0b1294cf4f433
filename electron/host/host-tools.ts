import type { Output } from "../contract.ts";

/** File dialogs of the system; they give paths, which stay on this side of the door. Null: cancelled. */
export interface Dialogs {
  openShop(): Promise<string | null>;
  saveShop(fileName: string, folder: string): Promise<string | null>;
  saveExport(fileName: string): Promise<string | null>;
}

/** Makes a PDF of a sheet, or of the window where it is null. */
export type MakePdf = (html: string | null, landscape: boolean) => Promise<Uint8Array>;

/** What the place lends the host. */
export interface HostTools {
  /** folder of the program's own */
  readonly data: string;
  /** where the demo shop is */
  readonly assets: string;
  readonly info: Pick<Output<"appInfo">, "door" | "reason" | "version" | "platform">;
  /** a shop file named at the launch */
  readonly launchFile: string | null;
  /** null in the browser's door */
  readonly dialogs: Dialogs | null;
  readonly makePdf: MakePdf | null;
  /** a clock, ms */
  readonly now: () => number;
}
