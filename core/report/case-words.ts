import type { CashRowName } from "../purchase/cash-flow.ts";
import type { TornadoBar, TornadoInput } from "../purchase/tornado.ts";
import { fixedText } from "./display.ts";

/** Inputs of the case in words. */
export const INPUT_WORDS: Readonly<Record<TornadoInput, string>> = {
  price: "Price paid",
  demand: "Demand",
  partPrices: "Prices of parts",
  feedstockPrices: "Feedstock prices",
  labour: "Cost of labour",
  energy: "Cost of energy",
  boughtOutPrices: "Prices of bought parts",
  lateCosts: "Cost of lateness",
  utilisation: "Gain that comes about",
  life: "Useful life",
  residual: "Residual value",
  discountRate: "Discount rate",
};

/** Rows of the table of cash in words. */
export const CASH_WORDS: Readonly<Record<CashRowName, string>> = {
  price: "Price",
  installation: "Installation",
  training: "Training",
  sale: "Sale of old machines",
  residual: "Residual value",
  valueGivenUp: "Value given up by a sale",
  revenue: "Revenue",
  feedstock: "Feedstock",
  machine: "Energy of machines",
  labour: "Operators",
  engineering: "Tool paths of new parts",
  changeover: "Changeovers and purge",
  finishing: "Finishing",
  expectedFailure: "Expected failures",
  buyOut: "Bought out",
  late: "Lateness",
  standing: "Floor and maintenance",
  wages: "Wages of added shifts",
  yearlyCost: "Yearly cost of the candidate",
  tax: "Tax",
};

/** One end of a tornado bar. Example: 0.8 times gives "80 %", 6 years "6 years". */
export function endText(at: number, unit: TornadoBar["unit"]): string {
  if (unit === "times") return `${fixedText(at * 100, 0)} %`;
  return unit === "years" ? `${fixedText(at, 0)} years` : `${fixedText(at, 1)} %`;
}

/**
 * Cautions that go with every case: usual dangers and who has to decide. They are no advice. Subjects after NIOSH, "Approaches to
 * Safe 3D Printing" (2023), and NFPA Journal (2018), in own words.
 */
export const CASE_CAUTIONS: readonly string[] = [
  "Whether a machine may run with nobody there is decided by the person responsible for it, with the maker's instructions, local codes, the insurer's terms and qualified people. A case only reckons what it would be worth.",
  "Another machine brings heat, vapours and fine particles, moving parts and load on its circuit. Before ordering, have power, ventilation, fire protection and floor load judged by qualified people.",
  "All figures are estimates from the shop file and the case, not a promise of gain.",
];
