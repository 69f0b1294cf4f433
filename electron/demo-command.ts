import { EXIT } from "./exit-status.ts";
import { planCommand } from "./plan-command.ts";

/** The demo shop, the invented week it is made for, and where the reports go. */
const DEMO = [
  "assets/demo.shop.json",
  "--from",
  "2026-11-30",
  "--days",
  "7",
  "--seconds",
  "5",
  "--out",
  "demo-week",
];

/** `demo`: plans the demo shop. Late orders are part of the story, so they are no failure here. */
export async function demoCommand(words: string[]): Promise<number> {
  const status = await planCommand([...DEMO, ...words]);
  return status === EXIT.lateOrUnplanned ? EXIT.planned : status;
}
