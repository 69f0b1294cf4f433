import { createMemo, For, type JSX, Show } from "solid-js";
import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import { localDays, weekdayName } from "../../../core/shop/local-time.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { useStores } from "../../store/stores.ts";
import { chanceText, timeText } from "./answer-words.ts";
import { shareScale } from "./share-scale.ts";

interface WhenStripProps {
  readonly line: AnswerLine;
  readonly fromMin: number;
}

/** Days with a name of their own below the strip; on longer ones every second, third and so on has one. */
const MOST_DAYS = 7;

interface Mark {
  readonly look: string;
  readonly name: string;
  readonly atMin: number | null;
  readonly more: string;
}

/** Dates kept with 50, 80 and 95 %, the promised and the wanted one: a strip of days, and the same as a table. */
export function WhenStrip(props: WhenStripProps): JSX.Element {
  const { format } = useStores();
  const marks = createMemo((): Mark[] => {
    const { line } = props;
    const { promise, wanted, asked, kept, plannedMin } = line;
    const error = (errorMin: number | null): string =>
      errorMin !== null && errorMin >= 1 ? `± ${format().duration(errorMin)}` : "";
    return [
      ...(asked.wantedMin === null
        ? []
        : [
            {
              look: "wanted",
              name: "Wanted",
              atMin: asked.wantedMin,
              more: wanted ? `kept with ${chanceText(wanted, format())}` : "",
            },
          ]),
      ...(promise
        ? [
            {
              look: "promise",
              name: "To promise",
              atMin: promise.byMin,
              more:
                promise.likelihoodPct === null
                  ? "by the plan alone"
                  : `kept with ${likelihoodText(promise.likelihoodPct)}`,
            },
          ]
        : []),
      ...kept.map(({ likelihoodPct, byMin, errorMin }) => ({
        look: `kept-${likelihoodPct}`,
        name: `Kept with ${likelihoodPct} %`,
        atMin: byMin,
        more: byMin === null ? "never in so many of the runs" : error(errorMin),
      })),
      ...(kept.length === 0 && plannedMin !== null
        ? [
            {
              look: "planned",
              name: "In the plan",
              atMin: plannedMin,
              more: "how likely it is kept is being worked out",
            },
          ]
        : []),
    ];
  });
  return (
    <Show when={marks().some(({ atMin }) => atMin !== null)} fallback={<p class="quiet">It has no date.</p>}>
      <Strip line={props.line} fromMin={props.fromMin} marks={marks()} />
      <table class="quote-dates">
        <caption class="unseen">Dates of the line</caption>
        <tbody>
          <For each={marks()}>
            {(mark) => (
              <tr>
                <th scope="row">
                  <i class="when-key" data-look={mark.look} aria-hidden="true" />
                  {mark.name}
                </th>
                <td>
                  {mark.atMin === null ? "no date" : timeText(mark.atMin, format())}{" "}
                  <span class="quiet">{mark.more}</span>
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </Show>
  );
}

/** The picture alone; the table says the same. */
function Strip(props: WhenStripProps & { readonly marks: readonly Mark[] }): JSX.Element {
  const { format } = useStores();
  const dated = () => props.marks.flatMap(({ look, atMin }) => (atMin === null ? [] : [{ look, atMin }]));
  const scale = createMemo(() => shareScale([props.fromMin, ...dated().map(({ atMin }) => atMin)]));
  const days = createMemo(() => {
    const { low, high } = scale();
    const count = Math.min(400, Math.ceil((high - low) / MIN_PER_DAY) + 2);
    const inside = localDays(Math.floor(low), count, format().timeZone).filter(
      ({ startMin }) => startMin >= low && startMin < high,
    );
    const step = Math.max(1, Math.ceil(inside.length / MOST_DAYS));
    return inside.filter((_, at) => at % step === 0);
  });
  const kept = (pct: number): number | null =>
    props.line.kept.find(({ likelihoodPct }) => likelihoodPct === pct)?.byMin ?? null;
  const bands = () =>
    [
      { look: "50", from: kept(50), to: kept(80) },
      { look: "80", from: kept(80), to: kept(95) },
      { look: "95", from: kept(95), to: scale().high },
    ].flatMap(({ look, from, to }) => (from === null || to === null ? [] : [{ look, from, to }]));
  return (
    <div class="when-strip" aria-hidden="true">
      <div class="when-track">
        <For each={bands()}>
          {(band) => (
            <i
              class="when-band"
              data-look={band.look}
              style={{
                left: `${scale().pct(band.from)}%`,
                width: `${scale().pct(band.to) - scale().pct(band.from)}%`,
              }}
            />
          )}
        </For>
        <For each={days()}>
          {({ startMin }) => <i class="when-day" style={{ left: `${scale().pct(startMin)}%` }} />}
        </For>
        <For each={dated().filter(({ look }) => !look.startsWith("kept"))}>
          {({ look, atMin }) => (
            <i class="when-mark" data-look={look} style={{ left: `${scale().pct(atMin)}%` }} />
          )}
        </For>
      </div>
      <div class="when-days">
        <For each={days()}>
          {({ date, startMin }) => (
            <span style={{ left: `${scale().pct(startMin)}%` }}>
              {weekdayName(date).slice(0, 2)} {Number(date.slice(8))}
            </span>
          )}
        </For>
      </div>
    </div>
  );
}
