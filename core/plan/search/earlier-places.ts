import type { PlanProblem } from "../plan-problem.ts";
import { itemsKey } from "../replan/kept-builds.ts";

/** Items of one build. */
type Items = readonly { readonly optionIndex: number; readonly copies: number }[];

/**
 * Where an earlier plan had its builds, for the search: builds with the same items have the same kind, and every kind has its
 * places. Minutes from the start of the plan. Builds of no kind (-1) have no place to keep; those below have one but do not
 * wait for it (`loose`).
 */
export class EarlierPlaces {
  /** what moving one build costs */
  readonly cost: number;
  /** what moving all of them costs */
  readonly costOfAll: number;
  private readonly machineOf: Int32Array;
  private readonly startOf: Int32Array;
  private readonly aboutOf: Int32Array;
  /** places of each kind, in the order of their starts */
  private readonly places: Int32Array[] = [];
  private readonly kinds = new Map<string, number>();
  /** by option: kinds that are copies of that option alone */
  private readonly singles = new Map<number, { copies: number; kind: number }[]>();

  constructor({ replan, startMin }: PlanProblem) {
    const builds = replan?.builds ?? [];
    this.cost = replan?.costPerBuild ?? 0;
    this.costOfAll = this.cost * builds.length;
    this.machineOf = Int32Array.from(builds, (build) => build.machineIndex);
    this.startOf = Int32Array.from(builds, (build) => build.setUpStartMin - startMin);
    this.aboutOf = Int32Array.from(builds, (build) => build.aboutMin);
    // With nothing to pay for a move nothing is held back for it.
    if (this.cost > 0) builds.forEach(({ items }, place) => this.enter(items, place));
  }

  private enter(items: Items, place: number): void {
    const only = items[0];
    if (!only) return;
    const key = itemsKey(items);
    const kind = this.kinds.get(key) ?? this.places.length;
    this.places[kind] = Int32Array.from([...(this.places[kind] ?? []), place]);
    if (this.kinds.has(key)) return;
    this.kinds.set(key, kind);
    if (items.length > 1) return;
    const known = this.singles.get(only.optionIndex) ?? [];
    this.singles.set(only.optionIndex, [...known, { copies: only.copies, kind }]);
  }

  /** Kind of a build of one option, or -1. */
  kindOfSingle(option: number, copies: number): number {
    if (this.places.length === 0) return -1;
    return this.singles.get(option)?.find((single) => single.copies === copies)?.kind ?? -1;
  }

  kindOf(items: Items): number {
    return this.places.length === 0 ? -1 : (this.kinds.get(itemsKey(items)) ?? -1);
  }

  /** The kind of a build that would be of this kind but does not wait for its place. */
  loose(kind: number): number {
    return kind < 0 ? kind : LOOSE - kind;
  }

  /** When a build of a kind may start that could at `readyMin`: it waits for its earlier place where that lies ahead. */
  heldUntil(kind: number, machine: number, readyMin: number): number {
    if (kind < 0) return readyMin;
    for (const place of this.places[kind]!) {
      const startMin = this.startOf[place]!;
      if (this.machineOf[place] !== machine || startMin + this.aboutOf[place]! < readyMin) continue;
      return startMin > readyMin ? startMin : readyMin;
    }
    return readyMin;
  }

  /** What a build saves that starts at about the time of an earlier place of its kind: the cost of moving it, or 0. */
  saved(kind: number, machine: number, setUpStartMin: number): number {
    if (kind === -1) return 0;
    for (const place of this.places[kind < 0 ? LOOSE - kind : kind]!) {
      if (this.machineOf[place] !== machine) continue;
      if (Math.abs(this.startOf[place]! - setUpStartMin) <= this.aboutOf[place]!) return this.cost;
    }
    return 0;
  }

  /** The most that a build of a kind can save. */
  mostSaved(kind: number): number {
    return kind === -1 ? 0 : this.cost;
  }
}

/** A loose build of kind `k` has the number LOOSE - k. */
const LOOSE = -2;
