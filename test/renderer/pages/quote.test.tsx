import { fireEvent, screen, waitFor, within } from "@solidjs/testing-library";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { loadGlpk } from "../../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../../core/plan/engines/highs.ts";
import { openQuoteDesk, type QuoteDesk } from "../../../core/quote/quote-desk.ts";
import { answerQuote } from "../../../core/quote/quote-job.ts";
import QuotePage from "../../../renderer/pages/quote/quote-page.tsx";
import type { Stores } from "../../../renderer/store/stores.ts";
import type { QuoteMessage } from "../../../renderer/worker/quote-messages.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { renderPage } from "../render-page.tsx";

const WORKS = aWorks();
const PLAN = aPlan(WORKS);
/** Answering takes a second where nothing else runs. */
const ANSWER = { timeout: 40_000 };

/** The worker's part in this very thread, with few runs; the desk of the first test serves all. */
class HereWorker extends EventTarget {
  static desks = new Map<string, Promise<QuoteDesk>>();
  private desk: Promise<QuoteDesk> | null = null;
  private newest = 0;

  postMessage(message: QuoteMessage): void {
    if (message.kind === "desk") return this.open(message);
    this.newest = message.run;
    void this.desk?.then((desk) =>
      answerQuote(
        desk,
        { ...message.asked, runs: 100 },
        {
          onAnswer: (answer) => this.tell({ kind: "answer", run: message.run, answer }),
          stopped: () => this.newest !== message.run,
          pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
        },
      ),
    );
  }

  terminate(): void {
    this.newest = -1;
  }

  private open({ desk, shop, plan, request }: Extract<QuoteMessage, { kind: "desk" }>): void {
    const key = JSON.stringify([shop.orders.length, shop.parts.length, request]);
    const tools = { now: () => performance.now(), engines: { glpk: loadGlpk, highs: loadHighs } };
    const made = HereWorker.desks.get(key) ?? openQuoteDesk(shop, plan, request, tools);
    HereWorker.desks.set(key, made);
    this.desk = made;
    void made.then(() => this.tell({ kind: "ready", desk, setAside: 0 }));
  }

  private tell(data: unknown): void {
    this.dispatchEvent(new MessageEvent("message", { data }));
  }
}

let stores: Stores;
let container: HTMLElement;

const type = (label: string, text: string, at = 0): void => {
  const field = screen.getAllByLabelText(label)[at] as HTMLInputElement;
  field.value = text;
  fireEvent.input(field);
};
const stage = (): string => container.querySelector(".quote-stage")?.textContent ?? "none";
const fields = (label: string): string[] =>
  screen.getAllByLabelText(label).map((field) => (field as HTMLInputElement).value);
const press = (name: string): void => void fireEvent.click(screen.getByRole("button", { name }));
const quotes = () => stores.shop.shop().quotes;

beforeEach(async () => {
  vi.stubGlobal("Worker", HereWorker);
  vi.setSystemTime("2026-11-29T12:00:00Z");
  ({ stores, container } = renderPage(QuotePage, WORKS, PLAN));
  await waitFor(() => expect(stores.plan.plan()).not.toBeNull());
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("an answer is marked as rough until everything of it is worked out, and is then whole", async () => {
  type("Part", "clip");
  type("Quantity", "40");
  await waitFor(() => expect(stage()).toBe("Rough"), ANSWER);
  expect(container.querySelector(".quote-figure")?.textContent).toMatch(/^[\d,.]+\s*EUR$/);
  expect(container.querySelector(".quote-progress")?.textContent).toContain("Still being worked out");
  await waitFor(() => expect(stage()).toBe("Whole"), ANSWER);
  expect(screen.getByRole("table", { name: "Dates of the line" }).textContent).toContain("Kept with 95 %");
});

test("a draft is saved, accepted with a promise that must hold, and undone in as many steps", async () => {
  type("Customer", "<img src=x onerror=alert(1)>");
  type("Part", "tray");
  type("Quantity", "7");
  await waitFor(() => expect(stage()).not.toBe("none"), ANSWER);
  press("Save draft");
  const [draft] = quotes();
  expect(draft).toMatchObject({ id: "Q-2026-0001", state: "draft" });
  expect(
    within(screen.getByRole("listbox", { name: "Quotes" })).getByText("<img src=x onerror=alert(1)>"),
  ).toBeTruthy();
  press("Accept");
  fireEvent.click(screen.getByLabelText("This promise must hold"));
  press("Make orders of it");
  const order = stores.shop.shop().orders.find(({ id }) => id === "Q-2026-0001-1");
  expect(order).toMatchObject({ partId: "tray", quantity: 7, allowLate: false });
  expect(order?.dueAt).toBe(draft?.lines[0]?.promisedAt);
  expect(quotes()[0]?.state).toBe("accepted");
  stores.shop.undo();
  expect(quotes()).toEqual([draft]);
  stores.shop.undo();
  expect(stores.shop.shop()).toEqual(WORKS);
});

test("cells pasted into a part become lines, and what is wrong with one stands at it", () => {
  const cells = "clip\t40\t2026-12-04\nno-such-part\t3";
  const clipboardData = { getData: () => cells };
  fireEvent.paste(screen.getByLabelText("Part"), { clipboardData });
  expect(fields("Part")).toEqual(["clip", "no-such-part"]);
  expect(fields("Quantity")).toEqual(["40", "3"]);
  const [, second] = screen.getAllByRole("group", { name: /Line/ });
  expect(second?.textContent).toContain("The shop has no such part");
  expect(screen.getAllByLabelText("Wanted by")[0]?.parentElement?.parentElement?.textContent).toContain(
    "4 Dec 16:00",
  );
});

test("a quote that is declined keeps why, and an earlier reason is one press away", async () => {
  type("Part", "tray");
  type("Quantity", "7");
  await waitFor(() => expect(stage()).not.toBe("none"), ANSWER);
  press("Decline");
  type("Why it did not become an order", "price");
  press("Declined");
  expect(quotes()[0]).toMatchObject({ state: "declined", reason: "price" });
  expect(screen.getByRole("region", { name: "As it was offered" }).textContent).toContain("price");
  press("New one like it");
  await waitFor(() => expect(stage()).not.toBe("none"), ANSWER);
  press("Decline");
  press("price");
  press("Declined");
  expect(quotes().map(({ id, reason }) => [id, reason])).toEqual([
    ["Q-2026-0001", "price"],
    ["Q-2026-0002", "price"],
  ]);
});
