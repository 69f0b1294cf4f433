import { cleanup, fireEvent, render } from "@solidjs/testing-library";
import { createSignal, type JSX } from "solid-js";
import { afterEach, describe, expect, test } from "vitest";
import { Grid } from "../../../renderer/components/grid/grid.tsx";
import type { GridColumn, GridEdit } from "../../../renderer/components/grid/grid-column.ts";
import { makeFormat } from "../../../renderer/format/format.ts";
import { createShortcuts } from "../../../renderer/store/shortcuts.ts";
import { type Stores, StoresProvider } from "../../../renderer/store/stores.ts";
import { HOSTILE_NAMES } from "../../fixtures/hostile-names.ts";
import { BRITISH_RULES } from "../format-rules.ts";

interface Row {
  readonly id: string;
  readonly size: number;
}

const COLUMNS: GridColumn<Row>[] = [
  { id: "id", title: "Name", widthPx: 100, text: ({ id }) => id, put: (row, id) => ({ ...row, id }) },
  {
    id: "size",
    title: "Size",
    widthPx: 60,
    text: ({ size }) => String(size),
    put: (row, text) =>
      Number(text) > 0 ? { ...row, size: Number(text) } : { unfit: `${text} is no size.` },
    amount: ({ size }) => size,
  },
];

afterEach(cleanup);

function WithFormat(props: { readonly children: JSX.Element }): JSX.Element {
  const format = makeFormat({ ...BRITISH_RULES, timeZone: "UTC" });
  // The grid needs no more of the stores than these.
  const stores = { format: () => format, shortcuts: createShortcuts() } as unknown as Stores;
  return <StoresProvider value={stores}>{props.children}</StoresProvider>;
}

/** A grid whose edits are applied to its rows, as a page does. */
function shownGrid(first: readonly Row[]) {
  const [rows, setRows] = createSignal(first);
  const edits: GridEdit<Row>[] = [];
  const apply = (edit: GridEdit<Row>): void => {
    edits.push(edit);
    const next = [...rows()];
    for (const { place, row } of edit.replaced) next[place] = row;
    for (const { row } of edit.inserted) next.push(row);
    setRows(next.filter((_, place) => !edit.removed.includes(place)));
  };
  const { getByRole, container } = render(() => (
    <WithFormat>
      <Grid label="Things" words={["thing", "things"]} columns={COLUMNS} rows={rows()} onEdit={apply} />
    </WithFormat>
  ));
  const grid = getByRole("grid");
  const press = (key: string, more: KeyboardEventInit = {}) =>
    fireEvent.keyDown(document.activeElement ?? grid, { key, ...more });
  const cell = (row: number, col: number) =>
    container.querySelector<HTMLElement>(`[data-row="${row}"][data-col="${col}"]`);
  const status = () => container.querySelector(".grid-foot [role=status]")?.textContent;
  grid.focus();
  return { grid, cell, press, status, rows, setRows, edits, container };
}

const MANY: Row[] = Array.from({ length: 5000 }, (_, at) => ({ id: `T-${at}`, size: at + 1 }));

describe("a grid of 5000 rows", () => {
  test("draws only those in sight, and the active one wherever it is", () => {
    const { grid, press, cell, container } = shownGrid(MANY);
    expect(container.querySelectorAll("[role=row]").length).toBeLessThan(60);
    expect(grid.getAttribute("aria-rowcount")).toBe("5001");
    press("End", { ctrlKey: true });
    expect(cell(4999, 1)?.textContent).toBe("5000");
    expect(container.querySelector(`#${grid.getAttribute("aria-activedescendant")}`)).toBe(cell(4999, 1));
  });
});

describe("a cell", () => {
  test("that was typed over is changed once, by one edit", () => {
    const { press, cell, edits } = shownGrid(MANY.slice(0, 3));
    press("ArrowRight");
    press("7");
    const field = document.activeElement as HTMLInputElement;
    expect(field.value).toBe("7");
    fireEvent.input(field, { target: { value: "72" } });
    press("Enter");
    expect(cell(0, 1)?.textContent).toBe("72");
    expect(edits).toHaveLength(1);
    expect(edits[0]?.label).toBe("size of thing T-0");
  });

  test("that was opened and left changes nothing", () => {
    const { press, edits, grid } = shownGrid(MANY.slice(0, 3));
    press("F2");
    press("Enter");
    press("F2");
    press("Escape");
    expect(edits).toEqual([]);
    expect(document.activeElement).toBe(grid);
  });

  test("with a text that does not fit keeps it, says why, and undo of the row takes it away", () => {
    const first = MANY.slice(0, 3);
    const { press, cell, status, setRows } = shownGrid(first);
    press("ArrowRight");
    press("x");
    press("Enter");
    press("ArrowUp");
    expect(cell(0, 1)?.textContent).toBe("x");
    expect(cell(0, 1)?.getAttribute("aria-invalid")).toBe("true");
    expect(status()).toBe("x is no size.");
    setRows(first);
    expect(cell(0, 1)?.textContent).toBe("1");
    expect(cell(0, 1)?.getAttribute("aria-invalid")).toBeNull();
  });

  test("with a hostile name shows it as one line of text", () => {
    const { container, cell } = shownGrid(HOSTILE_NAMES.map((id) => ({ id, size: 1 })));
    expect(container.querySelector("script, img, svg title")).toBeNull();
    expect(cell(0, 0)?.textContent).toBe("<script>alert(1)</script>");
    for (const row of HOSTILE_NAMES.keys()) {
      const text = cell(row, 0)?.textContent ?? "";
      expect(text.length).toBeLessThan(300);
      expect(text).not.toMatch(/[\u202a-\u202e\n]/);
    }
  });
});

describe("choosing", () => {
  test("with Shift and the arrow keys takes a rectangle, which Delete clears and Ctrl+Delete removes", () => {
    const { press, container, edits, rows } = shownGrid(MANY.slice(0, 5));
    press("ArrowDown");
    press("ArrowDown", { shiftKey: true });
    press("ArrowRight", { shiftKey: true });
    expect(container.querySelectorAll('[aria-selected="true"]')).toHaveLength(4);
    press("Delete", { ctrlKey: true });
    expect(rows().map(({ id }) => id)).toEqual(["T-0", "T-3", "T-4"]);
    expect(edits[0]?.label).toBe("removal of 2 things");
  });

  test("up from the first row reaches the heads; Enter sorts there", () => {
    const { press, cell, grid } = shownGrid(MANY.slice(0, 3));
    press("ArrowRight");
    press("ArrowUp");
    press("Enter");
    press("Enter");
    expect(cell(0, 1)?.textContent).toBe("3");
    expect(grid.querySelector('[aria-sort="descending"]')?.textContent).toContain("Size");
  });
});
