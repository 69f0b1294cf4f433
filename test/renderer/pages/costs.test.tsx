import { fireEvent, screen, waitFor } from "@solidjs/testing-library";
import { beforeEach, describe, expect, test } from "vitest";
import CostsPage from "../../../renderer/pages/costs/costs-page.tsx";
import type { Stores } from "../../../renderer/store/stores.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { renderPage } from "../render-page.tsx";

const WORKS = aWorks();
const PLAN = aPlan(WORKS);
let stores: Stores;
let container: HTMLElement;

const rows = (): HTMLElement[] => screen.getAllByRole("row").filter((row) => row.dataset["at"] !== undefined);
const press = (key: string): void => void fireEvent.keyDown(screen.getByRole("treegrid"), { key });
const openTab = (name: string): void => {
  const tab = screen.getByRole("tab", { name });
  fireEvent.mouseDown(tab);
  fireEvent.click(tab);
};

describe("the costs page", () => {
  beforeEach(async () => {
    ({ stores, container } = renderPage(CostsPage, WORKS, PLAN));
    await waitFor(() => expect(stores.plan.plan()).not.toBeNull());
  });

  test("opens an amount with the arrow keys down to the formula and every input of a line", () => {
    const closed = rows().length;
    for (const key of ["Home", "ArrowRight", "ArrowRight", "ArrowRight", "ArrowRight"]) press(key);
    expect(rows().length).toBeGreaterThan(closed);
    const active = rows().find((row) => row.tabIndex === 0);
    expect(active?.getAttribute("aria-level")).toBe("3");
    const line = [...PLAN.builds.flatMap(({ costLines }) => costLines), ...PLAN.costLines].find(
      ({ formula, inputs }) =>
        container.querySelector(".made-formula")?.textContent === formula &&
        inputs.every(({ name }) => container.querySelector("aside")?.textContent?.includes(name)),
    );
    expect(line).toBeDefined();
    for (const key of ["ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft"]) press(key);
    expect(rows().length).toBe(closed);
  });

  test("writes the price of an hour more and less as numbers into every tile that is worth anything", () => {
    openTab("Price of an hour");
    const priced = [...PLAN.prices.machineHour, ...PLAN.prices.operatorHour];
    expect(priced.length).toBeGreaterThan(0);
    const tiles = [...container.querySelectorAll(".price-tile")];
    expect(tiles.length).toBe(priced.length);
    const worth = priced.filter(({ moreSavesPerH, lessCostsPerH }) => moreSavesPerH + lessCostsPerH > 0);
    expect(tiles.filter((tile) => tile.textContent?.includes("+1")).length).toBe(worth.length);
  });

  test("shows every rule of thumb and the lower bound beside the plan", () => {
    openTab("Against rules of thumb");
    expect(container.querySelectorAll(".worth tbody tr").length).toBe(PLAN.handRules.length + 2);
  });

  test("changes a money rule as one step of undo", () => {
    openTab("Money rules");
    const field = screen.getByLabelText("An operator") as HTMLInputElement;
    field.value = "50";
    fireEvent.change(field);
    expect(stores.shop.shop().costing.labourPerH).toBe(50);
    stores.shop.undo();
    expect(stores.shop.shop()).toEqual(WORKS);
  });
});
