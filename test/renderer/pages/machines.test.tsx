import { fireEvent, screen } from "@solidjs/testing-library";
import { beforeEach, describe, expect, test } from "vitest";
import MachinesPage from "../../../renderer/pages/machines/machines-page.tsx";
import { copyMachine, newMachine } from "../../../renderer/pages/machines/machine-rows.ts";
import type { Stores } from "../../../renderer/store/stores.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { renderPage } from "../render-page.tsx";

const WORKS = aWorks();
let stores: Stores;

function type(label: string, text: string): void {
  const field = screen.getByLabelText(label) as HTMLInputElement;
  field.value = text;
  fireEvent.change(field);
}

function openTab(name: string): void {
  const tab = screen.getByRole("tab", { name });
  fireEvent.mouseDown(tab);
  fireEvent.click(tab);
}

describe("the machine page", () => {
  beforeEach(() => {
    ({ stores } = renderPage(MachinesPage, WORKS));
  });

  test("puts a fact of the chosen machine as one step of undo, and shows what does not fit without losing it", () => {
    openTab("Facts");
    type("Set-up", "33");
    expect(stores.shop.shop().machines[0]?.setUpMin).toBe(33);
    type("Set-up", "-1");
    expect(stores.shop.shop().machines[0]?.setUpMin).toBe(33);
    expect(screen.getByText("Set-up: write a number from 0 on.")).toBeTruthy();
    stores.shop.undo();
    expect(stores.shop.shop()).toEqual(WORKS);
  });

  test("tells what is wrong with a field at that field, also where the grid has no such column", () => {
    openTab("Facts");
    type("Warming up", "5000");
    const field = screen.getByLabelText("Warming up");
    expect(field.getAttribute("aria-invalid")).toBe("true");
    const told = document.getElementById(field.getAttribute("aria-describedby") ?? "");
    expect(told?.textContent).toContain("is 5000 min");
    expect(screen.getByLabelText("Set-up").getAttribute("aria-invalid")).toBeNull();
  });

  test("approves running alone only after a second answer, with who has to be asked", async () => {
    const before = stores.shop.shop().machines[0]!;
    stores.shop.apply("x", [
      { kind: "put", list: "machines", entry: { ...before, unattended: false }, at: null },
    ]);
    fireEvent.click(screen.getByLabelText("Approved to run with nobody there"));
    expect(stores.shop.shop().machines[0]?.unattended).toBe(false);
    const dialog = await screen.findByRole("dialog");
    for (const word of ["decision", "maker's instructions", "fire", "insurer", "qualified person"])
      expect(dialog.textContent).toContain(word);
    expect(dialog.textContent).not.toMatch(/\bsafe/i);
    fireEvent.click(screen.getByRole("button", { name: "I answer for it: approve" }));
    expect(stores.shop.shop().machines[0]?.unattended).toBe(true);
  });

  test("renames a machine wherever it is named", () => {
    const [order] = stores.shop.shop().orders;
    stores.shop.apply("pin", [
      { kind: "put", list: "orders", entry: { ...order!, pinned: { machineId: "F1" } }, at: null },
    ]);
    openTab("Facts");
    type("Machine", "Z1");
    expect(stores.shop.shop().machines[0]?.id).toBe("Z1");
    expect(stores.shop.shop().orders[0]?.pinned?.machineId).toBe("Z1");
  });
});

test("a new machine and a copy are not approved to run alone", () => {
  expect(newMachine("day", new Set()).unattended).toBe(false);
  const approved = { ...WORKS.machines[0]!, unattended: true, unattendedMaxH: 8 };
  const copy = copyMachine(approved, new Set(["F1"]));
  expect(copy.unattended).toBe(false);
  expect(copy.unattendedMaxH).toBeUndefined();
  expect(copy.id).toBe("F2");
});
