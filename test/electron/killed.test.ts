import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { build } from "vite";
import { expect, test } from "vitest";
import { readShop } from "../../core/shop/read-shop.ts";
import { seededRandom } from "../../core/units/random.ts";
import { textOf } from "../../electron/store/open-shop.ts";
import { aDesk, aFolder, aShop } from "./a-desk.ts";

const KILLS = 20;
const SHOPS_EACH = 10;
/** Longest time from the first acknowledged edit to the kill. */
const MOST_MS = 120;

test("kill -9 at 200 moments (20 kills of a writer of 10 shops): every file is whole, no acknowledged edit is lost", async () => {
  const folder = aFolder();
  const writer = await builtWriter(folder);
  const random = seededRandom(4);
  const judged: Promise<Outcome>[] = [];
  for (let round = 0; round < KILLS; round++) {
    const paths = Array.from({ length: SHOPS_EACH }, (_, shop) =>
      join(folder, `${round}-${shop}`, "works.shop.json"),
    );
    for (const path of paths) {
      mkdirSync(dirname(path));
      writeFileSync(path, textOf(aShop()));
    }
    const acknowledged = await killAfter(writer, [join(folder, "data"), ...paths], random() * MOST_MS);
    judged.push(...paths.map((path, shop) => judge(folder, path, acknowledged[shop] ?? 0)));
  }
  const outcomes = await Promise.all(judged);
  expect(outcomes.filter(({ isWhole }) => !isWhole)).toEqual([]);
  expect(outcomes.filter(({ found, acknowledged }) => found < acknowledged)).toEqual([]);
  expect(outcomes.filter(({ leftovers }) => leftovers > 0)).toEqual([]);
  // The kills fell on real work: most shops had edits, and many of them only in the journal.
  expect(outcomes).toHaveLength(KILLS * SHOPS_EACH);
  expect(outcomes.filter(({ acknowledged }) => acknowledged > 1).length).toBeGreaterThan(KILLS * 3);
  expect(outcomes.filter(({ wasRecovered }) => wasRecovered).length).toBeGreaterThan(KILLS);
});

interface Outcome {
  readonly path: string;
  readonly acknowledged: number;
  readonly found: number;
  readonly isWhole: boolean;
  readonly wasRecovered: boolean;
  readonly leftovers: number;
}

/** One bundle starts ten times as quickly as the sources would. */
async function builtWriter(folder: string): Promise<string> {
  await build({
    configFile: false,
    logLevel: "silent",
    build: {
      ssr: join(import.meta.dirname, "killed-writer.ts"),
      outDir: join(folder, "built"),
      minify: false,
      target: "node20",
      rollupOptions: { output: { entryFileNames: "writer.mjs" } },
    },
    ssr: { noExternal: true },
  });
  return join(folder, "built", "writer.mjs");
}

/** Runs the writer, kills it so long after its first acknowledged edit, and gives the last edit acknowledged for each shop. */
async function killAfter(writer: string, words: string[], afterMs: number): Promise<number[]> {
  const child = spawn(process.execPath, [writer, ...words], { stdio: ["ignore", "pipe", "inherit"] });
  let told = "";
  child.stdout.on("data", (chunk: Buffer) => {
    if (told === "") setTimeout(() => child.kill("SIGKILL"), afterMs);
    told += chunk.toString();
  });
  await new Promise((resolve) => child.once("close", resolve));
  const last: number[] = [];
  for (const line of told.split("\n").slice(0, -1)) {
    const [shop = 0, count = 0] = line.split(" ").map(Number);
    last[shop] = count;
  }
  return last;
}

/** Opens the shop as the next start would, keeps what the journal has, and looks at what is there. */
async function judge(folder: string, path: string, acknowledged: number): Promise<Outcome> {
  const { shop, findings } = readShop(readFileSync(path, "utf8"));
  const isWhole = shop?.orders.length === 1 && findings.length === 0;
  const { host, call, open } = aDesk(folder, { launchFile: path });
  const opened = await open();
  const wasRecovered = opened.recovery !== null;
  const after = wasRecovered ? await call("recover", { handle: opened.handle, choice: "keep" }) : opened;
  const found = after.status === "opened" ? Number(after.shop.orders[0]?.note) : -1;
  await host.end();
  const saved = Number(readShop(readFileSync(path, "utf8")).shop?.orders[0]?.note);
  const leftovers = readdirSync(dirname(path)).filter((name) => name.endsWith(".tmp")).length;
  return { path, acknowledged, found: Math.min(found, saved), isWhole, wasRecovered, leftovers };
}
