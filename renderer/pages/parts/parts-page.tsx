import { createMemo, createSignal, type JSX, Show } from "solid-js";
import type { Part } from "../../../core/shop/part.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { followChosen } from "../../components/grid/follow-chosen.ts";
import { Grid, type GridHandle } from "../../components/grid/grid.tsx";
import { RowTools } from "../../components/grid/row-tools.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { SplitPane } from "../../components/split-pane.tsx";
import { addBodyFiles } from "../../store/body-files.ts";
import { chooseFile } from "../../store/download.ts";
import { createEntryEdits } from "../../store/entry-edits.ts";
import { nextId } from "../../store/next-id.ts";
import { newPart } from "../../store/part-of-body.ts";
import { createGridWidths } from "../../store/grid-widths.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/machines.css";
import "../../styles/parts.css";
import type { PageEntry } from "../page-list.ts";
import { DropZone } from "../orders/drop-zone.tsx";
import { createPartColumns, partColumnOf } from "./part-columns.ts";
import { PartPanel } from "./part-panel.tsx";

/** How can this be made: the parts, and of the chosen one its ways, its body, its layers and its needs. */
export default function PartsPage(props: { readonly page: PageEntry }): JSX.Element {
  const stores = useStores();
  const { shop, selection, format, notes } = stores;
  const widths = createGridWidths("parts");
  stores.shortcuts.add([
    { keys: "Arrow keys", label: "Turn the body (+ and \u2212: closer and away)", group: "On the body" },
    { keys: "Home", label: "Look at the body (End: at the whole room)", group: "On the body" },
  ]);
  const [grid, setGrid] = createSignal<GridHandle<Part> | null>(null);
  const ordered = createMemo(() => {
    const copies = new Map<string, { all: number; most: number }>();
    for (const { partId, quantity } of shop.shop().orders) {
      const before = copies.get(partId) ?? { all: 0, most: 1 };
      copies.set(partId, { all: before.all + quantity, most: Math.max(before.most, quantity) });
    }
    return copies;
  });
  const columns = createPartColumns((id) => ordered().get(id)?.all ?? 0);
  const edits = createEntryEdits("parts", partColumnOf);
  const parts = () => shop.shop().parts;
  const part = createMemo(() => parts().find(({ id }) => id === selection.chosen().partId) ?? parts()[0]);
  const add = (): void => {
    const entry = newPart(new Set(parts().map(({ id }) => id)));
    shop.apply("new part", [{ kind: "put", list: "parts", entry, at: null }]);
    selection.choose({ partId: entry.id });
  };
  const takeFile = async (): Promise<void> => {
    const file = await chooseFile(".stl,.3mf");
    if (file) await addBodyFiles([file], stores);
  };
  followChosen({ grid, rows: parts, chosenId: () => selection.chosen().partId });
  const isEmpty = (): boolean => parts().length === 0;
  return (
    <PageFrame
      page={props.page}
      fills
      facts={`${format().number(parts().length, 0)} ${parts().length === 1 ? "part" : "parts"}`}
      tools={
        <>
          <Button icon="file" onClick={() => void takeFile()}>
            Take in a body
          </Button>
          <RowTools grid={grid()} word="part" onAdd={add} isEmpty={isEmpty()} />
        </>
      }
    >
      <DropZone onTables={() => notes.alarm("Tables of orders are dropped on the Orders page.")}>
        <SplitPane
          name="part"
          sideLabel="The chosen part"
          usualPx={640}
          main={
            <Show when={!isEmpty()} fallback={<NoParts onTake={() => void takeFile()} onAdd={add} />}>
              <div class="grid-page">
                <Grid
                  label="Parts"
                  words={["part", "parts"]}
                  columns={columns.grid}
                  rows={parts()}
                  onEdit={edits.edit}
                  newRow={(_, taken) => newPart(taken)}
                  copyRow={(row, taken) => ({
                    ...row,
                    id: nextId(row.id, taken),
                    name: `${row.name} (copy)`,
                  })}
                  findingAt={edits.findingAt}
                  onActive={(row) => row && selection.choose({ partId: row.id })}
                  handle={setGrid}
                  widths={widths.widths()}
                  onWidth={widths.onWidth}
                />
              </div>
            </Show>
          }
          side={
            <Show when={part()} fallback={<p class="quiet">Choose a part.</p>}>
              {(shown) => (
                <PartPanel
                  part={shown()}
                  wanted={ordered().get(shown().id)?.most ?? 1}
                  columns={columns}
                  edits={edits}
                />
              )}
            </Show>
          }
        />
      </DropZone>
    </PageFrame>
  );
}

function NoParts(props: { readonly onTake: () => void; readonly onAdd: () => void }): JSX.Element {
  return (
    <EmptyState
      title="No parts yet"
      actions={
        <>
          <Button look="main" icon="file" onClick={() => props.onTake()}>
            Take in a body
          </Button>
          <Button icon="add" onClick={() => props.onAdd()}>
            New part
          </Button>
        </>
      }
    >
      A part is a body with what it must bear. Drop STL or 3MF files here, or type the measures of one.
    </EmptyState>
  );
}
