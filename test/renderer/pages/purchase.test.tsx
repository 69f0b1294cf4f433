import { fireEvent, screen, waitFor, within } from "@solidjs/testing-library";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { editedLines, pastOrders, placed } from "../../../renderer/pages/purchase/demand-rows.ts";
import { copyOfCandidate, newCandidate } from "../../../renderer/pages/purchase/new-candidate.ts";
import PurchasePage from "../../../renderer/pages/purchase/purchase-page.tsx";
import type { Stores } from "../../../renderer/store/stores.ts";
import type { PurchaseMessage, PurchaseNews } from "../../../renderer/worker/purchase-messages.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aCaseReport, alike, caseOf, DEAR, GOOD, withNames } from "../../fixtures/a-case-report.ts";
import { aMachine, aShop } from "../../fixtures/a-route.ts";
import { HOSTILE_NAMES } from "../../fixtures/hostile-names.ts";
import { renderPage } from "../render-page.tsx";

/** The worker's part in this very thread, on a toy in place of the weekly program; `isHeld` keeps it from answering. */
class HereWorker extends EventTarget {
  static isHeld = false;

  postMessage(message: PurchaseMessage): void {
    // The worker that checks the shop is stood in for as well, and stays silent.
    if (message.kind !== "work" && message.kind !== "stop") return;
    if (message.kind === "stop") return this.tell({ run: message.run, kind: "end" });
    const { run, shop, purchaseCase } = message;
    this.tell({ run, kind: "progress", progress: { stage: "planning the weeks", done: 1, all: 6 } });
    if (HereWorker.isHeld) return;
    void aCaseReport(purchaseCase, shop).then(({ study, gap, findings }) => {
      this.tell({ run, kind: "found", found: { shop, setAside: 0, study, gap, findings } });
      this.tell({ run, kind: "end" });
    });
  }

  terminate(): void {}

  private tell(data: PurchaseNews): void {
    queueMicrotask(() => this.dispatchEvent(new MessageEvent("message", { data })));
  }
}

let stores: Stores;
let container: HTMLElement;

const works = (cases: readonly PurchaseCase[], changes: Partial<Shop> = {}): Shop =>
  aShop({
    machines: [aMachine(), aMachine({ id: "F2", name: "Filament 2" })],
    cases: [...cases],
    ...changes,
  });
const open = (shop: Shop): void => void ({ stores, container } = renderPage(PurchasePage, shop));
const press = (name: string | RegExp): void => void fireEvent.click(screen.getByRole("button", { name }));
const stages = (): string[] =>
  [...container.querySelectorAll(".answer-stage")].map((stage) => stage.textContent ?? "");
const cases = (): readonly PurchaseCase[] => stores.shop.shop().cases;
const type = (label: string, text: string): void => {
  const field = screen.getByLabelText(label) as HTMLInputElement;
  field.value = text;
  fireEvent.change(field);
};
const workOut = async (): Promise<void> => {
  press(/^Work it out/);
  await waitFor(() => expect(stages()).toContain("Whole"), { timeout: 20_000 });
};

/** A cell as it is written in English. */
const number = (cell: Element): number =>
  Number((cell.textContent ?? "").replace("−", "-").replaceAll(/[,\s]/g, ""));

beforeEach(() => {
  HereWorker.isHeld = false;
  vi.stubGlobal("Worker", HereWorker);
});
afterEach(() => vi.unstubAllGlobals());

