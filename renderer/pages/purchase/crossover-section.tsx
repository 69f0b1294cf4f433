import { createMemo, For, type JSX, Show } from "solid-js";
import type { ChartPoint, CrossoverChart, PowerLine } from "../../../core/purchase/crossover-chart.ts";
import { logScale } from "../../../core/report/log-scale.ts";
import type { Process } from "../../../core/shop/machine.ts";
import { lbFromKg } from "../../../core/units/conversions.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";

const WIDTH = 440;
const HEIGHT = 250;
const PLOT = { left: 52, top: 12, right: 430, bottom: 210 } as const;
const MOST_TICKS = 6;

/** Cost of a copy against its mass by filament and by pellets, both logarithmic, and where pellets become the cheaper way. */
export function CrossoverSection(props: { readonly view: AnswerView }): JSX.Element {
  const { format } = useStores();
  const chart = () => props.view.study.chart;
  /** the mass where the trends cross, in the units shown */
  const sentence = (): string => {
    const { crossoverKg } = chart();
    return crossoverKg === null || format().mass === "kg"
      ? chart().sentence
      : `${chart().sentence} That is ${Number(lbFromKg(crossoverKg).toPrecision(2))} lb.`;
  };
  return (
    <AnswerSection title="Filament or pellets">
      <Show when={chart().points.length > 0}>
        <Drawing chart={chart()} />
      </Show>
      <p>{sentence()}</p>
      <Show when={chart().points.length > 0}>
        <details class="more">
          <summary>The parts as a table</summary>
          <PointTable view={props.view} />
        </details>
      </Show>
    </AnswerSection>
  );
}

function Drawing(props: { readonly chart: CrossoverChart }): JSX.Element {
  const { format } = useStores();
  const mass = (kg: number): number => (format().mass === "kg" ? kg : lbFromKg(kg));
  const across = createMemo(() => logScale(props.chart.points.map(({ massKg }) => mass(massKg))));
  const up = createMemo(() => logScale(props.chart.points.map(({ costPerCopy }) => costPerCopy)));
  const xOf = (shownMass: number): number => PLOT.left + (PLOT.right - PLOT.left) * across().at(shownMass);
  const x = (kg: number): number => xOf(mass(kg));
  const y = (cost: number): number => PLOT.bottom - (PLOT.bottom - PLOT.top) * up().at(cost);
  const trend = (line: PowerLine, process: Process): string => {
    const masses = drawnThrough(props.chart, line, process).map(({ massKg }) => massKg);
    const [from, to] = [Math.min(...masses), Math.max(...masses)];
    const at = (kg: number): string => `${x(kg)} ${y(line.factor * kg ** line.exponent)}`;
    return `M${at(from)}L${at(to)}`;
  };
  const tickText = (tick: number): string => format().number(tick, 3);
  return (
    <figure class="chart-box">
      <svg
        class="chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label="Cost of a copy against its mass by filament and by pellets; the table below has the parts."
      >
        <For each={few(across().ticks)}>
          {(tick) => (
            <>
              <path class="chart-grid" d={`M${xOf(tick)} ${PLOT.top}V${PLOT.bottom}`} />
              <text x={xOf(tick)} y={PLOT.bottom + 16} text-anchor="middle">
                {tickText(tick)}
              </text>
            </>
          )}
        </For>
        <For each={few(up().ticks)}>
          {(tick) => (
            <>
              <path class="chart-grid" d={`M${PLOT.left} ${y(tick)}H${PLOT.right}`} />
              <text x={PLOT.left - 6} y={y(tick) + 4} text-anchor="end">
                {tickText(tick)}
              </text>
            </>
          )}
        </For>
        <Show when={props.chart.filament}>
          {(line) => <path class="trend-filament" d={trend(line(), "filament")} />}
        </Show>
        <Show when={props.chart.pellet}>
          {(line) => <path class="trend-pellet" d={trend(line(), "pellet")} />}
        </Show>
        <For each={props.chart.points}>
          {(point) => <Mark point={point} x={x(point.massKg)} y={y(point.costPerCopy)} />}
        </For>
        <Show when={props.chart.crossoverKg}>
          {(kg) => (
            <>
              <path class="chart-crossing" d={`M${x(kg())} ${PLOT.top}V${PLOT.bottom}`} />
              <text x={x(kg()) + 5} y={PLOT.top + 12}>
                {format().number(Number(mass(kg()).toPrecision(2)), 3)} {format().mass}
              </text>
            </>
          )}
        </Show>
        <text class="chart-words" x={(PLOT.left + PLOT.right) / 2} y={HEIGHT - 4} text-anchor="middle">
          mass of a copy, {format().mass}; its cost upwards, {format().currency}
        </text>
      </svg>
      <figcaption class="chart-key">
        <span>
          <svg viewBox="0 0 26 12" aria-hidden="true">
            <path class="trend-filament" d="M0 6H26" />
            <circle class="mark-filament" cx="13" cy="6" r="4" />
          </svg>{" "}
          filament
        </span>
        <span>
          <svg viewBox="0 0 26 12" aria-hidden="true">
            <path class="trend-pellet" d="M0 6H26" />
            <rect class="mark-pellet" x="9" y="2" width="8" height="8" />
          </svg>{" "}
          pellets
        </span>
      </figcaption>
    </figure>
  );
}

