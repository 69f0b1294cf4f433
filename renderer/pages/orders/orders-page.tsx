import { type Accessor, createEffect, createMemo, createSignal, type JSX, on, Show, untrack } from "solid-js";
import { type Finding, stepsOf, whereOf } from "../../../core/shop/finding.ts";
import type { Order } from "../../../core/shop/order.ts";
import { lateOrders } from "../../../core/report/week-facts.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { Grid, type GridHandle } from "../../components/grid/grid.tsx";
import type { GridColumn } from "../../components/grid/grid-column.ts";
import { Menu } from "../../components/menu.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import type { ShopStore } from "../../store/shop-store.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/orders.css";
import type { PageEntry } from "../page-list.ts";
import { DropZone } from "./drop-zone.tsx";
import { createOrderColumns } from "./order-columns.tsx";
import { changesOfOrders } from "./order-edits.ts";
import { outcomesOf } from "./order-outcomes.ts";
import { copyOrder, newOrder } from "./order-rows.ts";
import { createOrderFiles, type OrderFiles } from "./order-files.tsx";
import { OrderStory } from "./order-story.tsx";

/** What must be made by when: the orders as a grid, with what the plan makes of each. */
export default function OrdersPage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, plan } = useStores();
  const [grid, setGrid] = createSignal<GridHandle<Order> | null>(null);
  const outcomes = createMemo(() => outcomesOf(plan.plan()));
  const columns = createOrderColumns(outcomes);
  const files = createOrderFiles(columns);
  followChosenOrder(grid);
  const add = (): void => addLine(grid(), shop);
  return (
    <PageFrame
      page={props.page}
      fills
      facts={<OrderFacts />}
      tools={<OrderTools grid={grid()} onAdd={add} files={files} />}
    >
      <DropZone onTables={files.importTable}>
        <Show
          when={shop.shop().orders.length > 0}
          fallback={<NoOrders onAdd={add} onImport={files.chooseTable} onPaste={files.pasteTable} />}
        >
          <div class="orders">
            <OrderGrid columns={columns} handle={setGrid} onPaste={files.askDatesFirst} />
            <OrderStory outcomes={outcomes()} />
          </div>
        </Show>
      </DropZone>
      {files.dialogs((text) => grid()?.actions.paste(text))}
    </PageFrame>
  );
}

interface OrderGridProps {
  readonly columns: readonly GridColumn<Order>[];
  readonly handle: (handle: GridHandle<Order>) => void;
  readonly onPaste: (text: string) => boolean;
}

function OrderGrid(props: OrderGridProps): JSX.Element {
  const { shop, selection, prefs } = useStores();
  const widths = createMemo(() => readWidths(prefs.remembered(WIDTHS_KEY)));
  // What was chosen on another page stays chosen until somebody moves in the grid.
  let isKept = untrack(() => selection.chosen().orderId !== null);
  const choose = (order: Order | null): void => {
    if (order && !isKept) selection.choose({ orderId: order.id, partId: order.partId });
    isKept = false;
  };
  return (
    <Grid
      label="Orders"
      words={["order", "orders"]}
      columns={props.columns}
      rows={shop.shop().orders}
      onEdit={(edit) => shop.apply(edit.label, changesOfOrders(shop.shop(), edit))}
      newRow={(like, taken) => newOrder(shop.shop(), like, taken, Date.now())}
      copyRow={copyOrder}
      findingAt={createFindingAt()}
      onActive={choose}
      handle={props.handle}
      onPaste={props.onPaste}
      widths={widths()}
      onWidth={(columnId, widthPx) =>
        prefs.remember(WIDTHS_KEY, JSON.stringify({ ...widths(), [columnId]: widthPx }))
      }
    />
  );
}

/** A line below the active one, or the first one of all. */
function addLine(grid: GridHandle<Order> | null, shop: ShopStore): void {
  if (grid && shop.shop().orders.length > 0) {
    grid.actions.addRow();
    return grid.focus(grid.state.active().row + 1, 0);
  }
  const entry = newOrder(shop.shop(), undefined, new Set(), Date.now());
  shop.apply("new order", [{ kind: "put", list: "orders", entry, at: null }]);
}

