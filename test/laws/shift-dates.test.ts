import { describe, expect, test } from "vitest";
import { type Chances, USUAL_CHANCES } from "../../core/quote/dates/chances.ts";
import { jointLikelihood } from "../../core/quote/dates/likelihood.ts";
import { simulate } from "../../core/quote/dates/simulate.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import { aTask, bareMachine, type BuildSketch, MONDAY_MIN } from "../fixtures/a-dated-plan.ts";
import { aCalendar } from "../fixtures/a-route.ts";

/**
 * One machine in a works with a day shift, Monday to Friday 06:00 to 14:00, told a second time and plainly, minute 0 being Monday
 * 00:00: likelihoods of the simulation are held against those of this telling with draws of its own.
 */
interface Works {
  /** a print may go on over the nights of a week and until Saturday 06:00; else only while somebody is there */
  readonly nights: boolean;
  readonly chances: Chances;
  readonly failuresPerMin: number;
}

const SET_UP_MIN = 10;
const UNLOAD_MIN = 5;
const H = 60;
const DAY = 24 * H;

/** Start and end of the first shift that is not over at a time. */
function shiftAt(atMin: number): readonly [number, number] {
  for (let day = Math.floor(atMin / DAY); ; day++) {
    if (day % 7 < 5 && day * DAY + 14 * H > atMin) return [day * DAY + 6 * H, day * DAY + 14 * H];
  }
}

/** First end of work of a length that lies inside one shift. */
function workEnd(fromMin: number, lengthMin: number): number {
  const [startMin, endMin] = shiftAt(fromMin);
  const atMin = Math.max(fromMin, startMin);
  return atMin + lengthMin <= endMin ? atMin + lengthMin : workEnd(endMin, lengthMin);
}

/** When people leave for good before a print begun then would have to be over. */
function leaveMin({ nights }: Works, atMin: number): number {
  if (!nights) return shiftAt(atMin)[1];
  return Math.floor(atMin / (7 * DAY)) * 7 * DAY + 4 * DAY + 14 * H;
}

function lastMin(works: Works, atMin: number): number {
  return leaveMin(works, atMin) + (works.nights ? 16 * H : works.chances.stayOnMin);
}

/** End of the first set-up after which a print of a length fits; for one that was stopped, by when it must be over at last. */
function setUpEnd(works: Works, fromMin: number, lengthMin: number, known: boolean): number {
  const endMin = workEnd(fromMin, SET_UP_MIN);
  const startMin = endMin - SET_UP_MIN;
  const limitMin = known ? lastMin(works, startMin) : leaveMin(works, startMin) + works.chances.overtimeMin;
  if (endMin + lengthMin <= limitMin) return endMin;
  return setUpEnd(works, leaveMin(works, startMin), lengthMin, known);
}

/** When the last of some builds is off the machine in one life of the works; Infinity: one was stopped that fits no shift. */
function live(works: Works, builds: readonly BuildSketch[], random: Random): number {
  let freeMin = 0;
  for (const { atMin, runMin } of builds) {
    const takesMin = runMin * lognormal(random, works.chances.buildVariation);
    let readyMin = Math.max(freeMin, atMin);
    let known = false;
    for (;;) {
      if (known && !works.nights && SET_UP_MIN + takesMin > 8 * H + works.chances.stayOnMin) return Infinity;
      const printMin = setUpEnd(works, readyMin, known ? takesMin : runMin, known);
      const failsMin = -Math.log(1 - random()) / works.failuresPerMin;
      const endMin = printMin + Math.min(takesMin, failsMin);
      const stopMin = lastMin(works, printMin - SET_UP_MIN);
      if (endMin > stopMin) known = true;
      readyMin = workEnd(Math.min(endMin, stopMin), UNLOAD_MIN);
      if (endMin <= stopMin && failsMin >= takesMin) break;
    }
    freeMin = readyMin;
  }
  return freeMin;
}

function lognormal(random: Random, variation: number): number {
  const sigma = Math.sqrt(Math.log(1 + variation ** 2));
  const z = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return Math.exp(sigma * z - sigma ** 2 / 2);
}

const RUNS = 20_000;

/** Largest distance between the likelihoods of the two tellings over many dates, in standard errors of their difference. */
function distance(works: Works, builds: readonly BuildSketch[]): number {
  const machine = bareMachine({
    setUpMin: SET_UP_MIN,
    unloadMin: UNLOAD_MIN,
    failuresPer1000H: works.failuresPerMin * 60_000,
    unattended: works.nights,
    unattendedMaxH: 16,
  });
  const own = builds.map((build) => ({ ...build, orders: ["O-1"] }));
  const task = aTask({ machines: [machine], calendars: [aCalendar()], builds: own }, works.chances);
  const dates = simulate(task, { runs: RUNS, seed: 21 });
  const random = seededRandom(77);
  const ends = Array.from({ length: RUNS }, () => live(works, builds, random));
  let largest = 0;
  for (let byMin = 6 * H; byMin < 21 * DAY; byMin += 97) {
    const told = jointLikelihood(dates, [{ orderId: "O-1", byMin: MONDAY_MIN + byMin }]);
    if (told.status === "unknown") throw new Error(told.reasons.join(" "));
    const lived = ends.filter((endMin) => endMin <= byMin).length / RUNS;
    const error = Math.sqrt((2 * Math.max(lived * (1 - lived), 1e-4)) / RUNS);
    largest = Math.max(largest, Math.abs(told.likelihood - lived) / error);
  }
  return largest;
}

describe("likelihoods of any date are those of a plain second telling, within 4.5 standard errors", () => {
  const usual = { ...USUAL_CHANCES, machineVariation: 0, buildVariation: 0.15 };
  const short: BuildSketch[] = [
    { id: "A", atMin: 6 * H, runMin: 200 },
    { id: "B", atMin: 6 * H + 215, runMin: 230 },
    { id: "C", atMin: DAY + 6 * H, runMin: 380 },
  ];
  const long: BuildSketch[] = [
    { id: "A", atMin: 6 * H, runMin: 900 },
    { id: "B", atMin: DAY + 6 * H, runMin: 1300 },
    { id: "C", atMin: 3 * DAY + 7 * H, runMin: 1500 },
  ];

  test("for a machine that somebody must watch, prints of 3 to 6 h, people who stay up to 2 h", () => {
    expect(distance({ nights: false, chances: usual, failuresPerMin: 1e-4 }, short)).toBeLessThan(4.5);
  });

  test("for the same where people stay 4 h, so that what is stopped is rare", () => {
    const chances = { ...usual, stayOnMin: 240, overtimeMin: 0 };
    expect(distance({ nights: false, chances, failuresPerMin: 5e-4 }, short)).toBeLessThan(4.5);
  });

  test("for a machine that runs alone for up to 16 h, prints of 15 to 25 h", () => {
    expect(distance({ nights: true, chances: usual, failuresPerMin: 2e-4 }, long)).toBeLessThan(4.5);
  });
});
