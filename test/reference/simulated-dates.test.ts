/**
 * Simulated dates held against closed forms: the lognormal law, the sum of lognormal times by its moments (Fenton 1960, The Sum
 * of Log-Normal Probability Distributions in Scatter Transmission Systems, from memory), prints that start again after a
 * failure (Asmussen, Fiorini, Lipsky, Rolski and Sheahan 2008, Math. Oper. Res. 33:932-944, abstract; forms derived in
 * core/estimate/failure.ts), the quantile of type 7 (Hyndman and Fan 1996, from memory) and the asymptotic error of a quantile
 * sqrt(p (1 - p) / n) / f (textbook, from memory). Limits are 4 standard errors of the runs made, unless said.
 */
import { describe, expect, test } from "vitest";
import { restartOutlook } from "../../core/estimate/failure.ts";
import { type Chances, USUAL_CHANCES } from "../../core/quote/dates/chances.ts";
import { jointLikelihood, orderDates } from "../../core/quote/dates/likelihood.ts";
import { type SimulatedDates, simulate } from "../../core/quote/dates/simulate.ts";
import {
  type Lognormal,
  lognormalOf,
  lognormalQuantile,
  lognormalShareBelow,
  lognormalSum,
} from "../../core/quote/lognormal-law.ts";
import { likelihoodError } from "../../core/quote/sample-quantile.ts";
import { aTask, bareMachine, CALM, type DatedSketch, MONDAY_MIN } from "../fixtures/a-dated-plan.ts";

const RUNS = 40_000;
/** No set-up and no unload, so that a date is a print time and nothing else. */
const bare = { setUpMin: 0, unloadMin: 0 };

function simulated(sketch: DatedSketch, chances: Partial<Chances>, runs = RUNS): SimulatedDates {
  return simulate(aTask(sketch, { ...CALM, ...chances }), { runs, seed: 11 });
}

/** Hours from the start of the plan to the end of the first order, by run. */
function hoursOf(dates: SimulatedDates): Float64Array {
  return (dates.finishedMin[0] ?? new Float64Array(0)).map((atMin) => atMin / 60);
}

function meanAndVariance(values: Float64Array): { mean: number; variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, variance: squares / (values.length - 1) };
}

/** Hours by which the first order is whole with a likelihood, %. */
function keptH(dates: SimulatedDates, likelihoodPct: number): number {
  const answer = orderDates(dates, "O-A", [likelihoodPct]);
  if (answer.status === "undated") throw new Error(answer.reasons.join(" "));
  return ((answer.kept[0]?.byMin ?? Number.NaN) - MONDAY_MIN) / 60;
}

describe("one print of mean 20 h and variation 0.3 with nothing before and after it", () => {
  const builds = [{ id: "A", atMin: 0, setUpMin: 0, runMin: 1200 }];
  const law = lognormalOf(20, 0.3);
  const dates = simulated({ machines: [bareMachine(bare)], builds }, { buildVariation: 0.3 });

  test.each([50, 80, 90, 95])("keeps the %i %% quantile of the lognormal law", (likelihoodPct) => {
    const share = likelihoodPct / 100;
    const exactH = lognormalQuantile(law, share);
    const errorH = likelihoodError(share, RUNS) / densityAt(law, exactH);
    expect(Math.abs(keptH(dates, likelihoodPct) - exactH)).toBeLessThan(4 * errorH + 1 / 60);
  });

  test("keeps 24 h with 0.7787 (own instance, recomputed)", () => {
    const kept = jointLikelihood(dates, [{ orderId: "O-A", byMin: MONDAY_MIN + 1440 }]);
    if (kept.status === "unknown") throw new Error("no likelihood");
    expect(Math.abs(kept.likelihood - 0.7787)).toBeLessThan(4 * kept.standardError);
    expect(Math.abs(kept.likelihood - lognormalShareBelow(law, 24))).toBeLessThan(4 * kept.standardError);
  });

  test("states the standard error of its 80 % date within 20 % of the asymptotic one", () => {
    const answer = orderDates(dates, "O-A", [80]);
    const statedMin = answer.status === "dated" ? (answer.kept[0]?.errorMin ?? 0) : 0;
    const exactH = likelihoodError(0.8, RUNS) / densityAt(law, lognormalQuantile(law, 0.8));
    expect(Math.abs(statedMin / 60 / exactH - 1)).toBeLessThan(0.2);
  });

  test("errs over 40 simulations of 500 runs as much as each of them states, within 35 %", () => {
    const task = aTask({ machines: [bareMachine(bare)], builds }, { ...CALM, buildVariation: 0.3 });
    const told = Array.from({ length: 40 }, (_, seed) => {
      const answer = orderDates(simulate(task, { runs: 500, seed }), "O-A", [80]);
      return answer.status === "dated" ? answer.kept[0] : undefined;
    });
    const spread = meanAndVariance(Float64Array.from(told, (kept) => kept?.byMin ?? 0));
    const stated = meanAndVariance(Float64Array.from(told, (kept) => kept?.errorMin ?? 0)).mean;
    expect(Math.abs(stated / Math.sqrt(spread.variance) - 1)).toBeLessThan(0.35);
  });
});

