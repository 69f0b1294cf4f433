import { spawn } from "node:child_process";
import { once } from "node:events";
import { inject } from "vitest";

/** The program in a process of its own, with a door for browsers. */
export interface OtherProgram {
  readonly url: string;
  /** ends it as a crash does: nothing is saved, nothing is put away */
  readonly kill: () => Promise<void>;
}

/** Starts the program on a data folder and a shop file, as a second start on the same machine would. */
export async function startOther(dataFolder: string, file: string): Promise<OtherProgram> {
  const words = ["--import", "tsx", `${import.meta.dirname}/other-door.ts`];
  const child = spawn(process.execPath, [...words, dataFolder, file, inject("screenFolder")], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.once("data", (chunk: Buffer) => resolve(chunk.toString().trim()));
    child.once("exit", () => reject(new Error("the other program ended before it had a door")));
  });
  return {
    url,
    kill: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const ended = once(child, "exit");
      child.kill("SIGKILL");
      await ended;
    },
  };
}
