import type { CostLine } from "./cost-line.ts";

/**
 * Cost line of copies made elsewhere: copies x price of one. No overhead. Example: 4 copies at 12.5 cost 50.
 */
export function buyOutLine(
  orderId: string,
  copies: number,
  pricePerPiece: number,
  currency: string,
): CostLine {
  return {
    kind: "buyOut",
    amount: copies * pricePerPiece,
    formula: "copies x price of one copy made elsewhere",
    inputs: [
      { name: "copies", value: copies, unit: "copies" },
      { name: "price of one copy", value: pricePerPiece, unit: currency },
    ],
    orderId,
  };
}
