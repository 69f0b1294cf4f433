import { setImmediate } from "node:timers/promises";
import type { PlanDocument } from "../core/plan/plan-document.ts";
import { loadGlpk } from "../core/plan/engines/glpk.ts";
import { loadHighs } from "../core/plan/engines/highs.ts";
import type { WrittenLine } from "../core/quote/lines-table.ts";
import type { QuoteAnswer } from "../core/quote/quote-answer.ts";
import { openQuoteDesk } from "../core/quote/quote-desk.ts";
import { quoteFromAnswer } from "../core/quote/quote-from-answer.ts";
import { answerQuote } from "../core/quote/quote-job.ts";
import { nextQuoteId, quoteLineId } from "../core/quote/quote-number.ts";
import type { QuoteLineRequest } from "../core/quote/quote-order.ts";
import { wrapped } from "../core/report/plain-text.ts";
import { quoteContext } from "../core/report/quote-facts.ts";
import { quoteText } from "../core/report/quote-text.ts";
import { minuteOf } from "../core/shop/instants.ts";
import { localTime, nextFullHour } from "../core/shop/local-time.ts";
import type { Quote } from "../core/shop/quote.ts";
import type { Shop } from "../core/shop/shop.ts";
import { MS_PER_MIN } from "../core/units/conversions.ts";
import { EXIT } from "./exit-status.ts";
import { assumedText } from "./file-part.ts";
import { onInterrupt } from "./interrupt.ts";
import { makeFolder } from "./out-folder.ts";
import { printFindings } from "./print-findings.ts";
import { progressLine } from "./progress-line.ts";
import { bodiesBesideShop } from "./quote-bodies.ts";
import { type QuoteCall, readQuoteCall } from "./quote-call.ts";
import { writeQuoteFiles } from "./quote-files.ts";
import { type AskedParts, askedParts, readCsvLines } from "./quote-lines.ts";
import { readPlanFile } from "./read-plan-file.ts";
import { readShopFile, type ShopFile } from "./read-shop-file.ts";
import { runPlan } from "./run-plan.ts";

const WIDTH = 100;
/** Days planned, and the seed, where no plan says so. */
const DAYS = 7;
const SEED = 1;

/**
 * `quote SHOP.json --part ID|FILE --quantity N ...`: price and date for lines, against the work already in the shop. Status 0; 1 where a line has
 * no price or no date, or its wanted date is not held; 2 for what cannot be used; 3 where it was stopped.
 */
export async function quoteCommand(words: string[]): Promise<number> {
  const call = readQuoteCall(words);
  const file = await readShopFile(call.path);
  printFindings(file.findings, file.shop ? ["error"] : undefined);
  if (!file.shop) return EXIT.badInput;
  const asked = await linesAsked(call, file.shop);
  if (!asked) return EXIT.badInput;
  if (call.outDir) await makeFolder(call.outDir);
  const planned = await standingPlan(call, file, asked.parts.shop);
  if (!planned) return EXIT.badInput;
  const { shop } = asked.parts;
  const { quote, answer, isStopped } = await answered(call, asked, planned);
  const context = quoteContext(shop, quote, answer);
  if (call.json) console.log(JSON.stringify({ quote, answer }, null, 2));
  else tell(asked, quoteText(context));
  if (call.outDir) {
    const known = [...new Set(asked.parts.partOf.values())];
    const bodies = await bodiesBesideShop(call.path, known);
    await writeQuoteFiles(call, context, new Map([...bodies, ...asked.parts.meshes]));
  }
  if (isStopped || planned.status === "stopped") return EXIT.stopped;
  return isKept(answer) ? EXIT.planned : EXIT.lateOrUnplanned;
}

interface Asked {
  readonly lines: readonly WrittenLine[];
  readonly parts: AskedParts;
}

