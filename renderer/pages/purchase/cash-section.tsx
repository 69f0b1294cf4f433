import { createMemo, For, type JSX, Show } from "solid-js";
import type { CashRow } from "../../../core/purchase/cash-flow.ts";
import type { LetteredStudy } from "../../../core/report/case-view.ts";
import { CASH_WORDS } from "../../../core/report/case-words.ts";
import { amountUnit, plainScale } from "../../../core/report/plain-scale.ts";
import { useStores } from "../../store/stores.ts";
import { AnswerSection } from "./answer-section.tsx";

const WIDTH = 440;
const HEIGHT = 210;
const PLOT = { left: 52, top: 10, right: 430, bottom: 172 } as const;
const STEPS = 5;
const BAR_SHARE = 0.56;
const LEAST_LABEL_PX = 26;

/** Cash of one candidate by year: bars and their sum, and the table whose rows add up to them. */
export function CashSection(props: { readonly own: LetteredStudy }): JSX.Element {
  return (
    <AnswerSection title={`Cash by year of ${props.own.letter}`}>
      <div class="cash">
        <CashChart own={props.own} />
        <CashTable own={props.own} />
      </div>
    </AnswerSection>
  );
}

function CashChart(props: { readonly own: LetteredStudy }): JSX.Element {
  const { format } = useStores();
  const total = () => props.own.answer.flow.total;
  const sums = createMemo(() => sumsOf(total()));
  const scale = createMemo(() => plainScale([...total(), ...sums()], STEPS));
  const unit = createMemo(() => amountUnit([...total(), ...sums()], format().currency));
  const y = (amount: number): number => PLOT.bottom - (PLOT.bottom - PLOT.top) * scale().at(amount);
  const stepPx = (): number => (PLOT.right - PLOT.left) / total().length;
  const x = (year: number): number => PLOT.left + stepPx() * (year + 0.5);
  const every = (): number => Math.ceil(LEAST_LABEL_PX / stepPx());
  const line = (): string =>
    sums()
      .map((sum, year) => `${year === 0 ? "M" : "L"}${x(year)} ${y(sum)}`)
      .join("");
  const tickText = (tick: number): string => format().number(tick / unit().divisor, 1);
  return (
    <figure class="chart-box">
      <svg
        class="chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Cash by year of ${props.own.letter} as bars and its sum as a line; the table beside it has the figures.`}
      >
        <For each={scale().ticks}>
          {(tick) => (
            <>
              <path
                class={tick === 0 ? "chart-zero" : "chart-grid"}
                d={`M${PLOT.left} ${y(tick)}H${PLOT.right}`}
              />
              <text x={PLOT.left - 6} y={y(tick) + 4} text-anchor="end">
                {tickText(tick)}
              </text>
            </>
          )}
        </For>
        <For each={total()}>
          {(cash, year) => (
            <>
              <rect
                class={cash < 0 ? "cash-out" : "cash-in"}
                x={x(year()) - (stepPx() * BAR_SHARE) / 2}
                y={Math.min(y(cash), y(0))}
                width={stepPx() * BAR_SHARE}
                height={Math.abs(y(cash) - y(0))}
              />
              <Show when={year() % every() === 0}>
                <text x={x(year())} y={PLOT.bottom + 16} text-anchor="middle">
                  {year() === 0 ? "start" : year()}
                </text>
              </Show>
            </>
          )}
        </For>
        <path class="cash-sum" d={line()} />
        <For each={sums()}>
          {(sum, year) => <circle class="cash-dot" cx={x(year())} cy={y(sum)} r="2.6" />}
        </For>
        <text class="chart-words" x={(PLOT.left + PLOT.right) / 2} y={HEIGHT - 4} text-anchor="middle">
          year; {unit().words} upwards
        </text>
      </svg>
      <figcaption class="chart-key">
        <span>
          <i class="key-in" /> in
        </span>
        <span>
          <i class="key-out" /> out
        </span>
        <span>
          <i class="key-sum" /> sum so far, not discounted
        </span>
      </figcaption>
    </figure>
  );
}

function CashTable(props: { readonly own: LetteredStudy }): JSX.Element {
  const { format } = useStores();
  const flow = () => props.own.answer.flow;
  const rows = createMemo(() => flow().rows.filter((row) => !isEmpty(row)));
  const text = (amount: number): string => format().number(amount, 0);
  return (
    <div class="table-box" tabindex="0" role="group" aria-label={`Table of cash of ${props.own.letter}`}>
      <table class="table cash-table">
        <caption class="unseen">
          Cash by year of {props.own.letter} in {format().currency}; what comes in is positive. Rows add up to
          the total.
        </caption>
        <thead>
          <tr>
            <th scope="col">{format().currency}</th>
            <For each={flow().total}>
              {(_, year) => (
                <th scope="col" class="num">
                  {year() === 0 ? "Start" : `Year ${year()}`}
                </th>
              )}
            </For>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">{CASH_WORDS[row.name]}</th>
                <For each={row.byYear}>{(cash) => <td class="num">{cash === 0 ? "" : text(cash)}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
        <tfoot>
          <tr class="cash-total">
            <th scope="row">Total</th>
            <For each={flow().total}>{(cash) => <td class="num">{text(cash)}</td>}</For>
          </tr>
          <tr>
            <th scope="row">Sum so far</th>
            <For each={sumsOf(flow().total)}>{(sum) => <td class="num">{text(sum)}</td>}</For>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

const HALF = 0.5;

function isEmpty({ byYear }: CashRow): boolean {
  return byYear.every((cash) => Math.abs(cash) < HALF);
}

function sumsOf(total: readonly number[]): number[] {
  let sum = 0;
  return total.map((cash) => (sum += cash));
}
