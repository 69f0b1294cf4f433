import { createMemo, For, type JSX } from "solid-js";
import type { LetteredStudy } from "../../../core/report/case-view.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";
import { machineUses, pct, runningLines } from "./figures.ts";

interface RunningProps {
  readonly view: AnswerView;
  readonly own: LetteredStudy;
}

/** How the works runs in a mean year, as it is and with a candidate: orders, money, feedstock. */
export function RunningSection(props: RunningProps): JSX.Element {
  const { format } = useStores();
  const lines = createMemo(() => runningLines(props.view.study.without, props.own.figures, format()));
  return (
    <AnswerSection title={`The works in a mean year, with and without ${props.own.letter}`}>
      <table class="table running">
        <thead>
          <tr>
            <td />
            <th scope="col" class="num">
              as it is
            </th>
            <th scope="col" class="num">
              with {props.own.letter}
            </th>
            <th scope="col" class="num">
              change
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={lines()}>
            {(line) => (
              <tr>
                <th scope="row">{line.label}</th>
                <td class="num">{line.without}</td>
                <td class="num">{line.withIt}</td>
                <td class="num" classList={{ quiet: line.change === "same" }}>
                  {line.change}
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="quiet">
        Means of all scenarios, for 52 weeks. Costs are in cash terms: neither depreciation nor overhead.
      </p>
    </AnswerSection>
  );
}

/** Hours in use of staffed hours by machine, as it is and with a candidate. */
export function UseSection(props: RunningProps): JSX.Element {
  const { format } = useStores();
  const uses = createMemo(() =>
    machineUses(props.view.study.without, props.own.figures, machineNames(props.view, props.own)),
  );
  const most = (): number => Math.max(1, ...uses().flatMap((use) => [use.without ?? 0, use.withIt ?? 0]));
  const width = (share: number | null): string => `${(100 * (share ?? 0)) / most()}%`;
  const text = (share: number | null): string => (share === null ? "not there" : pct(format(), share, 0));
  return (
    <AnswerSection title={`Machines in use, with and without ${props.own.letter}`}>
      <table class="bars">
        <caption class="unseen">Hours in use of staffed hours by machine</caption>
        <thead class="unseen">
          <tr>
            <th scope="col">Machine</th>
            <th scope="col">As it is</th>
            <th scope="col">With {props.own.letter}</th>
          </tr>
        </thead>
        <tbody>
          <For each={uses()}>
            {(use) => (
              <tr>
                <th scope="row">
                  <NameText text={use.name} most={80} />
                </th>
                <td class="bars-words">
                  <span class="quiet">as it is</span> {text(use.without)}
                </td>
                <td class="num bars-end">
                  <span class="quiet">with {props.own.letter}</span> {text(use.withIt)}
                </td>
                <td class="bars-track is-double" aria-hidden="true">
                  <i class="use-without" style={{ width: width(use.without) }} />
                  <i class="use-with" style={{ width: width(use.withIt) }} />
                  <i class="bars-zero" style={{ left: width(1) }} />
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="quiet">
        Hours in use of the hours in which somebody is there: hatched as it is, full with {props.own.letter};
        the line is all of them. A machine that also runs with nobody there comes to more.
      </p>
    </AnswerSection>
  );
}

/** Names of the machines of the shop and of those that the candidate adds. */
function machineNames({ shop }: AnswerView, { candidate }: LetteredStudy): Map<string, string> {
  const added = candidate.changes.flatMap((change): [string, string][] => {
    if (change.kind === "add-machine") return [[change.machine.id, change.machine.name]];
    return change.kind === "add-alike" ? [[change.id, change.name]] : [];
  });
  return new Map([...added, ...shop.machines.map(({ id, name }): [string, string] => [id, name])]);
}
