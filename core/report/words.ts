import type { CostKind } from "../cost/cost-line.ts";
import type { PlanDocument } from "../plan/plan-document.ts";

/** Kinds of cost in words. */
export const KIND_WORDS: Readonly<Record<CostKind, string>> = {
  feedstock: "Feedstock",
  machine: "Machine hours",
  labour: "Operators",
  engineering: "Tool paths of new parts",
  changeover: "Changeovers and purge",
  finishing: "Finishing",
  expectedFailure: "Expected failures",
  overhead: "Overhead",
  buyOut: "Bought out",
  late: "Lateness",
  moving: "Moving planned builds",
};

type TaskKind = PlanDocument["tasks"][number]["kind"];

/** Operators' work in words. */
export const TASK_WORDS: Readonly<Record<TaskKind, string>> = {
  dry: "Dry",
  changeOver: "Change over",
  setUp: "Set up",
  unload: "Unload",
  finish: "Finish",
};

/**
 * Cautions that go with every plan. They name the usual dangers of heated polymer machines and who has to decide; they are
 * no advice. Subjects after NIOSH, "Approaches to Safe 3D Printing" (2023), and NFPA Journal (2018), in own words.
 */
export const CAUTIONS: readonly { readonly title: string; readonly text: string }[] = [
  {
    title: "Running with nobody there",
    text: "Whether a machine may run unattended is the works' decision, made machine by machine by the person responsible. Check the maker's instructions, local fire and building rules, the insurer's terms and your own risk assessment, and ask a qualified person. This plan only follows what the shop file says was approved.",
  },
  {
    title: "Heat",
    text: "Nozzles, platforms, chambers and thick parts stay hot long after a build ends. The cool-down in this plan is an estimate of time, not a release to touch. Heavy parts need a lifting aid or a second person.",
  },
  {
    title: "Fumes and fine particles",
    text: "Molten polymer gives off vapours and ultrafine particles; more machines, higher temperatures and styrenic or polyamide grades give off more. Have the ventilation of the room confirmed by a competent person. No exposure is computed here.",
  },
  {
    title: "Dryers",
    text: "A dryer is a heated appliance too, and the same rules hold for leaving it on. Temperature and time come from the feedstock's supplier; the figures here are those of the shop file.",
  },
  {
    title: "Power and fire",
    text: "Several machines on one circuit, runaway heaters and stored feedstock are usual causes of fire. Have circuits, alarms and cut-offs checked by a qualified electrician and by whoever answers for fire protection.",
  },
  {
    title: "Pellet machines",
    text: "Screws and moving gantries need their guards, and locking out before anyone cleans them. Spilled pellets make floors slippery.",
  },
];

/** What the numbers rest on and where they end. */
export const LIMITS: readonly string[] = [
  "Print times, masses and failure rates are estimates from the shop file. Calibrate a machine's time factor with finished builds.",
  "The lower bound holds for this shop file, this start and these days only; it says nothing about work that is not in the file.",
  "Costs are those of making: prices, margins and taxes are not in them.",
  "Feedstock needs hold purge, waste and expected scrap, but no safety stock.",
  "Prices of an hour hold for about one hour more or less, one at a time; they do not add up.",
];
