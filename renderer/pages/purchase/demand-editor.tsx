import { createMemo, type JSX, Match, Show, Switch } from "solid-js";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { DemandRow, DemandSource, TypedDemand } from "../../../core/shop/purchase-demand.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { Check } from "../../components/field.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Grid } from "../../components/grid/grid.tsx";
import { Select } from "../../components/select.tsx";
import { chooseFile } from "../../store/download.ts";
import { nextId } from "../../store/next-id.ts";
import { useStores } from "../../store/stores.ts";
import { type CaseFields, EVEN_SEASON } from "./case-fields.ts";
import { createPastColumns, createTypedColumns } from "./demand-columns.ts";
import { demandOfKind, editedLines, firstLine, pastOrders, placed } from "./demand-rows.ts";
import type { PurchaseState } from "./purchase-state.ts";

export interface EditorProps {
  readonly state: PurchaseState;
  readonly purchaseCase: PurchaseCase;
  readonly fields: CaseFields;
}

const SOURCES = [
  { value: "orders", label: "The orders of this shop, by due date" },
  { value: "rows", label: "Past orders from a table" },
  { value: "typed", label: "Typed: what is expected each week" },
];

/** Where the weekly demand comes from, and how it goes on. */
export function DemandEditor(props: EditorProps): JSX.Element {
  const { shop } = useStores();
  const setKind = (value: string): void => {
    const kind = value as DemandSource["kind"];
    const demand = demandOfKind(kind, props.purchaseCase.demand, shop.shop().parts[0]?.id);
    props.state.put({ ...props.purchaseCase, demand }, "source of the demand");
  };
  return (
    <>
      <FieldGroup title="Where it comes from">
        <div class="purchase-stack">
          <Select
            label="Source of the demand"
            choices={SOURCES}
            value={props.purchaseCase.demand.kind}
            onChange={setKind}
          />
          <FindingList findings={props.state.findingsAt("demand")} />
          <Switch>
            <Match when={props.purchaseCase.demand.kind === "orders"}>
              <Fields {...props} columns={props.fields.history} />
              <p class="quiet">
                Scenarios draw whole weeks from these orders. More of the past says more about the weeks to
                come.
              </p>
            </Match>
            <Match when={props.purchaseCase.demand.kind === "typed"}>
              <TypedLines {...props} />
            </Match>
            <Match when={props.purchaseCase.demand.kind === "rows"}>
              <PastRows {...props} />
            </Match>
          </Switch>
        </div>
      </FieldGroup>
      <FieldGroup title="How it goes on">
        <div class="purchase-stack">
          <Fields {...props} columns={props.fields.growth} />
          <FindingList
            findings={[
              ...props.state.findingsAt("growthPctPerYear"),
              ...props.state.findingsAt("patienceWeeks"),
            ]}
          />
          <Season {...props} />
        </div>
      </FieldGroup>
    </>
  );
}

/** Fields of a case; each edit is one step of undo. */
export function Fields(props: EditorProps & { readonly columns: CaseFields["names"] }): JSX.Element {
  return (
    <EntryFields
      row={props.purchaseCase}
      rowKey={props.purchaseCase.id}
      columns={props.columns}
      onPut={(next, column) => props.state.put(next, `${column.title.toLowerCase()} of a case`)}
      findingAt={(field) => (field.startsWith("demand") ? undefined : props.state.findingsAt(field)[0])}
    />
  );
}

function Season(props: EditorProps): JSX.Element {
  const toggle = (isOn: boolean): void => {
    const { seasonByMonth: _, ...others } = props.purchaseCase;
    props.state.put(isOn ? { ...others, seasonByMonth: [...EVEN_SEASON] } : others, "season of a case");
  };
  return (
    <>
      <Check
        label="Months differ: orders of each over those of a mean month"
        checked={props.purchaseCase.seasonByMonth !== undefined}
        onChange={toggle}
      />
      <Show when={props.purchaseCase.seasonByMonth}>
        <div class="purchase-months">
          <Fields {...props} columns={props.fields.months} />
        </div>
      </Show>
      <FindingList findings={props.state.findingsAt("seasonByMonth")} />
    </>
  );
}