/** The parts that a trend goes through: those that both processes can make where there are enough of them, else all. */
function drawnThrough({ points }: CrossoverChart, line: PowerLine, process: Process): readonly ChartPoint[] {
  const own = points.filter((point) => point.process === process);
  if (own.length === line.points) return own;
  const others = new Set(points.filter((point) => point.process !== process).map(({ partId }) => partId));
  return own.filter(({ partId }) => others.has(partId));
}

function Mark(props: { readonly point: ChartPoint; readonly x: number; readonly y: number }): JSX.Element {
  return (
    <Show
      when={props.point.process === "pellet"}
      fallback={<circle class="mark-filament" cx={props.x} cy={props.y} r="3.6" />}
    >
      <rect class="mark-pellet" x={props.x - 3.2} y={props.y - 3.2} width="6.4" height="6.4" />
    </Show>
  );
}

/** Where an axis has many names, those of whole powers of ten are enough. */
function few(ticks: readonly number[]): readonly number[] {
  return ticks.length <= MOST_TICKS ? ticks : ticks.filter((tick) => Number.isInteger(Math.log10(tick)));
}

function PointTable(props: { readonly view: AnswerView }): JSX.Element {
  const { format } = useStores();
  const rows = createMemo(() => {
    const { points } = props.view.study.chart;
    const ids = [...new Set(points.map(({ partId }) => partId))];
    const of = (partId: string, process: Process): ChartPoint | undefined =>
      points.find((point) => point.partId === partId && point.process === process);
    return ids.map((id) => ({ id, filament: of(id, "filament"), pellet: of(id, "pellet") }));
  });
  const nameOf = (id: string): string => props.view.shop.parts.find((part) => part.id === id)?.name ?? id;
  const cost = (point: ChartPoint | undefined): string =>
    point ? format().amount(point.costPerCopy) : "not so";
  const mass = (point: ChartPoint | undefined): string => (point ? format().massNumber(point.massKg) : "");
  return (
    <div class="table-box points-box" tabindex="0" role="group" aria-label="Cost and mass of the parts">
      <table class="table running">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col" class="num">
              {format().mass} by filament
            </th>
            <th scope="col" class="num">
              {format().currency} by filament
            </th>
            <th scope="col" class="num">
              {format().mass} by pellets
            </th>
            <th scope="col" class="num">
              {format().currency} by pellets
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">
                  <NameText text={nameOf(row.id)} most={60} />
                </th>
                <td class="num">{mass(row.filament)}</td>
                <td class="num">{cost(row.filament)}</td>
                <td class="num">{mass(row.pellet)}</td>
                <td class="num">{cost(row.pellet)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  );
}
