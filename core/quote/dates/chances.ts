/** What is taken for granted about chance where a shop has no figure of its own. */
export interface Chances {
  /** coefficient of variation of a build's deposition time about its estimate, each build by itself */
  readonly buildVariation: number;
  /** the same for all builds of one machine together: its time factor is not known exactly */
  readonly machineVariation: number;
  /** share of prints that fail in their first layers, 0 to 1, besides the machine's failures per hour */
  readonly startFailureShare: number;
  /** printing time that such a failed start costs, min */
  readonly startFailureMin: number;
  /** true: a failed print is seen only when it should have ended; false: the machine stops and shows it */
  readonly seenAtEnd: boolean;
  /** how long somebody stays on for a print that is not over when people leave and that may not run alone, min */
  readonly stayOnMin: number;
  /** a print that is behind the plan is still begun where its estimate ends at most so long after people leave, min */
  readonly overtimeMin: number;
  /** how long before its time in the plan a set-up may begin, where machine, people and feedstock are ready, min */
  readonly earlyStartMin: number;
}

/**
 * The usual chances. An estimate is good to about 10 % (band of this planner's estimates), taken here as one standard
 * deviation: 8 % by the build and 6 % by the machine, sqrt(0.08^2 + 0.06^2) = 10 %. A shop that knows its own spread gives
 * it. No failed starts by themselves; builds begin when planned or later, never earlier; people stay on for up to two hours rather than lose a print (common practice, no
 * source: local rules of working time come first). Example: of prints estimated at 10 h two of three take 9 to 11 h.
 */
export const USUAL_CHANCES: Chances = {
  buildVariation: 0.08,
  machineVariation: 0.06,
  startFailureShare: 0,
  startFailureMin: 30,
  seenAtEnd: false,
  stayOnMin: 120,
  overtimeMin: 30,
  earlyStartMin: 0,
};