/** Density of a lognormal law. */
function densityAt({ mu, sigma }: Lognormal, time: number): number {
  const z = (Math.log(time) - mu) / sigma;
  return Math.exp((-z * z) / 2) / (Math.sqrt(2 * Math.PI) * sigma * time);
}

describe("three prints one after another, each begun as soon as the machine is free", () => {
  const hours = [5, 8, 3];
  const builds = hours.map((runH, index) => ({
    id: `B${index}`,
    orders: ["O-A"],
    atMin: 60 * hours.slice(0, index).reduce((sum, value) => sum + value, 0),
    setUpMin: 0,
    runMin: 60 * runH,
  }));
  const sketch = { machines: [bareMachine(bare)], builds };
  const pull = { earlyStartMin: Infinity };

  test("take the mean and the variance of the sum, and its 90 % quantile by Fenton within 1 %", () => {
    const dates = simulated(sketch, { ...pull, buildVariation: 0.3 });
    const { mean, variance } = meanAndVariance(hoursOf(dates));
    const exact = hours.reduce((sum, runH) => sum + (0.3 * runH) ** 2, 0);
    expect(Math.abs(mean - 16)).toBeLessThan(4 * Math.sqrt(exact / RUNS));
    expect(Math.abs(variance / exact - 1)).toBeLessThan(0.05);
    const law = lognormalSum(hours.map((runH) => lognormalOf(runH, 0.3)));
    expect(Math.abs(keptH(dates, 90) / lognormalQuantile(law, 0.9) - 1)).toBeLessThan(0.01);
  });

  test("vary together where the machine's own factor is unknown: the sum is one lognormal time of 16 h", () => {
    const dates = simulated(sketch, { ...pull, machineVariation: 0.3 });
    const law = lognormalOf(16, 0.3);
    for (const pct of [50, 80, 95]) {
      expect(Math.abs(keptH(dates, pct) / lognormalQuantile(law, pct / 100) - 1)).toBeLessThan(0.01);
    }
  });

  test("lose what they gain where nothing begins before its time in the plan: never earlier, and later on average", () => {
    const planned = hoursOf(simulated(sketch, { buildVariation: 0.3 }));
    const pulled = hoursOf(simulated(sketch, { ...pull, buildVariation: 0.3 }));
    expect(planned.every((atH, run) => atH >= (pulled[run] ?? 0) - 1e-9)).toBe(true);
    expect(meanAndVariance(planned).mean).toBeGreaterThan(16.5);
  });
});

test("two builds, the second not before its planned start: P(T <= t) by the integral over the first print", () => {
  const builds = [
    { id: "B0", orders: ["O-A"], atMin: 0, setUpMin: 0, runMin: 600 },
    { id: "B1", orders: ["O-A"], atMin: 600, setUpMin: 0, runMin: 600 },
  ];
  const dates = simulated({ machines: [bareMachine(bare)], builds }, { buildVariation: 0.3 });
  const law = lognormalOf(10, 0.3);
  for (const byH of [18, 21, 26]) {
    const kept = jointLikelihood(dates, [{ orderId: "O-A", byMin: MONDAY_MIN + byH * 60 }]);
    if (kept.status === "unknown") throw new Error("no likelihood");
    expect(Math.abs(kept.likelihood - twoInSequence(law, 10, byH))).toBeLessThan(4 * kept.standardError);
  }
});

/** Likelihood that max(first, planned) + second is at most so much: midpoints of 20 000 equal shares of the first. */
function twoInSequence(law: Lognormal, plannedH: number, byH: number): number {
  const cells = 20_000;
  let sum = 0;
  for (let cell = 0; cell < cells; cell++) {
    const firstH = lognormalQuantile(law, (cell + 0.5) / cells);
    sum += lognormalShareBelow(law, byH - Math.max(plannedH, firstH));
  }
  return sum / cells;
}

