import { spawn } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

/** A program and its words that show an address. */
export interface Opener {
  readonly program: string;
  readonly words: readonly string[];
}

const WINDOWED = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge"];

/** How an address can be shown here, best first: a window of its own, then the usual browser. */
export function openersFor(
  url: string,
  platform: NodeJS.Platform,
  find: (name: string) => string | null = onPath,
): Opener[] {
  if (platform === "darwin") return [{ program: "open", words: [url] }];
  if (platform === "win32") return [{ program: "cmd", words: ["/c", "start", "", url] }];
  const windowed = WINDOWED.map(find).find((program) => program !== null);
  const usual = find("xdg-open");
  return [
    ...(windowed ? [{ program: windowed, words: [`--app=${url}`] }] : []),
    ...(usual ? [{ program: usual, words: [url] }] : []),
  ];
}

const QUICK_END_MS = 1500;

/** Tries one after the other; true once one of them has not failed at once. */
export async function showAddress(openers: readonly Opener[]): Promise<boolean> {
  for (const opener of openers) if (await starts(opener)) return true;
  return false;
}

function starts({ program, words }: Opener): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(program, words, { detached: true, stdio: "ignore" });
    child.once("error", () => resolve(false));
    child.once("exit", (status) => resolve(status === 0));
    setTimeout(() => resolve(true), QUICK_END_MS).unref();
    child.unref();
  });
}

function onPath(name: string): string | null {
  for (const folder of (process.env["PATH"] ?? "").split(delimiter)) {
    const program = join(folder, name);
    try {
      accessSync(program, constants.X_OK);
      return program;
    } catch {
      // not in this folder
    }
  }
  return null;
}
