import { For, type JSX } from "solid-js";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { timeText } from "./answer-words.ts";
import type { Offered } from "./offered.ts";
import type { QuoteState } from "./quote-state.ts";

interface AnswerLinesProps {
  readonly offered: Offered;
  readonly state: QuoteState;
  readonly chosenId: string;
}

/** All lines with price and date; what one rests on is shown below when it is chosen. */
export function AnswerLines(props: AnswerLinesProps): JSX.Element {
  const { shop, format } = useStores();
  const nameOf = (partId: string): string =>
    shop.shop().parts.find(({ id }) => id === partId)?.name ?? partId;
  const choose = (lineId: string): void => {
    const key = props.state.read().lines.find(({ asked }) => asked.id === lineId)?.key;
    if (key !== undefined) props.state.setLineKey(key);
  };
  return (
    <div class="table-box">
      <table class="table">
        <caption class="unseen">Lines with their prices and dates</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" class="num">
              Copies
            </th>
            <th scope="col" class="num">
              Each, {format().currency}
            </th>
            <th scope="col" class="num">
              In all
            </th>
            <th scope="col">To promise</th>
            <th scope="col" class="num">
              Kept with
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={props.offered.lines}>
            {({ line, price, byMin, likelihoodPct }) => (
              <tr classList={{ "is-chosen": line.asked.id === props.chosenId }}>
                <th scope="row">
                  <button
                    type="button"
                    class="link"
                    aria-pressed={line.asked.id === props.chosenId}
                    onClick={() => choose(line.asked.id)}
                  >
                    <NameText text={nameOf(line.asked.partId)} most={60} />
                  </button>
                </th>
                <td class="num">{format().number(line.asked.quantity, 0)}</td>
                <td class="num">{price ? format().amount(price.pricePerPiece) : "–"}</td>
                <td class="num">{price ? format().amount(price.total) : "–"}</td>
                <td>{byMin === null ? "no date" : timeText(byMin, format())}</td>
                <td class="num">{likelihoodPct === null ? "" : likelihoodText(likelihoodPct)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  );
}
