import { expect, test } from "vitest";
import { choosePlaces } from "../../../core/quote/choose-places.ts";

const TUESDAY = 2 * 1440;
const WEDNESDAY = 3 * 1440;
const THURSDAY = 4 * 1440;
const PLACES = [
  { extraCost: 80, finishMin: [THURSDAY] },
  { extraCost: 95, finishMin: [TUESDAY] },
  { extraCost: 10, finishMin: [null] },
];
const wish = (wantedMin: number | null, allowLate = true) => [{ wantedMin, allowLate, perMin: 40 / 1440 }];

test("a day late at 40 is dearer than 15 more, so the earlier way is taken", () => {
  expect(choosePlaces(PLACES, wish(WEDNESDAY))).toEqual({ at: 1, isHeld: true });
});

test("with no date, or a late one, the cheapest way is taken", () => {
  expect(choosePlaces(PLACES, wish(null))?.at).toBe(0);
  expect(choosePlaces(PLACES, wish(THURSDAY))?.at).toBe(0);
  expect(choosePlaces(PLACES, wish(THURSDAY - 1))?.at).toBe(0);
});

test("a date that must hold takes the way that holds it to the minute, and says when none does", () => {
  expect(choosePlaces(PLACES, wish(THURSDAY - 1, false))).toEqual({ at: 1, isHeld: true });
  expect(choosePlaces(PLACES, wish(TUESDAY, false))).toEqual({ at: 1, isHeld: true });
  expect(choosePlaces(PLACES, wish(TUESDAY - 1, false))).toEqual({ at: 1, isHeld: false });
});

test("ways without a place for every copy are the last resort, and nothing is chosen of nothing", () => {
  expect(choosePlaces([PLACES[2]!], wish(null))).toEqual({ at: 0, isHeld: false });
  expect(choosePlaces([], wish(null))).toBeNull();
});