describe("a print that starts again after each failure", () => {
  const failing = (runH: number, perH: number, more: Partial<Chances> = {}, work = bare) =>
    simulated(
      {
        machines: [bareMachine({ ...work, failuresPer1000H: 1000 * perH })],
        builds: [{ id: "A", atMin: 0, setUpMin: work.setUpMin, runMin: runH * 60 }],
      },
      more,
    );

  test("takes (e^(rt) - 1) / r with its variance and its failures: 0.01 per h, 100 h", () => {
    const dates = failing(100, 0.01);
    const outlook = restartOutlook(0.01, 100);
    const { mean, variance } = meanAndVariance(hoursOf(dates));
    expect(Math.abs(mean - 171.8282)).toBeLessThan(4 * Math.sqrt(outlook.varianceH2 / RUNS));
    expect(Math.abs(variance / 9524.9 - 1)).toBeLessThan(0.06);
    const failuresError = Math.sqrt((outlook.expectedFailures * (1 + outlook.expectedFailures)) / RUNS);
    expect(Math.abs(dates.failuresPerRun - 1.71828)).toBeLessThan(4 * failuresError);
  });

  test("succeeds at the first attempt with e^(-rt): 0.005 per h, 40 h: 0.818731", () => {
    const first = hoursOf(failing(40, 0.005)).filter((atH) => atH < 40 + 1e-6).length / RUNS;
    expect(Math.abs(first - 0.818731)).toBeLessThan(4 * likelihoodError(0.818731, RUNS));
  });

  test.each([
    ["stops and shows it", {}, bare, 44.2806],
    ["is seen only when it should have ended", { seenAtEnd: true }, bare, 48.8561],
    ["takes 2 h of clearing and set-up for each failure", {}, { setUpMin: 90, unloadMin: 30 }, 44.7234 + 2],
  ])(
    "of 40 h with 0.005 per h that %s takes its mean (own instances, recomputed)",
    (_, chances, work, meanH) => {
      const { mean, variance } = meanAndVariance(hoursOf(failing(40, 0.005, chances, work)));
      expect(Math.abs(mean - meanH)).toBeLessThan(4 * Math.sqrt(variance / RUNS));
    },
  );

  test("of 10 h with 0.01 per h and 5 % failed starts of half an hour takes 10.5462 h", () => {
    const { mean, variance } = meanAndVariance(hoursOf(failing(10, 0.01, { startFailureShare: 0.05 })));
    expect(Math.abs(mean - 10.5462)).toBeLessThan(4 * Math.sqrt(variance / RUNS));
  });

  test("and whose length is lognormal takes the mean of that over the law", () => {
    const law = lognormalOf(100, 0.2);
    const cells = 2000;
    let exactH = 0;
    for (let cell = 0; cell < cells; cell++) {
      const runH = lognormalQuantile(law, (cell + 0.5) / cells);
      exactH += restartOutlook(0.005, runH).expectedH / cells;
    }
    const { mean, variance } = meanAndVariance(hoursOf(failing(100, 0.005, { buildVariation: 0.2 })));
    expect(Math.abs(mean - exactH)).toBeLessThan(4 * Math.sqrt(variance / RUNS));
  });
});

describe("two orders", () => {
  const machines = [bareMachine(bare), bareMachine({ ...bare, id: "F2" })];
  const wanted = [
    { orderId: "O-A", byMin: MONDAY_MIN + 660 },
    { orderId: "O-B", byMin: MONDAY_MIN + 660 },
  ];
  const law = lognormalOf(10, 0.3);
  const alone = lognormalShareBelow(law, 11);

  test("on machines that share nothing are kept together with the product", () => {
    const builds = [
      { id: "A", atMin: 0, setUpMin: 0, runMin: 600 },
      { id: "B", machine: "F2", atMin: 0, setUpMin: 0, runMin: 600 },
    ];
    const joint = jointLikelihood(simulated({ machines, builds }, { buildVariation: 0.3 }), wanted);
    if (joint.status === "unknown") throw new Error("no likelihood");
    expect(Math.abs(joint.likelihood - alone ** 2)).toBeLessThan(4 * joint.standardError);
  });

  test("in one build are kept together as likely as each alone", () => {
    const builds = [{ id: "A", orders: ["O-A", "O-B"], atMin: 0, setUpMin: 0, runMin: 600 }];
    const joint = jointLikelihood(simulated({ machines, builds }, { buildVariation: 0.3 }), wanted);
    if (joint.status === "unknown") throw new Error("no likelihood");
    expect(Math.abs(joint.likelihood - alone)).toBeLessThan(4 * joint.standardError);
  });
});

test("a running print that has lasted as long as its mean goes on as the lognormal law beyond that says", () => {
  const builds = [{ id: "A", atMin: -1200, setUpMin: 0, runMin: 1200, state: "running" as const }];
  const dates = simulated({ machines: [bareMachine(bare)], builds }, { buildVariation: 0.3 });
  const law = lognormalOf(20, 0.3);
  const below = lognormalShareBelow(law, 20);
  for (const pct of [50, 80, 95]) {
    const exactH = lognormalQuantile(law, below + (pct / 100) * (1 - below)) - 20;
    expect(Math.abs(keptH(dates, pct) - exactH)).toBeLessThan(0.15);
  }
});

test("by the usual chances two of three prints of 10 h take 9 to 11 h", () => {
  const builds = [{ id: "A", atMin: 0, setUpMin: 0, runMin: 600 }];
  const hours = hoursOf(simulated({ machines: [bareMachine(bare)], builds }, USUAL_CHANCES));
  const within = hours.filter((atH) => atH > 9 && atH < 11).length / RUNS;
  expect(Math.abs(within - 0.6827)).toBeLessThan(0.015);
});
