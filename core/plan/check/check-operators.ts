import type { Finding } from "../../shop/finding.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import type { OperatorStretch, Stretch } from "../plan-problem.ts";

/** One set-up or unload. */
interface Work extends Stretch {
  readonly buildId: string;
  readonly planned: boolean;
}

/**
 * Set-ups and unloads that go on at once in one calendar, committed ones included, are never more than its operators then.
 * The first minute of every calendar that has too many is named; too many committed ones alone are not the plan's doing.
 */
export function checkOperators(source: CheckSource): Finding[] {
  return source.shop.calendars.flatMap((calendar) => {
    const builds = [...source.planned, ...source.fixed].filter(
      ({ machine }) => machine.calendarId === calendar.id,
    );
    const first = builds[0];
    if (!first) return [];
    const works = builds.flatMap(worksOf);
    const { operators } = source.working(first.machine);
    const points = [...works, ...operators].map(({ startMin }) => startMin).toSorted((a, b) => a - b);
    for (const pointMin of new Set(points)) {
      const finding = checkPoint(calendar.id, works, operatorsAt(operators, pointMin), pointMin);
      if (finding) return [finding];
    }
    return [];
  });
}

function worksOf(checked: CheckedBuild): Work[] {
  const work = { buildId: checked.build.id, planned: checked.build.state === "planned" };
  return [
    { ...work, startMin: checked.setUpStartMin, endMin: checked.printStartMin },
    { ...work, startMin: checked.unloadStartMin, endMin: checked.unloadEndMin },
  ];
}

/** Null outside shifts: work there breaks another rule. */
function operatorsAt(stretches: readonly OperatorStretch[], minute: number): number | null {
  const stretch = stretches.find(({ startMin, endMin }) => startMin <= minute && minute < endMin);
  return stretch ? stretch.operators : null;
}

function checkPoint(
  calendarId: string,
  works: readonly Work[],
  operators: number | null,
  pointMin: number,
): Finding | null {
  if (operators === null) return null;
  const going = works.filter(({ startMin, endMin }) => startMin <= pointMin && pointMin < endMin);
  if (going.length <= operators || !going.some(({ planned }) => planned)) return null;
  const ids = going.map(({ buildId }) => buildId).join(", ");
  return broken(
    "operators",
    ["builds", going.find(({ planned }) => planned)?.buildId ?? ""],
    `Calendar ${calendarId} has operators for ${operators} set-ups and unloads at once, but ${going.length} go on together: ${ids}.`,
  );
}
