import { createMemo, For, type JSX, Match, Show, Switch } from "solid-js";
import {
  type MachineHourRate,
  machineHourRate,
  type RateTerm,
} from "../../../core/cost/machine-hour-rate.ts";
import type { Costing } from "../../../core/shop/costing.ts";
import type { HourRateInputs, Machine } from "../../../core/shop/machine.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import { createCostingColumns, putCosting } from "../../components/entry/costing-columns.ts";
import { useStores } from "../../store/stores.ts";
import type { PutMachine } from "./machine-panel.tsx";

interface HourRateProps {
  readonly machine: Machine;
  readonly onPut: PutMachine;
}

/** What an hour of the machine costs, opened to its terms with formula and inputs; the inputs are edited below. */
export function HourRate(props: HourRateProps): JSX.Element {
  const stores = useStores();
  const { shop, format } = stores;
  const rate = createMemo(() => machineHourRate(props.machine, shop.shop().costing));
  const columns = createInputColumns();
  const ofWorks = createCostingColumns().filter(({ id }) => HOUR_COSTING.has(id));
  const given = valueColumns<Machine>(format).money({
    id: "hourRate",
    title: "An hour costs",
    unit: () => `${format().currency} per h`,
    get: ({ hourRate }) => (typeof hourRate === "number" ? hourRate : null),
    set: (row, value) => ({ ...row, hourRate: value }),
  });
  const inputs = (): HourRateInputs | null =>
    typeof props.machine.hourRate === "number" ? null : props.machine.hourRate;
  const what = (): string => `hour rate of ${props.machine.id}`;
  const giveNumber = (): void =>
    props.onPut({ ...props.machine, hourRate: Math.round(rate().perH * 100) / 100 }, what());
  const computeIt = (): void => props.onPut({ ...props.machine, hourRate: FIRST_INPUTS }, what());
  return (
    <>
      <FieldGroup title="What an hour costs">
        <RateTable rate={rate()} machine={props.machine} />
      </FieldGroup>
      <FieldGroup
        title="Inputs of this machine"
        tools={
          <Show when={inputs()} fallback={<Button onClick={computeIt}>Compute it from its inputs</Button>}>
            <Button onClick={giveNumber}>Give one number instead</Button>
          </Show>
        }
      >
        <Switch>
          <Match when={inputs()}>
            {(shown) => (
              <EntryFields
                row={shown()}
                rowKey={props.machine.id}
                columns={columns}
                onPut={(next) => props.onPut({ ...props.machine, hourRate: next }, what())}
              />
            )}
          </Match>
          <Match when={!inputs()}>
            <EntryFields
              row={props.machine}
              rowKey={props.machine.id}
              columns={[given]}
              onPut={(next) => props.onPut(next, what())}
            />
          </Match>
        </Switch>
      </FieldGroup>
      <Show when={inputs()}>
        <FieldGroup title="Inputs of the whole works">
          <EntryFields
            row={shop.shop().costing}
            rowKey="costing"
            columns={ofWorks}
            onPut={(next: Costing, column: ValueColumn<Costing>) => putCosting(stores, next, column.title)}
          />
        </FieldGroup>
      </Show>
    </>
  );
}

/** What the rate takes from the money rules of the works. */
const HOUR_COSTING = new Set(["energyPerKWh", "floorPerM2Year", "interestPctPerYear", "interestOn"]);

/** Asked for before anybody has entered them; a finding would say it if the hours were 0. */
const FIRST_INPUTS: HourRateInputs = {
  purchasePrice: 0,
  residualValue: 0,
  lifeYears: 5,
  floorM2: 0,
  powerKW: 0,
  maintenancePctPerYear: 0,
  plannedHoursPerYear: 2000,
};

function RateTable(props: { readonly rate: MachineHourRate; readonly machine: Machine }): JSX.Element {
  const { format } = useStores();
  const perH = (term: RateTerm): number =>
    term.kind === "variable" ? term.amount : term.amount / (props.rate.hoursPerYear ?? 1);
  return (
    <table class="table rate">
      <caption class="unseen">Terms of the hour rate of {props.machine.id}</caption>
      <thead>
        <tr>
          <th scope="col">Term</th>
          <th scope="col" class="num">
            {format().currency} a year
          </th>
          <th scope="col" class="num">
            {format().currency} per h
          </th>
        </tr>
      </thead>
      <tbody>
        <For each={props.rate.terms}>
          {(term) => (
            <tr>
              <th scope="row">
                <b>{term.name}</b>
                <div class="formula">{term.formula}</div>
                <div class="quiet inputs">
                  {term.inputs
                    .map(
                      ({ name, value, unit }) =>
                        `${name} ${format().number(value, 4)} ${unit === "currency" ? format().currency : unit}`,
                    )
                    .join("; ")}
                </div>
              </th>
              <td class="num">{term.kind === "fixed" ? format().amount(term.amount) : ""}</td>
              <td class="num">{format().fixed(perH(term), 4)}</td>
            </tr>
          )}
        </For>
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">
            <b>An hour</b>
            <Show when={props.rate.hoursPerYear}>
              {(hours) => (
                <div class="quiet inputs">
                  {format().amount(props.rate.fixedPerYear)} a year / {format().number(hours(), 1)} h +{" "}
                  {format().fixed(props.rate.variablePerH, 4)} per h
                </div>
              )}
            </Show>
          </th>
          <td class="num">{format().amount(props.rate.fixedPerYear)}</td>
          <td class="num">
            <b>{format().fixed(props.rate.perH, 4)}</b>
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

function createInputColumns(): ValueColumn<HourRateInputs>[] {
  const { format } = useStores();
  const make = valueColumns<HourRateInputs>(format);
  const money = (id: "purchasePrice" | "residualValue", title: string) =>
    make.money({ id, title, get: (row) => row[id], set: (row, value) => ({ ...row, [id]: value }) });
  const number = (
    id: keyof HourRateInputs,
    title: string,
    unit: string,
    limits: { readonly above?: number; readonly most?: number } = {},
  ) =>
    make.number({
      id,
      title,
      unit,
      ...limits,
      get: (row) => row[id],
      set: (row, value) => ({ ...row, [id]: value }),
    });
  return [
    money("purchasePrice", "Bought for"),
    money("residualValue", "Worth at the end"),
    number("lifeYears", "Used for", "years", { above: 0 }),
    number("plannedHoursPerYear", "In use a year", "h", { above: 0 }),
    number("floorM2", "Floor", "m²"),
    number("powerKW", "Mean power", "kW"),
    number("maintenancePctPerYear", "Maintenance", "% a year", { most: 100 }),
  ];
}
