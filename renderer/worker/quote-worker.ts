import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { warmUp } from "../../core/quote/first-answer.ts";
import { openQuoteDesk, type QuoteDesk } from "../../core/quote/quote-desk.ts";
import { answerQuote } from "../../core/quote/quote-job.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import { usableShop } from "../../core/shop/usable-shop.ts";
import type { QuoteMessage, QuoteNews } from "./quote-messages.ts";

/*
 * Answers quotes off the window's thread. The desk stays warm until the shop or its plan changes; a question that comes while
 * another is answered takes its place, at once where memory is shared and at the next step elsewhere.
 */

type DeskMessage = Extract<QuoteMessage, { kind: "desk" }>;
type AskMessage = Extract<QuoteMessage, { kind: "ask" }>;

let nextDesk: DeskMessage | null = null;
let nextAsk: AskMessage | null = null;
let open: { readonly desk: QuoteDesk; readonly message: DeskMessage } | null = null;
let isBusy = false;

self.addEventListener("message", ({ data }: MessageEvent<QuoteMessage>) => {
  if (data.kind === "desk") nextDesk = data;
  else nextAsk = data;
  void work();
});

const tell = (news: QuoteNews): void => self.postMessage(news);
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** Does the newest of what was told until nothing new is there. */
async function work(): Promise<void> {
  if (isBusy) return;
  isBusy = true;
  try {
    while (nextDesk || nextAsk) {
      await pause();
      if (nextDesk) await openDesk(taken(nextDesk));
      else if (nextAsk) await answer(nextAsk);
    }
  } catch (fault) {
    open = null;
    tell({ kind: "fault", sentence: `This is a fault of the program: ${String(fault)}` });
  } finally {
    isBusy = false;
  }
}

function taken(message: DeskMessage): DeskMessage {
  nextDesk = null;
  open = null;
  return message;
}

async function openDesk(message: DeskMessage): Promise<void> {
  const { desk, shop, plan, request } = message;
  const findings = checkShop(shop);
  const usable = usableShop(shop, findings);
  if (!usable.shop) {
    const first = findings.find(({ severity }) => severity === "error");
    return tell({ kind: "refused", desk, sentence: first?.sentence ?? "The shop cannot be planned." });
  }
  const engines = { glpk: loadGlpk, highs: loadHighs };
  const made = await openQuoteDesk(usable.shop, plan, request, { now: () => performance.now(), engines });
  warmUp(made);
  open = { desk: made, message };
  tell({ kind: "ready", desk, setAside: usable.setAside.length });
}

async function answer(message: AskMessage): Promise<void> {
  nextAsk = null;
  const { run, asked } = message;
  if (!open || open.message.desk !== message.desk) return;
  const { newest } = open.message;
  const cell = newest ? new Int32Array(newest) : null;
  const stopped = (): boolean =>
    nextDesk !== null || nextAsk !== null || (cell !== null && Atomics.load(cell, 0) !== run);
  await answerQuote(open.desk, asked, {
    onAnswer: (better) => tell({ kind: "answer", run, answer: better }),
    stopped,
    pause,
  });
}
