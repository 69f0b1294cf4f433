import { createMemo, createSignal, type JSX, Show, untrack } from "solid-js";
import type { Order } from "../../../core/shop/order.ts";
import { lateOrders } from "../../../core/report/week-facts.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { followChosen } from "../../components/grid/follow-chosen.ts";
import { Grid, type GridHandle } from "../../components/grid/grid.tsx";
import type { GridColumn } from "../../components/grid/grid-column.ts";
import { RowTools } from "../../components/grid/row-tools.tsx";
import { Menu } from "../../components/menu.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { createEntryEdits } from "../../store/entry-edits.ts";
import { createGridWidths } from "../../store/grid-widths.ts";
import type { ShopStore } from "../../store/shop-store.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/orders.css";
import type { PageEntry } from "../page-list.ts";
import { DropZone } from "./drop-zone.tsx";
import { createOrderColumns, orderColumnOf } from "./order-columns.tsx";
import { outcomesOf } from "./order-outcomes.ts";
import { copyOrder, newOrder } from "./order-rows.ts";
import { createOrderFiles, type OrderFiles } from "./order-files.tsx";
import { OrderStory } from "./order-story.tsx";

/** What must be made by when: the orders as a grid, with what the plan makes of each. */
export default function OrdersPage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, plan, selection } = useStores();
  const [grid, setGrid] = createSignal<GridHandle<Order> | null>(null);
  const outcomes = createMemo(() => outcomesOf(plan.plan()));
  const columns = createOrderColumns(outcomes);
  const files = createOrderFiles(columns);
  followChosen({
    grid,
    rows: () => shop.shop().orders,
    chosenId: () => selection.chosen().orderId,
    goTo: (handle, row) => handle.focus(row, 0),
  });
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
  const { shop, selection } = useStores();
  const widths = createGridWidths("orders");
  const edits = createEntryEdits("orders", orderColumnOf);
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
      onEdit={edits.edit}
      newRow={(like, taken) => newOrder(shop.shop(), like, taken, Date.now())}
      copyRow={copyOrder}
      findingAt={edits.findingAt}
      onActive={choose}
      handle={props.handle}
      onPaste={props.onPaste}
      widths={widths.widths()}
      onWidth={widths.onWidth}
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
      <RowTools grid={props.grid} word="line" onAdd={props.onAdd} isEmpty={isEmpty()} />
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
