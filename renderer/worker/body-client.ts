import type { BodyAnswer, BodyNews, BodyQuestion } from "./body-messages.ts";

/** Answers by the kind of question. */
type AnswerTo<Kind extends BodyQuestion["kind"]> = Extract<BodyAnswer, { kind: Kind }>;

let worker: Worker | null = null;
let runs = 0;

/**
 * Asks the worker of bodies and ways; questions are answered one after the other. Rejects with a sentence where the program
 * is at fault. Example: `await askBodies({ kind: "ways", shop, partId: "clip", wanted: 40 })`.
 */
export function askBodies<Question extends BodyQuestion>(
  question: Question,
): Promise<AnswerTo<Question["kind"]>> {
  worker ??= new Worker(new URL("./body-worker.ts", import.meta.url), { type: "module" });
  const asked = worker;
  const run = ++runs;
  return new Promise((resolve, reject) => {
    const over = new AbortController();
    const { signal } = over;
    const hear = ({ data }: MessageEvent<BodyNews>): void => {
      if (data.run !== run) return;
      over.abort();
      if ("fault" in data) reject(new Error(data.fault));
      else resolve(data.answer as AnswerTo<Question["kind"]>);
    };
    asked.addEventListener("message", hear, { signal });
    asked.addEventListener(
      "error",
      ({ message }) => {
        over.abort();
        worker = null;
        reject(new Error(`The worker that reads bodies failed: ${message}`));
      },
      { signal },
    );
    asked.postMessage({ run, question });
  });
}
