import { fireEvent, screen, waitFor } from "@solidjs/testing-library";
import { beforeEach, describe, expect, test } from "vitest";
import FeedstockPage from "../../../renderer/pages/feedstock/feedstock-page.tsx";
import type { Stores } from "../../../renderer/store/stores.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { renderPage } from "../render-page.tsx";

const WORKS = aWorks();
const PLAN = aPlan(WORKS);
let stores: Stores;
let container: HTMLElement;

const panel = (): string => container.querySelector("aside")?.textContent ?? "";

describe("the feedstock page", () => {
  beforeEach(async () => {
    ({ stores, container } = renderPage(FeedstockPage, WORKS, PLAN));
    await waitFor(() => expect(stores.plan.plan()).not.toBeNull());
  });

  test("lists what the plan asks to buy, every grade with packs once", () => {
    const buys = PLAN.feedstockNeeds.filter(({ packs }) => packs > 0);
    expect(buys.length).toBeGreaterThan(0);
    const rows = container.querySelectorAll(".purchases tbody tr");
    expect(rows.length).toBe(buys.length);
    for (const { note } of buys) expect(container.querySelector(".purchases")?.textContent).toContain(note);
  });

  test("empties a price as not known, and undo brings it back", () => {
    const field = screen.getByLabelText("Price") as HTMLInputElement;
    field.value = "";
    fireEvent.change(field);
    expect(stores.shop.shop().feedstocks[0]?.pricePerKg).toBeNull();
    stores.shop.undo();
    expect(stores.shop.shop()).toEqual(WORKS);
  });

  test("cautions of dryers only where it is dried, of fumes always, and never says that anything is safe", () => {
    const [first] = stores.shop.shop().feedstocks;
    stores.shop.apply("dry", [{ kind: "put", list: "feedstocks", entry: { ...first!, dryH: 4 }, at: null }]);
    expect(panel()).toContain("Dryers.");
    stores.shop.apply("dry", [{ kind: "put", list: "feedstocks", entry: { ...first!, dryH: 0 }, at: null }]);
    expect(panel()).not.toContain("Dryers.");
    expect(panel()).toContain("Fumes and fine particles.");
    expect(panel()).not.toMatch(/\bsafe\b/i);
  });
});
