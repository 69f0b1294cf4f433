import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { STLLoader } from "three/examples/jsm/loaders/STLLoader.js";
import { readBody } from "../../core/geometry/read-body.ts";
import { fuzzReaders } from "../fixtures/fuzz-readers.ts";
import { atMost, type BenchCall, type BenchRow, median, told } from "./bench-row.ts";
import { ringStl, ringThreeMf } from "./body-files.ts";
import { benchBodyMeasures } from "./body-measures.ts";
import { runCommand } from "./run-command.ts";

const SEED = 20_261_125;
const TRIANGLES = 1_000_000;
const XML_BYTES = 30_000_000;
const GROWTH = [125_000, 250_000, 500_000, 1_000_000];
const FUZZ_CASES = 20_000;

/** Reading bodies, and measuring them: times cold in a process of their own, growth and comparison warm in this one. */
export async function benchBodies(call: BenchCall): Promise<BenchRow[]> {
  const stl = ringStl(TRIANGLES, SEED);
  const rows = [
    ...(await coldRows(call, "STL of 1 000 000 triangles", "ring.stl", stl, 400, 300)),
    ...(await coldRows(call, "3MF of 30 MB XML", "ring.3mf", ringThreeMf(XML_BYTES, SEED).bytes, 3000, 400)),
    ...growthRows(call),
    loaderRow(call, stl),
    ...benchBodyMeasures(call),
    ...fuzzRows(call),
  ];
  return rows;
}

interface Load {
  readonly readMs: number;
  readonly measureMs: number;
  readonly againMs: number;
  readonly mostMb: number;
  readonly closed: boolean;
}

async function coldRows(
  { quick, say }: BenchCall,
  name: string,
  fileName: string,
  bytes: Uint8Array,
  mostMs: number,
  mostMb: number,
): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "bodies-"));
  const file = join(folder, fileName);
  writeFileSync(file, bytes);
  const loads: Load[] = [];
  for (let round = 0; round < (quick ? 1 : 5); round++) {
    const { stdout } = await runCommand(
      process.execPath,
      ["--import", "tsx", "test/bench/body-load.ts", file],
      [0],
    );
    loads.push(JSON.parse(stdout) as Load);
  }
  rmSync(folder, { recursive: true });
  if (!loads.every(({ closed }) => closed)) throw new Error(`not read as a closed body: ${name}`);
  say(
    `${name}: ${loads.map(({ readMs, measureMs }) => `${readMs.toFixed(0)} + ${measureMs.toFixed(0)}`).join(", ")} ms`,
  );
  return [
    told(`${name}, read`, Math.round(median(loads.map(({ readMs }) => readMs))), "ms"),
    atMost(
      `${name}, read and measured as the first thing of a process`,
      Math.round(median(loads.map(({ readMs, measureMs }) => readMs + measureMs))),
      "ms",
      mostMs,
    ),
    atMost(
      `${name}, read and measured again`,
      Math.round(median(loads.map(({ againMs }) => againMs))),
      "ms",
      mostMs,
    ),
    atMost(`${name}, most memory`, Math.round(median(loads.map((load) => load.mostMb))), "MB", mostMb),
  ];
}

/** Shortest time of some readings, since whatever else the machine does only adds to it. */
function warmMs(rounds: number, act: () => unknown): number {
  let shortest = Infinity;
  for (let round = 0; round < rounds; round++) {
    const startMs = performance.now();
    act();
    shortest = Math.min(shortest, performance.now() - startMs);
  }
  return shortest;
}

const read = (bytes: Uint8Array) => readBody(bytes, { fileName: "ring.stl", unit: "millimeter" });

function growthRows({ quick, say }: BenchCall): BenchRow[] {
  const times = GROWTH.map((triangles) => {
    const bytes = ringStl(triangles, SEED);
    return warmMs(quick ? 2 : 5, () => read(bytes));
  });
  say(
    `read warm: ${GROWTH.map((triangles, place) => `${triangles} in ${times[place]?.toFixed(0)} ms`).join(", ")}`,
  );
  const [first = NaN] = times;
  return [atMost("time for 8 times the triangles", twoDigits((times.at(-1) ?? NaN) / first), "times", 12)];
}

/** three's loader gives corners as they come, so the ratio says what welding and checking take. */
function loaderRow({ quick }: BenchCall, stl: Uint8Array): BenchRow {
  const rounds = quick ? 2 : 5;
  const copy = stl.slice().buffer;
  const theirMs = warmMs(rounds, () => new STLLoader().parse(copy));
  return told(
    "reading against three's STLLoader (which does not weld)",
    twoDigits(warmMs(rounds, () => read(stl)) / theirMs),
    "times",
  );
}

function fuzzRows({ quick, say }: BenchCall): BenchRow[] {
  const tally = fuzzReaders(quick ? FUZZ_CASES / 20 : FUZZ_CASES, SEED);
  say(`damaged files: ${tally.refused} refused, ${tally.open} open, ${tally.closed} closed`);
  for (const fault of tally.faults.slice(0, 5)) say(fault);
  return [
    atMost(`faults in ${tally.cases} damaged files`, tally.faults.length, "", 0),
    atMost("slowest damaged file", Math.round(tally.slowestMs), "ms", 1000),
  ];
}

function twoDigits(value: number): number {
  return Math.round(100 * value) / 100;
}
