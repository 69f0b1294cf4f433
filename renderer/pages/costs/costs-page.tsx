import { createMemo, createSignal, type JSX, Show } from "solid-js";
import type { CostLine } from "../../../core/cost/cost-line.ts";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { KIND_WORDS } from "../../../core/report/words.ts";
import type { Costing } from "../../../core/shop/costing.ts";
import { createCostingColumns, putCosting } from "../../components/entry/costing-columns.ts";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import type { ValueColumn } from "../../components/entry/value-columns.ts";
import { EmptyState } from "../../components/empty-state.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { Select } from "../../components/select.tsx";
import { SplitPane } from "../../components/split-pane.tsx";
import { Tabs } from "../../components/tabs.tsx";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/costs.css";
import type { PageEntry } from "../page-list.ts";
import type { CostNode, CostView } from "./cost-tree.ts";
import { CostTreegrid } from "./cost-treegrid.tsx";
import { HourPrices } from "./hour-prices.tsx";
import { MadeOf } from "./made-of.tsx";
import { Worth } from "./worth.tsx";

const VIEWS: readonly { readonly value: CostView; readonly label: string }[] = [
  { value: "kind", label: "kind of cost, then order" },
  { value: "order", label: "order, then kind" },
  { value: "machine", label: "machine, then kind" },
  { value: "feedstock", label: "feedstock, then kind" },
];

/** Where does the money go: the plan's total opened, the price of an hour, the plan against rules of thumb, the money rules. */
export default function CostsPage(props: { readonly page: PageEntry }): JSX.Element {
  const { plan, format, shortcuts } = useStores();
  shortcuts.add([
    { keys: "Arrow keys", label: "Move; right opens an amount, left closes it", group: "In the total" },
    { keys: "Enter", label: "Open or close an amount", group: "In the total" },
  ]);
  const facts = (): string => {
    const shown = plan.plan();
    if (!shown) return "nothing planned yet";
    const gap =
      shown.bound.value > 0
        ? `, at most ${format().percentAtMost(shown.bound.gapPct, 1)} above the least`
        : "";
    return `${format().money(shown.cost.total)} in all${gap}${plan.isOld() ? "; the shop was edited since" : ""}`;
  };
  const ofPlan = (draw: (plan: () => PlanDocument) => JSX.Element) => () => (
    <Show when={plan.plan()} fallback={<NoPlan />}>
      {(shown) => draw(shown)}
    </Show>
  );
  return (
    <PageFrame page={props.page} fills facts={facts()}>
      <Tabs
        label="Views of the money"
        tabs={[
          {
            id: "total",
            title: "The total opened",
            content: ofPlan((shown) => <OpenedTotal plan={shown()} />),
          },
          {
            id: "hours",
            title: "Price of an hour",
            content: ofPlan((shown) => <HourPrices plan={shown()} />),
          },
          {
            id: "worth",
            title: "Against rules of thumb",
            content: ofPlan((shown) => <Worth plan={shown()} />),
          },
          { id: "rules", title: "Money rules", content: () => <MoneyRules /> },
        ]}
      />
    </PageFrame>
  );
}

function OpenedTotal(props: { readonly plan: PlanDocument }): JSX.Element {
  const { shop } = useStores();
  const [view, setView] = createSignal<CostView>("kind");
  const [node, setNode] = createSignal<CostNode | null>(null);
  const names = createMemo(() => ({
    order: new Map(shop.shop().orders.map(({ id, customer }) => [id, customer])),
    machine: new Map(shop.shop().machines.map(({ id, name }) => [id, name])),
    feedstock: new Map(shop.shop().feedstocks.map(({ id, name }) => [id, name])),
  }));
  const nameOf = ({ by, id, lines }: CostNode): string => {
    if (by === "kind") return KIND_WORDS[id as keyof typeof KIND_WORDS] ?? id;
    const [first] = lines;
    if (by === "line") return first ? lineName(first) : id;
    if (id === "") return `No ${by}`;
    return [id, names()[by].get(id) ?? ""].filter((word) => word !== "").join(" · ");
  };
  return (
    <SplitPane
      name="costs"
      sideLabel="How the chosen amount is made"
      usualPx={400}
      main={
        <div class="costs">
          <div class="cost-tools">
            <Select
              label="Opened by"
              choices={VIEWS}
              value={view()}
              onChange={(value) => setView(VIEWS.find((one) => one.value === value)?.value ?? "kind")}
            />
            <p class="quiet">Arrow keys move; right opens, left closes. What a row opens to adds up to it.</p>
          </div>
          <CostTreegrid plan={props.plan} view={view()} nameOf={nameOf} onActive={setNode} />
        </div>
      }
      side={<MadeOf node={node()} nameOf={nameOf} lineName={lineName} />}
    />
  );
}

function MoneyRules(): JSX.Element {
  const stores = useStores();
  const columns = createCostingColumns();
  return (
    <div class="money-rules">
      <h2 class="unseen">What everything is reckoned with</h2>
      <FieldGroup title="Money rules of the works">
        <EntryFields
          row={stores.shop.shop().costing}
          rowKey="costing"
          columns={columns}
          onPut={(next: Costing, column: ValueColumn<Costing>) => putCosting(stores, next, column.title)}
        />
      </FieldGroup>
      <p class="quiet">A plan keeps the amounts it was made with: plan again to see what a new rule does.</p>
    </div>
  );
}

function NoPlan(): JSX.Element {
  return (
    <EmptyState title="Nothing is planned yet">
      Plan the week with the button above. Its total then stands here, opened by order, machine, feedstock and
      kind of cost, each amount down to its formula.
    </EmptyState>
  );
}

function lineName(line: CostLine): string {
  return [KIND_WORDS[line.kind], line.orderId, line.buildId ?? "", line.machineId ?? ""]
    .filter((word) => word !== "")
    .join(" · ");
}
