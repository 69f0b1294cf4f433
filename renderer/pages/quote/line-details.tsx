import { type JSX, Show } from "solid-js";
import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import { useStores } from "../../store/stores.ts";
import { crossoverText, timeText } from "./answer-words.ts";
import { BreaksTable } from "./breaks-table.tsx";
import { Section } from "./section.tsx";
import { SwingChart } from "./swing-chart.tsx";
import { WaysTable } from "./ways-table.tsx";
import { WhenStrip } from "./when-strip.tsx";

interface LineDetailsProps {
  readonly line: AnswerLine;
  readonly fromMin: number;
  /** likelihood of the date that is promised, % */
  readonly promisePct: number;
  /** what concerns all lines, between dates and ways */
  readonly children: JSX.Element;
}

/** What price and date of one line rest on. */
export function LineDetails(props: LineDetailsProps): JSX.Element {
  const { format } = useStores();
  const money = (value: number | null): string => (value === null ? "never" : format().amount(value));
  const time = (value: number | null): string => (value === null ? "never" : timeText(value, format()));
  const keptMin = (): number | null =>
    props.line.kept.find(({ likelihoodPct }) => likelihoodPct === props.promisePct)?.byMin ??
    props.line.promise?.byMin ??
    null;
  const isDearer = (own: number): boolean => (props.line.price?.total ?? 0) - own >= LEAST_TOLD;
  return (
    <>
      <Section title="When it can be there">
        <WhenStrip line={props.line} fromMin={props.fromMin} />
      </Section>
      <Section title="Price by quantity">
        <BreaksTable line={props.line} />
      </Section>
      {props.children}
      <Section title="Ways to make it" isWide>
        <WaysTable line={props.line} />
        <Show when={props.line.crossover}>
          {(crossover) => (
            <p>
              {crossoverText(crossover().byQuantity, (copies) => `${format().number(copies, 0)} copies`)}{" "}
              <Show when={crossover().bySize.crossings.length > 0}>
                Made larger or smaller, at this quantity:{" "}
                {crossoverText(crossover().bySize, (size) => `${format().fixed(size, 2)} times its size`)}
              </Show>
            </p>
          )}
        </Show>
      </Section>
      <Section
        title="What moves the price most"
        isComing={props.line.priceDrivers === null && props.line.price !== null}
      >
        <Show when={props.line.priceDrivers} fallback={<p class="quiet">It has no price.</p>}>
          {(drivers) => (
            <>
              <SwingChart
                caption={`Price of all copies, ${format().currency}, when one input is lower or higher`}
                base={drivers().price}
                swings={drivers().drivers.map(({ input, low, high }) => ({
                  input,
                  low: sides(low, low.price),
                  high: sides(high, high.price),
                }))}
                write={money}
              />
              <p class="quiet">
                <Show when={isDearer(drivers().price)}>
                  This is the price by itself, {format().money(drivers().price)}; what the work displaces
                  comes on top.{" "}
                </Show>
                If prints take as much less or more time as estimates are usually off:{" "}
                {money(drivers().band.low)} to {format().money(drivers().band.high)}.
              </p>
            </>
          )}
        </Show>
      </Section>
      <Section
        title="What moves the date most"
        isComing={props.line.dateSwings === null && props.line.plannedMin !== null}
      >
        <Show
          when={(props.line.dateSwings?.length ?? 0) > 0 && keptMin() !== null}
          fallback={<p class="quiet">Nothing that was tried moves it.</p>}
        >
          <SwingChart
            caption={`Date kept with ${props.promisePct} % when one input is lower or higher`}
            base={keptMin() ?? 0}
            swings={(props.line.dateSwings ?? []).map(({ input, low, high }) => ({
              input,
              low: sides(low, low.byMin),
              high: sides(high, high.byMin),
            }))}
            write={time}
          />
        </Show>
      </Section>
    </>
  );
}

/** A smaller difference is none, currency. */
const LEAST_TOLD = 0.01;

function sides<Value>({ change }: { readonly change: string }, at: Value): { change: string; at: Value } {
  return { change, at };
}
