import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { QuoteAnswer, QuoteAsked } from "../../core/quote/quote-answer.ts";
import type { QuoteDeskRequest } from "../../core/quote/quote-desk.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { QuoteMessage, QuoteNews } from "./quote-messages.ts";

/** What a desk is opened with. */
interface DeskSource {
  readonly shop: Shop;
  readonly plan: PlanDocument | null;
  readonly request: QuoteDeskRequest;
}

/** Who hears of the desk and its answers. */
interface QuoteListener {
  readonly onReady: (setAside: number) => void;
  readonly onAnswer: (answer: QuoteAnswer) => void;
  /** no answer will come; why, in a sentence */
  readonly onTrouble: (sentence: string) => void;
}

let worker: Worker | null = null;
let listener: QuoteListener | null = null;
let source: DeskSource | null = null;
let known: QuoteNews | null = null;
let asked: QuoteAsked | null = null;
let newest: SharedArrayBuffer | null = null;
let desk = 0;
let run = 0;

/**
 * Opens a desk for quotes in its worker, or goes on at the one that is open where nothing that it knows has changed. True: a new
 * one is being opened. Example: editing a quote's note opens nothing, a new machine does.
 */
export function openDesk(next: DeskSource, hearing: QuoteListener): boolean {
  listener = hearing;
  const isSame = source !== null && worker !== null && isSameWork(source, next);
  if (isSame) {
    if (known) tellDesk(known);
    return known === null;
  }
  source = next;
  known = null;
  desk += 1;
  newest = globalThis.crossOriginIsolated ? new SharedArrayBuffer(4) : null;
  // Neither quotes nor purchases take anybody's time: the worker need not know them.
  const shop: Shop = { ...next.shop, quotes: [], cases: [] };
  post({ kind: "desk", desk, shop, plan: next.plan, request: next.request, newest });
  if (asked) askAgain(asked);
  return true;
}

/** Asks the desk; answers to what was asked before are let go. */
export function askDesk(next: QuoteAsked): void {
  asked = next;
  askAgain(next);
}

/** Nobody listens any more: what is being answered is let go, the desk stays warm. */
export function leaveDesk(): void {
  listener = null;
  forgetQuestion();
}

/** There is nothing to answer now. */
export function forgetQuestion(): void {
  asked = null;
  takeNumber();
}

function askAgain(question: QuoteAsked): void {
  post({ kind: "ask", desk, run: takeNumber(), asked: question });
}

function takeNumber(): number {
  run += 1;
  if (newest) Atomics.store(new Int32Array(newest), 0, run);
  return run;
}

function post(message: QuoteMessage): void {
  worker ??= started();
  worker.postMessage(message);
}

function started(): Worker {
  const made = new Worker(new URL("./quote-worker.ts", import.meta.url), { type: "module" });
  made.addEventListener("message", ({ data }: MessageEvent<QuoteNews>) => hear(data));
  made.addEventListener("error", ({ message }) => {
    forgetDesk();
    listener?.onTrouble(`The worker that answers quotes failed: ${message}`);
  });
  return made;
}

function hear(news: QuoteNews): void {
  if (news.kind === "answer") {
    if (news.run === run && asked) listener?.onAnswer(news.answer);
  } else if (news.kind === "fault") {
    forgetDesk();
    listener?.onTrouble(news.sentence);
  } else if (news.desk === desk) {
    known = news;
    tellDesk(news);
  }
}

function tellDesk(news: QuoteNews): void {
  if (news.kind === "ready") listener?.onReady(news.setAside);
  if (news.kind === "refused") listener?.onTrouble(news.sentence);
}

/** The next question starts afresh. */
function forgetDesk(): void {
  worker?.terminate();
  worker = null;
  source = null;
}

const WORK = [
  "timeZone",
  "currency",
  "costing",
  "calendars",
  "machines",
  "feedstocks",
  "parts",
  "orders",
  "builds",
] as const satisfies readonly (keyof Shop)[];

function isSameWork(a: DeskSource, b: DeskSource): boolean {
  const isSameRequest =
    a.request.fromMin === b.request.fromMin &&
    a.request.days === b.request.days &&
    a.request.seed === b.request.seed;
  return isSameRequest && a.plan === b.plan && WORK.every((key) => a.shop[key] === b.shop[key]);
}
