import { type PlaceRule, Recreate } from "./recreate.ts";
import { MOST_ITEMS } from "./search-state.ts";
import { Undo } from "./undo.ts";
import type { Walk } from "./walk.ts";

const LATE_SHARE = 0.4;
const WHOLE_LINE_SHARE = 0.35;
const MOST_STRINGS = 3;
const LONGEST_STRING = 4;

/**
 * Ruin and recreate: takes related builds out (a late line's, those near it in time on machines that could make it) and
 * puts their copies back one line after another at the cheapest places, passing over some at random. Sources, from
 * memory: Schrimpf et al. 2000 (the principle); Christiaens & Vanden Berghe 2020 (strings, blinks).
 */
export class Ruin {
  private readonly walk: Walk;
  private readonly undo: Undo;
  private readonly recreate: Recreate;
  private readonly rule: PlaceRule;
  /** lines with copies taken out in this round */
  private readonly open: number[] = [];
  private keys: Float64Array;

  constructor(walk: Walk) {
    this.walk = walk;
    this.undo = new Undo(walk.state);
    this.recreate = new Recreate(walk.trial, walk.random);
    this.rule = { atEnd: false, random: walk.random };
    this.keys = new Float64Array(walk.data.lineCount);
  }

  /** One round. It stands if the plan's money rises by no more than `limit`; true if it stands. */
  round(limit: number): boolean {
    const { walk, undo, open } = this;
    const { trial, state } = walk;
    const before = state.money;
    undo.begin();
    trial.keeper = undo;
    open.length = 0;
    this.takeOut();
    this.sortOpen();
    for (const line of open) this.recreate.placeLine(line, this.rule);
    trial.keeper = null;
    const stands = state.money - before <= limit;
    if (stands) undo.accept();
    else undo.rollBack();
    return stands;
  }

  private takeOut(): void {
    const { walk } = this;
    const seed = this.seedLine();
    if (walk.state.unplaced[seed]! > 0 || walk.state.boughtOut[seed]! > 0) this.release(seed);
    const around = walk.state.firstItemOf(seed);
    const timeMin = around >= 0 ? walk.state.setUpStart[(around / MOST_ITEMS) | 0]! : this.latestStart(seed);
    this.removeLine(seed);
    if (walk.random() < WHOLE_LINE_SHARE) this.removeRelated(seed);
    else this.removeStrings(seed, timeMin);
  }

  private latestStart(line: number): number {
    const option = this.walk.anyOption(line);
    const run = option < 0 ? 0 : this.walk.data.runOf(option, this.walk.data.optionMin[option]!);
    return this.walk.data.dueMin[line]! - run;
  }

  private seedLine(): number {
    const { walk } = this;
    let seed = walk.below(walk.data.lineCount);
    if (walk.random() >= LATE_SHARE) return seed;
    for (let turn = 0; turn < 4; turn++) {
      const other = walk.below(walk.data.lineCount);
      if (walk.state.lineMoney[other]! > walk.state.lineMoney[seed]!) seed = other;
    }
    return seed;
  }

  /** Copies bought out come back to be placed; a line without a place is tried again. */
  private release(line: number): void {
    const { state, trial } = this.walk;
    trial.setCounts(line, 0, state.unplaced[line]! + state.boughtOut[line]!);
    trial.evaluate();
    trial.commit();
    this.note(line);
  }

  private note(line: number): void {
    if (!this.open.includes(line)) this.open.push(line);
  }

  private removeLine(line: number): void {
    const { state } = this.walk;
    let left = MOST_OF_A_LINE;
    for (let slot = state.firstItemOf(line); slot >= 0 && left > 0; slot = state.firstItemOf(line)) {
      this.removeBuild((slot / MOST_ITEMS) | 0);
      left--;
    }
  }

  /** Lines that could take the seed's place: of a few at random those nearest by due date. */
  private removeRelated(seed: number): void {
    const { walk } = this;
    const { dueMin } = walk.data;
    const more = 1 + walk.below(4);
    for (let count = 0; count < more; count++) {
      let near = walk.below(walk.data.lineCount);
      for (let turn = 0; turn < 5; turn++) {
        const other = walk.below(walk.data.lineCount);
        if (Math.abs(dueMin[other]! - dueMin[seed]!) < Math.abs(dueMin[near]! - dueMin[seed]!)) near = other;
      }
      this.removeLine(near);
    }
  }

  private removeStrings(seed: number, timeMin: number): void {
    const { walk } = this;
    const { state } = walk;
    const strings = 1 + walk.below(MOST_STRINGS);
    for (let count = 0; count < strings; count++) {
      const option = walk.anyOption(seed);
      const machine = option < 0 ? -1 : walk.machineFor(option);
      if (machine < 0) continue;
      const wanted = 1 + walk.below(LONGEST_STRING);
      let position = Math.max(0, walk.positionAt(machine, timeMin) - walk.below(wanted + 1));
      for (let taken = 0; taken < wanted && position < state.length[machine]!; taken++) {
        this.removeBuild(state.sequence[machine]![position]!);
      }
    }
  }

  private removeBuild(build: number): void {
    const { state, trial, data } = this.walk;
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + state.itemCount[build]!; slot++) {
      const line = data.optionLine[state.itemOption[slot]!]!;
      trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! + state.itemCopies[slot]!);
      this.note(line);
    }
    trial.drop(build);
    const position = state.positionOf[build]!;
    trial.splices.open(state.machineOf[build]!, position, position + 1);
    if (trial.evaluate() === Infinity) trial.discard();
    else trial.commit();
  }

  /** Order in which lines are placed again: at random, by due date, by cost of lateness, or the largest first. */
  private sortOpen(): void {
    const { walk, open, keys } = this;
    const { data, state } = walk;
    const order = walk.below(4);
    for (const line of open) {
      if (order === 0) keys[line] = walk.random();
      else if (order === 1) keys[line] = data.dueMin[line]!;
      else if (order === 2) keys[line] = -data.wholeRate[line]! - data.pieceRate[line]!;
      else keys[line] = -this.workOf(line) * state.unplaced[line]!;
    }
    open.sort((a, b) => keys[a]! - keys[b]! || a - b);
  }

  private workOf(line: number): number {
    const { data } = this.walk;
    const option = data.lineOptions[line]![0];
    if (option === undefined) return 0;
    return data.runOf(option, data.optionMax[option]!) / data.optionMax[option]!;
  }
}

/** Builds of one line that one round takes out at most. */
const MOST_OF_A_LINE = 12;