/** The lines of the words and of the table with their parts; null: something about them is wrong and has been said. */
async function linesAsked(call: QuoteCall, shop: Shop): Promise<Asked | null> {
  const table = call.csv === null ? { lines: [], findings: [] } : await readCsvLines(call.csv);
  const lines = [...(call.line ? [call.line] : []), ...table.lines];
  const names = lines.map(({ part }) => part);
  const parts = await askedParts(shop, names, call.unit);
  const findings = [...table.findings, ...parts.findings];
  printFindings(findings);
  return findings.some(({ severity }) => severity === "error") ? null : { lines, parts };
}

/** The plan given, or one that is made now; null: the one given cannot be used, which has been said. */
async function standingPlan(call: QuoteCall, file: ShopFile, shop: Shop): Promise<PlanDocument | null> {
  if (call.plan !== null) {
    const plan = await readPlanFile(call.plan, shop);
    if ("builds" in plan) return plan;
    printFindings([plan]);
    return null;
  }
  if (!call.json) console.error(`No plan was given: the shop is planned for ${call.seconds} s first.`);
  const progress = progressLine(shop.currency, call.json);
  const { from, seconds } = call;
  const plan = await runPlan({
    shop,
    setAside: file.setAside,
    call: { from, seconds, days: DAYS, seed: SEED, gapPct: null },
    onProgress: progress.show,
  });
  progress.clear();
  return plan;
}

interface Answered {
  readonly quote: Quote;
  readonly answer: QuoteAnswer;
  readonly isStopped: boolean;
}

async function answered(call: QuoteCall, { lines, parts }: Asked, plan: PlanDocument): Promise<Answered> {
  const { shop } = parts;
  const request = { fromMin: startMin(call, shop, plan), days: plan.horizonDays, seed: plan.seed };
  const engines = { glpk: loadGlpk, highs: loadHighs };
  const desk = await openQuoteDesk(shop, plan, request, { now: () => performance.now(), engines });
  const id = nextQuoteId(shop, Number(localTime(request.fromMin, shop.timeZone).date.slice(0, 4)));
  const requests = lines.map((line, at) => requestOf(line, quoteLineId(id, at + 1, shop), parts));
  let isStopped = false;
  onInterrupt(() => void (isStopped = true));
  const answer = await answerQuote(desk, { lines: requests }, { stopped: () => isStopped, pause });
  onInterrupt(null);
  const { customer } = call;
  const head = { id, customer, customerAddress: "", note: "", askedMin: request.fromMin };
  return { quote: quoteFromAnswer(shop, answer, head), answer, isStopped };
}

/** Ctrl+C is heard between the steps only, when Node listens. */
async function pause(): Promise<void> {
  await setImmediate();
}

function requestOf(line: WrittenLine, id: string, { shop, partOf }: AskedParts): QuoteLineRequest {
  const { part, by, quantity, allowLate, machineId, feedstockId } = line;
  return {
    id,
    partId: partOf.get(part)?.id ?? part,
    quantity,
    wantedMin: by === null ? null : minuteOf(by, shop.timeZone),
    allowLate,
    ...(machineId === undefined ? {} : { machineId }),
    ...(feedstockId === undefined ? {} : { feedstockId }),
  };
}

/** As given; else now, but not before the plan starts. */
function startMin({ from }: QuoteCall, { timeZone }: Shop, plan: PlanDocument): number {
  if (from !== null) return minuteOf(from, timeZone);
  return Math.max(nextFullHour(Date.now() / MS_PER_MIN, timeZone), minuteOf(plan.plannedFrom, timeZone));
}

function tell({ lines, parts }: Asked, text: string): void {
  for (const part of parts.assumed) {
    const quantity = lines.find(({ part: name }) => parts.partOf.get(name) === part)?.quantity ?? 1;
    console.log(`${wrapped(assumedText(part, quantity), WIDTH).join("\n")}\n`);
  }
  console.log(text.trimEnd());
}

/** Every line has a price and a date, and those wanted are promised. */
function isKept({ lines, isHeld }: QuoteAnswer): boolean {
  return (
    isHeld &&
    lines.every(
      ({ price, promise, asked }) =>
        price !== null && promise !== null && promise.byMin <= (asked.wantedMin ?? Infinity),
    )
  );
}
