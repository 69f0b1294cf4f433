import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const PROJECT_ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** What a process wrote and how long it took. */
export interface ProcessEnd {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number;
  readonly seconds: number;
  /** what came on standard error, and how many seconds after the start */
  readonly told: readonly { readonly atS: number; readonly text: string }[];
}

/** Runs a command in the project root and waits for its end. Throws when the status is not one of those allowed. */
export function runCommand(
  command: string,
  words: readonly string[],
  allowed: readonly number[],
): Promise<ProcessEnd> {
  const startMs = performance.now();
  const child = spawn(command, words, { cwd: PROJECT_ROOT, stdio: ["ignore", "pipe", "pipe"] });
  let stdout = "";
  const heard: { atS: number; text: string }[] = [];
  child.stdout.on("data", (text: Buffer) => (stdout += text.toString()));
  child.stderr.on("data", (data: Buffer) => {
    heard.push({ atS: (performance.now() - startMs) / 1000, text: data.toString() });
  });
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code) => {
      const status = code ?? -1;
      const stderr = heard.map(({ text }) => text).join("");
      if (!allowed.includes(status))
        reject(new Error(`${command} ended with ${status}: ${stderr.slice(-2000)}`));
      else resolve({ stdout, stderr, status, seconds: (performance.now() - startMs) / 1000, told: heard });
    });
  });
}
