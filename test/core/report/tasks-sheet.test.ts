import { describe, expect, test } from "vitest";
import { weekSheet } from "../../../core/report/html-sheet.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";

const plan = aPlan();
const list = weekSheet(aWorks(), plan, "tasks");

describe("the operators' list alone", () => {
  test("has every task of the plan, each with a box to tick", () => {
    expect(list.match(/class="tick"/g)).toHaveLength(plan.tasks.length);
    expect(plan.tasks.length).toBeGreaterThan(0);
  });

  test("leaves out pictures and money, and keeps the cautions", () => {
    expect(list).not.toContain('class="timeline"');
    expect(list).not.toContain('id="costs"');
    expect(list).toContain("Running with nobody there");
  });
});