describe("the purchase page", () => {
  test("answers with the sentence first, every candidate's figures, and cash whose rows add up to the total", async () => {
    open(works([caseOf([GOOD, DEAR])]));
    await workOut();
    expect(container.querySelector(".answer-sentence")?.textContent).toMatch(
      /^Take Machine good \(invented\): /,
    );
    expect(container.querySelectorAll(".figures thead th").length).toBe(2);
    const columnSum = (rows: Iterable<Element>, place: number): number =>
      [...rows].reduce((sum, row) => sum + number(row.querySelectorAll("td")[place]!), 0);
    const table = container.querySelector(".cash-table")!;
    const totals = [...table.querySelectorAll(".cash-total td")].map(number);
    expect(totals.length).toBe(6);
    for (const [place, total] of totals.entries())
      expect(Math.abs(columnSum(table.querySelectorAll("tbody tr"), place) - total)).toBeLessThanOrEqual(5);
  });

  test("opens another candidate by the head of its column", async () => {
    open(works([caseOf([GOOD, DEAR])]));
    await workOut();
    fireEvent.click(
      within(container.querySelector(".figures thead") as HTMLElement).getAllByRole("button")[1]!,
    );
    expect(screen.getByRole("heading", { name: "Cash by year of B" })).toBeDefined();
  });

  test("keeps the old answer and says that it is from before the last edits, until they are undone", async () => {
    open(works([caseOf([GOOD])]));
    await workOut();
    type("Price", "21000");
    expect(cases()[0]?.candidates[0]?.price).toBe(21_000);
    expect(stages()).toEqual(["Whole", "Before the last edits"]);
    stores.shop.undo();
    expect(stages()).toEqual(["Whole"]);
  });

  test("does not start a case with an error, and says it at the field", () => {
    open(
      works([caseOf([alike("gone", { changes: [{ kind: "sell-machine", machineId: "X9", proceeds: 5 }] })])]),
    );
    expect(screen.getByRole("button", { name: /^Work it out/ }).hasAttribute("disabled")).toBe(true);
    expect(container.querySelector(".candidate-inside .findings")?.textContent).toContain(
      "there is no machine X9",
    );
  });

  test("while it is worked out the case can be edited, and Stop ends the run", async () => {
    HereWorker.isHeld = true;
    open(works([caseOf([GOOD])]));
    press(/^Work it out/);
    await waitFor(() =>
      expect(container.querySelector(".work-words")?.textContent).toContain("1 of 6 jobs done"),
    );
    type("Price", "19000");
    expect(cases()[0]?.candidates[0]?.price).toBe(19_000);
    press("Stop and keep");
    await waitFor(() => expect(screen.getByRole("button", { name: /^Work it out/ })).toBeDefined());
  });

  test("a new case is one step of undo", () => {
    const shop = works([]);
    open(shop);
    press(/^New case N$/);
    expect(cases().map(({ id }) => id)).toEqual(["case-1"]);
    stores.shop.undo();
    expect(stores.shop.shop()).toEqual(shop);
  });

  test("shows hostile names as text and nothing of them as markup", async () => {
    let next = 0;
    const { shop, purchaseCase } = withNames(() => HOSTILE_NAMES[next++ % HOSTILE_NAMES.length] ?? "");
    const candidates = purchaseCase.candidates.slice(0, 2);
    open({ ...shop, cases: [{ ...purchaseCase, candidates }] });
    await workOut();
    expect(container.querySelectorAll("script, img").length).toBe(0);
    expect(container.querySelector("[onerror], [onmouseover]")).toBeNull();
  });
});

describe("the parts of a case", () => {
  test("an edit of a grid replaces, removes and inserts lines at their places", () => {
    const lines = [{ name: "a" }, { name: "b" }, { name: "c" }];
    const rows = placed(lines);
    const edit = {
      label: "",
      replaced: [{ place: 0, row: { ...rows[0]!, name: "A" } }],
      inserted: [
        { place: 3, row: { id: "x", name: "d" } },
        { place: 3, row: { id: "y", name: "e" } },
      ],
      removed: [1],
    };
    expect(editedLines(lines, edit).map(({ name }) => name)).toEqual(["A", "c", "d", "e"]);
    expect(editedLines(lines, edit).some((line) => "id" in line)).toBe(false);
  });

  test("past orders come from a table with any usual separator, and a row that cannot be read is told", () => {
    const { rows, findings } = pastOrders("due;part;quantity\n2026-11-30;clip;40\n2026-W49;clip;none\n");
    expect(rows).toEqual([{ dueOn: "2026-11-30", partId: "clip", quantity: 40 }]);
    expect(findings[0]?.sentence).toContain("Row 3");
  });

  test("no two candidates add machines of one id, copies included", () => {
    const shop = works([]);
    const empty = aCase({ candidates: [] });
    const first = newCandidate("add-alike", shop, empty);
    const second = newCandidate("add-machine", shop, { ...empty, candidates: [first] });
    const copy = copyOfCandidate(second, shop, { ...empty, candidates: [first, second] });
    const ids = [first, second, copy].flatMap(({ changes }) =>
      changes.map((change) =>
        change.kind === "add-alike" ? change.id : change.kind === "add-machine" && change.machine.id,
      ),
    );
    expect(new Set([...ids, ...shop.machines.map(({ id }) => id)]).size).toBe(5);
  });
});
