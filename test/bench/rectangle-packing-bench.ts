import { type BenchCall, type BenchRow, atMost, told } from "./bench-row.ts";
import { packBins, packingInstances } from "./rectangle-packing.ts";

/** Bins used over best known ones, in all, and how long it took. With `quick` every tenth instance. */
export function benchRectanglePacking(call: BenchCall): BenchRow[] {
  const all = packingInstances();
  if (!all) {
    call.say("skipped: ../shared/checks/rectangle-packing is not there");
    return [];
  }
  const instances = all.filter((_, index) => !call.quick || index % 10 === 0);
  const start = performance.now();
  const bins = instances.map((instance) => packBins(instance).length);
  const seconds = (performance.now() - start) / 1000;
  const used = bins.reduce((sum, count) => sum + count, 0);
  const best = instances.reduce((sum, { bestKnown }) => sum + bestKnown, 0);
  const below = instances.filter(({ bestKnown }, index) => (bins[index] ?? 0) < bestKnown).length;
  const name = `${instances.length} instances of Berkey and Wang, Martello and Vigo, turning allowed`;
  return [
    atMost(`${name}: bins over best known`, (used / best - 1) * 100, "%", 2),
    atMost(`${name}: instances below best known`, below, "", 0),
    told(`${name}: bins used`, used, ""),
    told(`${name}: time`, seconds, "s"),
  ];
}
