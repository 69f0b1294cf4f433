import type { Random } from "../../units/random.ts";
import type { MixedItem } from "./mixed-builds.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/** Builds that one search for a host looks at. */
const TRIES = 8;

/**
 * Items of a build with some more, copies of one option added up; null where a line would come by two options, in too many
 * copies, or as one line too many.
 */
export function joinedItems(
  state: SearchState,
  host: number,
  more: readonly MixedItem[],
): MixedItem[] | null {
  const { data } = state;
  const items = state.itemsOf(host);
  for (const item of more) {
    const line = data.optionLine[item.optionIndex];
    const same = items.findIndex((other) => data.optionLine[other.optionIndex] === line);
    const known = items[same];
    if (!known) {
      items.push(item);
      continue;
    }
    const copies = known.copies + item.copies;
    if (known.optionIndex !== item.optionIndex || copies > data.optionMax[item.optionIndex]!) return null;
    items[same] = { optionIndex: item.optionIndex, copies };
  }
  return items.length <= MOST_ITEMS ? items : null;
}

/** Finds a build of the plan on whose platform copies without a place may go along. */
export class PlatformJoin {
  /** the best host found by `find`, and its items with the new ones */
  host = -1;
  items: readonly MixedItem[] = [];
  copies = 0;
  private readonly trial: Trial;
  private readonly random: Random;

  constructor(trial: Trial, random: Random) {
    this.trial = trial;
    this.random = random;
  }

  /** Money by copy of the best of a few hosts, if it is below `limit`; else `limit`. */
  find(line: number, wanted: number, limit: number): number {
    const { data } = this.trial.state;
    let best = limit;
    for (let turn = 0; turn < TRIES; turn++) {
      const option = this.pick(data.lineOptions[line]!);
      if (option < 0 || data.optionMixKey[option]! < 0) continue;
      const copies = Math.min(wanted, data.optionMax[option]!);
      const host = copies < data.optionMin[option]! ? -1 : this.hostFor(option);
      if (host >= 0) best = this.tryHost(line, { optionIndex: option, copies }, host, best);
    }
    return best;
  }

  private tryHost(line: number, item: MixedItem, host: number, best: number): number {
    const { trial } = this;
    const items = joinedItems(trial.state, host, [item]);
    if (items === null || !this.write(line, host, items, item.copies)) return best;
    const perCopy = trial.evaluate() / item.copies;
    trial.discard();
    if (perCopy >= best) return best;
    this.host = host;
    this.items = items;
    this.copies = item.copies;
    return perCopy;
  }

  /** Writes the best host's new build into the trial. */
  writeBest(line: number): boolean {
    return this.write(line, this.host, this.items, this.copies);
  }

  private write(line: number, host: number, items: readonly MixedItem[], copies: number): boolean {
    const { trial } = this;
    const { state } = trial;
    const build = trial.addMixed(items);
    if (build < 0) return false;
    trial.drop(host);
    trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! - copies);
    const position = state.positionOf[host]!;
    trial.splices.open(state.machineOf[host]!, position, position + 1);
    trial.splices.put(build);
    return true;
  }

  /** A build of the option's key on one of its machines. */
  private hostFor(option: number): number {
    const { state } = this.trial;
    const machine = this.pick(state.data.optionMachines[option]!);
    const length = machine < 0 ? 0 : state.length[machine]!;
    if (length === 0) return -1;
    const sequence = state.sequence[machine]!;
    const from = Math.floor(this.random() * length);
    for (let off = 0; off < length; off++) {
      const host = sequence[(from + off) % length]!;
      const first = state.itemOption[host * MOST_ITEMS]!;
      if (state.data.optionMixKey[first] === state.data.optionMixKey[option]) return host;
    }
    return -1;
  }

  private pick(list: Int32Array): number {
    return list.length === 0 ? -1 : list[Math.floor(this.random() * list.length)]!;
  }
}
