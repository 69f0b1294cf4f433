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
    return sweep(calendar.id, builds.flatMap(worksOf), source.working(first.machine).operators);
  });
}

/** Goes through all starts in order, with the works that are going on then. */
function sweep(calendarId: string, works: readonly Work[], operators: readonly OperatorStretch[]): Finding[] {
  const waiting = works.toSorted((a, b) => a.startMin - b.startMin);
  const points = [...works, ...operators].map(({ startMin }) => startMin).toSorted((a, b) => a - b);
  let going: Work[] = [];
  let next = 0;
  let stretch = 0;
  for (const pointMin of new Set(points)) {
    for (let work = waiting[next]; work && work.startMin <= pointMin; work = waiting[++next])
      going.push(work);
    while ((operators[stretch]?.endMin ?? Infinity) <= pointMin) stretch++;
    going = going.filter(({ endMin }) => endMin > pointMin);
    const finding = checkPoint(calendarId, going, operatorsAt(operators[stretch], pointMin));
    if (finding) return [finding];
  }
  return [];
}

function worksOf(checked: CheckedBuild): Work[] {
  const work = { buildId: checked.build.id, planned: checked.build.state === "planned" };
  return [
    { ...work, startMin: checked.setUpStartMin, endMin: checked.printStartMin },
    { ...work, startMin: checked.unloadStartMin, endMin: checked.unloadEndMin },
  ];
}

/** Null outside shifts: work there breaks another rule. */
function operatorsAt(stretch: OperatorStretch | undefined, minute: number): number | null {
  return stretch && stretch.startMin <= minute ? stretch.operators : null;
}

function checkPoint(calendarId: string, going: readonly Work[], operators: number | null): Finding | null {
  if (operators === null) return null;
  if (going.length <= operators || !going.some(({ planned }) => planned)) return null;
  const ids = going.map(({ buildId }) => buildId).join(", ");
  return broken(
    "operators",
    ["builds", going.find(({ planned }) => planned)?.buildId ?? ""],
    `Calendar ${calendarId} has operators for ${operators} set-ups and unloads at once, but ${going.length} go on together: ${ids}.`,
  );
}
