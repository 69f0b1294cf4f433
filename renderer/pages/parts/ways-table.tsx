import { createSignal, For, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import { sideUp } from "../../../core/shop/direction.ts";
import { createFamilyMarks, FamilyMark } from "../../components/family-mark.tsx";
import { Check } from "../../components/field.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import type { PricedRoute, Way } from "../../worker/body-messages.ts";

/** A way with one of its directions up. */
export interface ChosenWay {
  readonly way: Way;
  readonly route: PricedRoute;
}

interface WaysTableProps {
  readonly ways: readonly Way[];
  readonly wanted: number;
  readonly chosen: ChosenWay | null;
  readonly onChoose: (chosen: ChosenWay) => void;
}

const MOST_CHARS = 260;

/** Every machine and feedstock as a row: the cheapest way with time, mass and cost each, or the reason why there is none. */
export function WaysTable(props: WaysTableProps): JSX.Element {
  const { shop, format } = useStores();
  const marks = createFamilyMarks();
  const [withForm, setWithForm] = createSignal(false);
  const gradeOf = (id: string) => shop.shop().feedstocks.find((feedstock) => feedstock.id === id);
  const machineName = (id: string | undefined): string =>
    shop.shop().machines.find((machine) => machine.id === id)?.name ?? id ?? "";
  const machineNames = ([first, ...others]: readonly string[]): string =>
    others.length === 0 ? machineName(first) : `${machineName(first)} and ${others.length} alike`;
  const allNames = (ids: readonly string[]): string => ids.map(machineName).join(", ");
  const shown = (): Way[] =>
    props.ways.filter(({ reasons }) => withForm() || !reasons.some(({ code }) => code === "form"));
  return (
    <>
      <Check
        label="Also the feedstocks that do not fit a machine's process"
        checked={withForm()}
        onChange={setWithForm}
      />
      <div class="table-box">
        <table class="table ways">
          <caption class="unseen">Ways to make the part, the cheapest first</caption>
          <thead>
            <tr>
              <th scope="col">Machine, nozzle, feedstock</th>
              <th scope="col" class="num">
                Each, {format().currency}
              </th>
              <th scope="col" class="num">
                In a build
              </th>
              <th scope="col" class="num">
                Build takes
              </th>
              <th scope="col" class="num">
                Mass, {format().mass}
              </th>
              <th scope="col">Up</th>
            </tr>
          </thead>
          <tbody>
            <For each={shown()}>
              {(way) => (
                <tr classList={{ "is-chosen": props.chosen?.way === way }}>
                  <th scope="row">
                    <Show when={way.routes[0]} fallback={<Names way={way} />}>
                      {(route) => (
                        <button
                          type="button"
                          class="link"
                          aria-pressed={props.chosen?.way === way}
                          onClick={() => props.onChoose({ way, route: route() })}
                        >
                          <Names way={way} />
                        </button>
                      )}
                    </Show>
                  </th>
                  <Show when={way.routes[0]} fallback={<Refused way={way} />}>
                    {(best) => (
                      <>
                        <td class="num">
                          <b>
                            {Number.isFinite(best().costPerCopy)
                              ? format().amount(best().costPerCopy)
                              : "never succeeds"}
                          </b>
                        </td>
                        <td class="num">
                          {format().number(best().copies, 0)}
                          <div class="quiet">
                            {best().route.copiesMin}–{best().route.copiesMax}
                          </div>
                        </td>
                        <td class="num">
                          {format().duration(
                            best().builds.find(({ copies }) => copies === best().copies)?.runMin ?? 0,
                          )}
                        </td>
                        <td class="num">{format().massNumber(best().route.massKgPerCopy)}</td>
                        <td>{sideUp(best().route.orientation)}</td>
                      </>
                    )}
                  </Show>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </div>
      <p class="quiet">
        Cost of a copy in a build of as many as the largest order asks for ({format().number(props.wanted, 0)}
        ), or as many as go; without changeover and tool paths.
      </p>
    </>
  );

  function Names(inner: { readonly way: Way }): JSX.Element {
    const grade = () => gradeOf(inner.way.feedstockId);
    return (
      <span class="way-names">
        <span title={shortText(allNames(inner.way.machineIds), 300)}>
          {shortText(machineNames(inner.way.machineIds), 80)}, nozzle {shortText(inner.way.nozzleId, 20)}
        </span>
        <FamilyMark mark={marks().get(grade()?.family ?? "")} name={grade()?.name ?? inner.way.feedstockId} />
      </span>
    );
  }
}

function Refused(props: { readonly way: Way }): JSX.Element {
  const { format } = useStores();
  const words = (): string => props.way.reasons.map(({ sentence }) => sentence).join(" ");
  return (
    <td colSpan={5} class="refused">
      <b>No.</b> {shortText(sentenceInUnits(words(), format()), MOST_CHARS)}
    </td>
  );
}