function TypedLines(props: EditorProps): JSX.Element {
  const { shop } = useStores();
  const columns = createTypedColumns();
  const lines = (): readonly TypedDemand[] =>
    props.purchaseCase.demand.kind === "typed" ? props.purchaseCase.demand.lines : [];
  const rows = createMemo(() => placed(lines()));
  const put = (next: TypedDemand[], what: string): void =>
    props.state.put({ ...props.purchaseCase, demand: { kind: "typed", lines: next } }, what);
  const add = (): void => {
    const partId = lines().at(-1)?.partId ?? shop.shop().parts[0]?.id;
    if (partId !== undefined) put([...lines(), firstLine(partId)], "new line of demand");
  };
  return (
    <>
      <div class="purchase-grid">
        <Grid
          label="Demand of a mean week"
          words={["line", "lines"]}
          columns={columns}
          rows={rows()}
          onEdit={(edit) => put(editedLines(lines(), edit), edit.label)}
          newRow={(like, taken) => ({
            ...(like ?? firstLine(shop.shop().parts[0]?.id ?? "")),
            id: nextId("0", taken),
          })}
          copyRow={(row, taken) => ({ ...row, id: nextId("0", taken) })}
        />
      </div>
      <div class="purchase-buttons">
        <Button icon="add" disabled={shop.shop().parts.length === 0} onClick={add}>
          Another line
        </Button>
      </div>
    </>
  );
}

const MOST_FAULTS = 3;

function PastRows(props: EditorProps): JSX.Element {
  const { notes } = useStores();
  const columns = createPastColumns();
  const lines = (): readonly DemandRow[] =>
    props.purchaseCase.demand.kind === "rows" ? props.purchaseCase.demand.rows : [];
  const rows = createMemo(() => placed(lines()));
  const put = (next: DemandRow[], what: string): void =>
    props.state.put({ ...props.purchaseCase, demand: { kind: "rows", rows: next } }, what);
  const take = (text: string): boolean => {
    const read = pastOrders(text);
    for (const { sentence } of read.findings.slice(0, MOST_FAULTS)) notes.alarm(sentence);
    if (read.rows.length === 0) return false;
    put([...lines(), ...read.rows], `${read.rows.length} past orders`);
    notes.tell(`${read.rows.length} past ${read.rows.length === 1 ? "order was" : "orders were"} taken in.`);
    return true;
  };
  const paste = async (): Promise<void> => {
    try {
      take(await navigator.clipboard.readText());
    } catch {
      notes.alarm("The browser does not let this page read the clipboard: take in a CSV file instead.");
    }
  };
  const choose = async (): Promise<void> => {
    const file = await chooseFile(".csv,.tsv,.txt");
    if (file) take(await file.text());
  };
  return (
    <>
      <Show when={rows().length > 0}>
        <div class="purchase-grid">
          <Grid
            label="Past orders"
            words={["past order", "past orders"]}
            columns={columns}
            rows={rows()}
            onEdit={(edit) => put(editedLines(lines(), edit), edit.label)}
          />
        </div>
      </Show>
      <p class="quiet">
        The first row names the columns: due (a date like 2026-11-30, or a week like 2026-W49), part (its id),
        quantity; price and late cost may be there.
      </p>
      <div class="purchase-buttons">
        <Button icon="take" onClick={() => void choose()}>
          Take in a CSV file
        </Button>
        <Button onClick={() => void paste()}>Paste rows</Button>
        <Show when={rows().length > 0}>
          <Button look="plain" icon="remove" onClick={() => put([], "removal of past orders")}>
            Remove all
          </Button>
        </Show>
      </div>
    </>
  );
}
