import { For, type JSX } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import { useStores } from "../../store/stores.ts";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";
import { figureGroups } from "./figures.ts";

const MOST_NAME_CHARS = 60;

interface FiguresProps {
  readonly view: AnswerView;
  readonly chosenId: string;
  readonly onChoose: (candidateId: string) => void;
}

/** The figures of all candidates side by side; the head of a column opens that candidate below. */
export function FiguresTable(props: FiguresProps): JSX.Element {
  const { format } = useStores();
  const isTaken = (id: string): boolean => props.view.study.bundle?.best.candidateIds.includes(id) ?? false;
  return (
    <AnswerSection title="What each is worth">
      <div class="table-box figures-box" tabindex="0" role="group" aria-label="Figures of the candidates">
        <table class="table figures">
          <caption class="unseen">
            Figures of each candidate. Pays at: multiples of what is expected or of today's price at which the
            value is not below 0; any and none: as far as was looked at.
          </caption>
          <thead>
            <tr>
              <td />
              <For each={props.view.candidates}>
                {({ letter, candidate }) => (
                  <th scope="col" classList={{ "is-chosen": candidate.id === props.chosenId }}>
                    <button
                      type="button"
                      class="figures-head"
                      aria-pressed={candidate.id === props.chosenId}
                      onClick={() => props.onChoose(candidate.id)}
                    >
                      <span class="letter-mark">{letter}</span>
                      <bdi class="figures-name">{shortText(candidate.name, MOST_NAME_CHARS)}</bdi>
                      <span class="figures-taken">{isTaken(candidate.id) ? "in the best bundle" : ""}</span>
                    </button>
                  </th>
                )}
              </For>
            </tr>
          </thead>
          <For each={figureGroups(props.view.candidates, format(), props.view.isFurther)}>
            {(group) => (
              <tbody>
                <tr class="figures-group">
                  <th scope="rowgroup" colSpan={props.view.candidates.length + 1}>
                    {group.title}
                  </th>
                </tr>
                <For each={group.lines}>
                  {(line) => (
                    <tr classList={{ "figures-main": line.isMain ?? false }}>
                      <th scope="row">{line.label}</th>
                      <For each={line.cells}>
                        {(cell, place) => (
                          <td
                            class="num"
                            classList={{
                              "is-chosen": props.view.candidates[place()]?.candidate.id === props.chosenId,
                            }}
                          >
                            {cell}
                          </td>
                        )}
                      </For>
                    </tr>
                  )}
                </For>
              </tbody>
            )}
          </For>
        </table>
      </div>
    </AnswerSection>
  );
}
