import { createMemo, createSignal, type JSX, Show } from "solid-js";
import type { Feedstock } from "../../../core/shop/feedstock.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { followChosen } from "../../components/grid/follow-chosen.ts";
import { Grid, type GridHandle } from "../../components/grid/grid.tsx";
import { RowTools } from "../../components/grid/row-tools.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { SplitPane } from "../../components/split-pane.tsx";
import { createEntryEdits } from "../../store/entry-edits.ts";
import { createGridWidths } from "../../store/grid-widths.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/feedstock.css";
import type { PageEntry } from "../page-list.ts";
import { createFeedstockColumns, feedstockColumnOf } from "./feedstock-columns.tsx";
import { FeedstockPanel } from "./feedstock-panel.tsx";
import { copyFeedstock, newFeedstock } from "./feedstock-rows.ts";
import { Purchases } from "./purchases.tsx";

/** What do we run on: the grades in both forms, their stock, what the plan needs and what to buy by when. */
export default function FeedstockPage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, plan, selection, format } = useStores();
  const widths = createGridWidths("feedstock");
  const [grid, setGrid] = createSignal<GridHandle<Feedstock> | null>(null);
  const needs = createMemo(
    () => new Map((plan.plan()?.feedstockNeeds ?? []).map((need) => [need.feedstockId, need])),
  );
  const columns = createFeedstockColumns(needs);
  const edits = createEntryEdits("feedstocks", feedstockColumnOf);
  const feedstocks = () => shop.shop().feedstocks;
  const feedstock = createMemo(
    () => feedstocks().find(({ id }) => id === selection.chosen().feedstockId) ?? feedstocks()[0],
  );
  const add = (): void => {
    const entry = newFeedstock(feedstock(), new Set(feedstocks().map(({ id }) => id)));
    shop.apply("new grade", [{ kind: "put", list: "feedstocks", entry, at: null }]);
    selection.choose({ feedstockId: entry.id });
  };
  followChosen({ grid, rows: feedstocks, chosenId: () => selection.chosen().feedstockId });
  const isEmpty = (): boolean => feedstocks().length === 0;
  return (
    <PageFrame
      page={props.page}
      fills
      facts={`${format().number(feedstocks().length, 0)} ${feedstocks().length === 1 ? "grade" : "grades"}`}
      tools={<RowTools grid={grid()} word="grade" onAdd={add} isEmpty={isEmpty()} />}
    >
      <SplitPane
        name="feedstock"
        sideLabel="The chosen grade"
        usualPx={430}
        main={
          <Show when={!isEmpty()} fallback={<NoFeedstock onAdd={add} />}>
            <div class="feedstock">
              <Grid
                label="Feedstock"
                words={["grade", "grades"]}
                columns={columns.grid}
                rows={feedstocks()}
                onEdit={edits.edit}
                newRow={newFeedstock}
                copyRow={copyFeedstock}
                findingAt={edits.findingAt}
                onActive={(row) => row && selection.choose({ feedstockId: row.id })}
                handle={setGrid}
                widths={widths.widths()}
                onWidth={widths.onWidth}
              />
              <Purchases />
            </div>
          </Show>
        }
        side={
          <Show when={feedstock()} fallback={<p class="quiet">Choose a grade.</p>}>
            {(shown) => (
              <FeedstockPanel
                feedstock={shown()}
                need={needs().get(shown().id)}
                columns={columns}
                edits={edits}
              />
            )}
          </Show>
        }
      />
    </PageFrame>
  );
}

function NoFeedstock(props: { readonly onAdd: () => void }): JSX.Element {
  return (
    <EmptyState
      title="No feedstock yet"
      actions={
        <Button look="main" icon="add" onClick={() => props.onAdd()}>
          New grade
        </Button>
      }
    >
      A grade is one polymer in one form that can be bought: as filament or as pellets, with its price, its
      stock and what it needs to be run.
    </EmptyState>
  );
}
