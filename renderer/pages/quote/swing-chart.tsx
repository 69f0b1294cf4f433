import { createMemo, For, type JSX } from "solid-js";
import { shareScale } from "./share-scale.ts";

/** One input made lower and higher, and what comes of it; null: it never comes. */
interface Swing {
  readonly input: string;
  readonly low: { readonly change: string; readonly at: number | null };
  readonly high: { readonly change: string; readonly at: number | null };
}

interface SwingChartProps {
  readonly caption: string;
  /** what comes of the inputs as they are */
  readonly base: number;
  readonly swings: readonly Swing[];
  readonly write: (value: number | null) => string;
}

/** Inputs by how far they move something, each as a bar round what it is now; a table with the figures for whoever cannot see it. */
export function SwingChart(props: SwingChartProps): JSX.Element {
  const scale = createMemo(() =>
    shareScale([
      props.base,
      ...props.swings.flatMap(({ low, high }) => [low.at, high.at].filter((at) => at !== null)),
    ]),
  );
  const ends = ({ low, high }: Swing): [number, number] => {
    const at = [low.at ?? scale().high, high.at ?? scale().high];
    return [scale().pct(Math.min(...at)), scale().pct(Math.max(...at))];
  };
  return (
    <table class="swings">
      <caption class="unseen">{props.caption}</caption>
      <thead class="unseen">
        <tr>
          <th scope="col">Input</th>
          <th scope="col">Lower, and what comes of it</th>
          <th scope="col">Higher, and what comes of it</th>
        </tr>
      </thead>
      <tbody>
        <For each={props.swings}>
          {(swing) => (
            <tr>
              <th scope="row">{swing.input}</th>
              <td class="swing-low">
                <span class="quiet">{swing.low.change}</span> {props.write(swing.low.at)}
              </td>
              <td class="swing-high">
                <span class="quiet">{swing.high.change}</span> {props.write(swing.high.at)}
              </td>
              <td class="swing-bar" aria-hidden="true">
                <i
                  class="swing-span"
                  style={{ left: `${ends(swing)[0]}%`, width: `${ends(swing)[1] - ends(swing)[0]}%` }}
                />
                <i class="swing-base" style={{ left: `${scale().pct(props.base)}%` }} />
              </td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}