/** An order that was chosen on another page is the active one here. */
function followChosenOrder(grid: Accessor<GridHandle<Order> | null>): void {
  const { shop, selection } = useStores();
  createEffect(
    on([grid, () => selection.chosen().orderId], ([handle, orderId]) => {
      if (!handle || orderId === null) return;
      if (handle.state.rowAt(handle.state.active().row)?.id === orderId) return;
      const row = handle.state.order().findIndex((place) => shop.shop().orders[place]?.id === orderId);
      if (row >= 0) handle.focus(row, 0);
    }),
  );
}

const WIDTHS_KEY = "widths of orders";

function readWidths(text: string | null): Readonly<Record<string, number>> {
  try {
    return JSON.parse(text ?? "{}") as Record<string, number>;
  } catch {
    return {};
  }
}

/** Which finding belongs into which cell: by the field it is about; what is about the whole line stands at its name. */
function createFindingAt(): (order: Order, columnId: string) => Finding | undefined {
  const { shop } = useStores();
  return (order, columnId) =>
    shop.findingsAt(whereOf("orders", order.id)).find((finding) => columnOf(finding) === columnId);
}

const COLUMN_OF_FIELD: Readonly<Record<string, string>> = {
  partId: "part",
  quantity: "quantity",
  dueAt: "due",
  releaseAt: "release",
  customer: "customer",
  lateCostPerDay: "lateCost",
  pricePerPiece: "price",
  note: "note",
};

function columnOf({ where }: Finding): string {
  const [, , field = "", more = ""] = stepsOf(where);
  if (field === "pinned") return more === "feedstockId" ? "feedstock" : "machine";
  return COLUMN_OF_FIELD[field] ?? "id";
}

function OrderFacts(): JSX.Element {
  const { shop, plan, format } = useStores();
  const words = (): string => {
    const lines = shop.shop().orders.length;
    const late = plan.plan() ? lateOrders(plan.plan()!).length : 0;
    const count = `${format().number(lines, 0)} ${lines === 1 ? "line" : "lines"}`;
    return late > 0 ? `${count}, ${late} late` : count;
  };
  return <>{words()}</>;
}

interface OrderToolsProps {
  readonly grid: GridHandle<Order> | null;
  readonly onAdd: () => void;
  readonly files: OrderFiles;
}

function OrderTools(props: OrderToolsProps): JSX.Element {
  const { shop } = useStores();
  const isEmpty = (): boolean => shop.shop().orders.length === 0;
  return (
    <>
      <Button icon="add" onClick={() => props.onAdd()}>
        New line
      </Button>
      <Button
        icon="copy"
        disabled={isEmpty()}
        onClick={() => (props.grid?.actions.duplicate(), props.grid?.focus())}
      >
        Duplicate
      </Button>
      <Button
        icon="remove"
        disabled={isEmpty()}
        onClick={() => (props.grid?.actions.remove(), props.grid?.focus())}
      >
        Delete
      </Button>
      <Button icon="take" onClick={props.files.chooseTable}>
        Take in a table
      </Button>
      <Menu
        label="Give out"
        icon="give"
        entries={[
          { label: "Orders as CSV", onSelect: () => void props.files.giveOut("csv"), disabled: isEmpty() },
          { label: "Orders as XLSX", onSelect: () => void props.files.giveOut("xlsx"), disabled: isEmpty() },
        ]}
      />
    </>
  );
}

function NoOrders(props: {
  readonly onAdd: () => void;
  readonly onImport: () => void;
  readonly onPaste: () => void;
}): JSX.Element {
  return (
    <EmptyState
      title="No orders yet"
      actions={
        <>
          <Button look="main" icon="add" onClick={() => props.onAdd()}>
            New line
          </Button>
          <Button icon="take" onClick={() => props.onImport()}>
            Take in a table
          </Button>
          <Button onClick={() => props.onPaste()}>Paste from a spreadsheet</Button>
        </>
      }
    >
      An order line says how many copies of a part somebody wants by when. Type lines here, paste them from a
      spreadsheet, or take in a CSV or XLSX file.
    </EmptyState>
  );
}
