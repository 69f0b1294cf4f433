import { expect, test } from "vitest";
import { bucketOf, classFrames, operatorHours } from "../../../../core/plan/bound/class-frame.ts";
import { lineSlots } from "../../../../core/plan/bound/line-slots.ts";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { tinyProblem } from "../../../fixtures/tiny-problem.ts";

/** One machine, windows 0-60 and 100-160, one operator, one line due at 130. */
function aProblem(overrides: Partial<PlanProblem> = {}): PlanProblem {
  const tiny = tinyProblem(0);
  const windows = [
    { startMin: 0, endMin: 60 },
    { startMin: 100, endMin: 160 },
  ];
  const machine = { ...tiny.machines[0]!, freeFromMin: 0, blocks: [], windows, segments: windows };
  return {
    ...tiny,
    calendars: [
      {
        calendarId: "c",
        windows,
        operators: windows.map((each) => ({ ...each, operators: 1 })),
        closures: [],
      },
    ],
    classes: [{ ...tiny.classes[0]!, machineIndices: [0], unattended: false, setUpMin: 10, unloadMin: 5 }],
    machines: [machine],
    lines: [{ ...tiny.lines[0]!, dueMin: 130, allowLate: true }],
    options: [],
    committedWork: [],
    ...overrides,
  };
}

test("points are ends of windows and due dates inside them, and buckets end at them", () => {
  const [frame] = classFrames(aProblem());
  expect([...frame!.points]).toEqual([60, 130, 160]);
  expect([0, 60, 61, 130, 160, 161].map((instant) => bucketOf(frame!.points, instant))).toEqual([
    0, 0, 1, 1, 2, 3,
  ]);
});

test("staffed and operator hours lie in the bucket in which they end", () => {
  const problem = aProblem();
  const [frame] = classFrames(problem);
  expect([...frame!.staffedH]).toEqual([1, 0.5, 0.5]);
  expect([...operatorHours(problem, 0, frame!.points)]).toEqual([1, 0.5, 0.5]);
});

test("committed work takes operators away, never more than are there", () => {
  const stretch = { startMin: 30, endMin: 45 };
  const once = aProblem({ committedWork: [{ calendarIndex: 0, stretch }] });
  const twice = aProblem({ committedWork: [0, 0].map((calendarIndex) => ({ calendarIndex, stretch })) });
  const points = Float64Array.of(60);
  expect([...operatorHours(once, 0, points)]).toEqual([0.75]);
  expect([...operatorHours(twice, 0, points)]).toEqual([0.75]);
});

test("unloads after a point: the rest of its window, or the start of the next one and an unload", () => {
  const [frame] = classFrames(aProblem());
  expect([...frame!.unloadAfterMin]).toEqual([5, 105, 131, Infinity]);
});

test("a line has one slot on time and late ones that pay from their start; a hard promise has the first only", () => {
  const problem = aProblem();
  const [frame] = classFrames(problem);
  const line = problem.lines[0]!;
  expect(lineSlots(line, frame!)).toEqual([
    { bucket: 1, earliestMin: -Infinity, limitMin: 130 },
    { bucket: 2, earliestMin: 131, limitMin: 160 },
    { bucket: 3, earliestMin: Infinity, limitMin: Infinity },
  ]);
  expect(lineSlots({ ...line, allowLate: false }, frame!)).toHaveLength(1);
});

test("what is due before the first unload has no slot on time", () => {
  const problem = aProblem();
  const [frame] = classFrames(problem);
  expect(lineSlots({ ...problem.lines[0]!, dueMin: 4 }, frame!)[0]).toMatchObject({
    bucket: 0,
    earliestMin: 5,
  });
  expect(lineSlots({ ...problem.lines[0]!, dueMin: 4, allowLate: false }, frame!)).toEqual([]);
});
