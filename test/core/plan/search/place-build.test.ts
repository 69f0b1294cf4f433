import { describe, expect, it } from "vitest";
import { MachineWindows } from "../../../../core/plan/search/machine-windows.ts";
import { changeFree } from "../../../../core/plan/search/operator-use.ts";
import { Placer } from "../../../../core/plan/search/place-build.ts";
import { type OneMachine, oneMachine, stretch } from "../../../fixtures/one-machine.ts";

const NO_TAIL = { busySince: () => -1 };

/** Set-up start, print start and unload end of a build, or null where it finds no place. */
function placed(facts: OneMachine, readyMin: number, setUpMin: number, runMin: number): number[] | null {
  const placer = new Placer(new MachineWindows(oneMachine(facts)), NO_TAIL);
  if (!placer.place(0, readyMin, setUpMin, runMin, 0)) return null;
  return [placer.setUpStartMin, placer.printStartMin, placer.unloadEndMin];
}

const DAYS = [stretch(0, 60), stretch(100, 160)];
const OVER_NIGHT = [stretch(0, 160)];

describe("placing a build, attended only", () => {
  it("sets up, prints and unloads in one window when it just fits", () => {
    expect(placed({ windows: DAYS }, 0, 10, 45)).toEqual([0, 10, 60]);
  });

  it("unloads in the next window when the print ends too late for this one: the part waits", () => {
    expect(placed({ windows: DAYS }, 0, 10, 46)).toEqual([0, 10, 105]);
  });

  it("goes to the next window when the print would leave this one by a minute", () => {
    expect(placed({ windows: DAYS }, 5, 10, 45)).toEqual([5, 15, 105]);
    expect(placed({ windows: DAYS }, 6, 10, 45)).toEqual([100, 110, 160]);
  });

  it("never splits a set-up over two windows", () => {
    expect(placed({ windows: DAYS }, 51, 10, 20)).toEqual([100, 110, 135]);
  });

  it("finds no place for a print that is longer than every window", () => {
    expect(placed({ windows: DAYS }, 0, 0, 61)).toBeNull();
  });

  it("finds no place when nobody comes again to unload", () => {
    expect(placed({ windows: DAYS }, 100, 10, 46)).toBeNull();
  });
});

describe("placing a build that may run unattended", () => {
  it("prints through the gap and waits for somebody to unload", () => {
    expect(placed({ windows: DAYS, segments: OVER_NIGHT }, 0, 10, 70)).toEqual([0, 10, 105]);
  });

  it("unloads at once when the print ends in a window", () => {
    expect(placed({ windows: DAYS, segments: OVER_NIGHT }, 0, 10, 110)).toEqual([0, 10, 125]);
  });

  it("may set up until the very end of a window", () => {
    expect(placed({ windows: DAYS, segments: OVER_NIGHT }, 50, 10, 70)).toEqual([50, 60, 135]);
  });
});

describe("placing a build around a time out of service", () => {
  const facts = { windows: [stretch(0, 40), stretch(60, 200)], blocks: [stretch(40, 60)] };

  it("ends with its unload before it", () => {
    expect(placed(facts, 0, 5, 30)).toEqual([0, 5, 40]);
  });

  it("does not wait on the platform through it", () => {
    expect(placed(facts, 0, 5, 31)).toEqual([60, 65, 101]);
  });
});

/** One operator for two machines, away for some minutes. */
function busy(fromMin: number, toMin: number): MachineWindows {
  const windows = new MachineWindows(oneMachine({ windows: [stretch(0, 200)], count: 2 }));
  changeFree(windows.free[0]!, fromMin, toMin, -1);
  return windows;
}

describe("placing a build where operators are short", () => {
  it("waits with the set-up until somebody is free", () => {
    const placer = new Placer(busy(5, 20), NO_TAIL);
    expect(placer.place(0, 0, 10, 30, 0)).toBe(true);
    expect(placer.setUpStartMin).toBe(20);
  });

  it("uses a gap that is just long enough", () => {
    const placer = new Placer(busy(10, 20), NO_TAIL);
    expect(placer.place(0, 0, 10, 30, 0)).toBe(true);
    expect(placer.setUpStartMin).toBe(0);
  });

  it("waits with the unload until somebody is free", () => {
    const placer = new Placer(busy(42, 50), NO_TAIL);
    expect(placer.place(0, 0, 10, 30, 0)).toBe(true);
    expect([placer.setUpStartMin, placer.unloadEndMin]).toEqual([0, 55]);
  });

  it("does not wait for work of the old tail, which makes way", () => {
    const tail = { busySince: (minute: number) => (minute >= 5 && minute < 20 ? 5 : -1) };
    const placer = new Placer(busy(5, 20), tail);
    expect(placer.place(0, 0, 10, 30, 0)).toBe(true);
    expect(placer.setUpStartMin).toBe(0);
  });

  it("counts only stretches with somebody there as time to serve", () => {
    const operators = [
      { startMin: 0, endMin: 30, operators: 0 },
      { startMin: 30, endMin: 200, operators: 1 },
    ];
    expect(placed({ windows: [stretch(0, 200)], operators }, 0, 10, 20)).toEqual([30, 40, 65]);
  });

  it("does not count operators where there are as many as machines", () => {
    expect(new MachineWindows(oneMachine({ windows: DAYS })).free).toEqual([null]);
  });
});
