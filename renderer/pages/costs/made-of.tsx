import { For, type JSX, Show } from "solid-js";
import type { CostInput, CostLine } from "../../../core/cost/cost-line.ts";
import { KIND_WORDS } from "../../../core/report/words.ts";
import { FieldGroup } from "../../components/entry/entry-fields.tsx";
import { KeyValues } from "../../components/key-values.tsx";
import { NameText } from "../../components/name-text.tsx";
import { inShownUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import type { CostNode } from "./cost-tree.ts";

interface MadeOfProps {
  readonly node: CostNode | null;
  readonly nameOf: (node: CostNode) => string;
  readonly lineName: (line: CostLine) => string;
}

/** More than fit the panel are counted. */
const MOST_LINES = 12;
const MOST_DECIMALS = 6;

/** How the chosen amount is made: of one line its formula and inputs, of a group its largest lines. */
export function MadeOf(props: MadeOfProps): JSX.Element {
  const { format } = useStores();
  const single = (): CostLine | undefined =>
    props.node?.by === "line" || props.node?.lines.length === 1 ? props.node.lines[0] : undefined;
  const largest = (): CostLine[] =>
    [...(props.node?.lines ?? [])].toSorted((a, b) => b.amount - a.amount).slice(0, MOST_LINES);
  return (
    <Show when={props.node} fallback={<p class="quiet">Choose an amount.</p>}>
      {(node) => (
        <>
          <h2 class="side-title">
            <NameText text={props.nameOf(node())} most={80} />
          </h2>
          <p class="made-amount">{format().money(node().shown)}</p>
          <FieldGroup title="How this amount is made">
            <Show
              when={single()}
              fallback={
                <>
                  <p class="quiet">
                    The sum of {format().number(node().lines.length, 0)} lines. Open it down to a line to see
                    the line's formula and inputs. The largest:
                  </p>
                  <ul class="made-list">
                    <For each={largest()}>
                      {(line) => (
                        <li>
                          <bdi>{props.lineName(line)}</bdi> {format().money(line.amount)}
                          <div class="formula quiet">{line.formula}</div>
                        </li>
                      )}
                    </For>
                  </ul>
                </>
              }
            >
              {(line) => <Opened line={line()} />}
            </Show>
          </FieldGroup>
        </>
      )}
    </Show>
  );
}

function Opened(props: { readonly line: CostLine }): JSX.Element {
  const { shop, format } = useStores();
  const facts = () =>
    [
      { name: "Kind", value: KIND_WORDS[props.line.kind] },
      { name: "Order", value: props.line.orderId },
      { name: "Machine", value: named(props.line.machineId, shop.shop().machines) },
      { name: "Feedstock", value: named(props.line.feedstockId, shop.shop().feedstocks) },
      { name: "Build", value: props.line.buildId ?? "" },
    ].filter(({ value }) => value !== "");
  const inputText = (input: CostInput): string => {
    const { value, unit } = inShownUnits(input, format());
    return `${format().number(value, MOST_DECIMALS)} ${unit}`.trim();
  };
  return (
    <>
      <KeyValues pairs={facts()} />
      <p class="formula made-formula">
        <bdi>{props.line.formula}</bdi>
      </p>
      <table class="table">
        <caption class="unseen">Inputs of the formula</caption>
        <tbody>
          <For each={props.line.inputs}>
            {(input) => (
              <tr>
                <th scope="row">
                  <bdi>{input.name}</bdi>
                </th>
                <td class="num">{inputText(input)}</td>
              </tr>
            )}
          </For>
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Amount, not rounded</th>
            <td class="num">{format().number(props.line.amount, MOST_DECIMALS)}</td>
          </tr>
        </tfoot>
      </table>
    </>
  );
}

/** Id and name; nothing where there is none. */
function named(
  id: string | undefined,
  entries: readonly { readonly id: string; readonly name: string }[],
): string {
  return id === undefined ? "" : `${id} ${entries.find((entry) => entry.id === id)?.name ?? ""}`.trim();
}
