import type { Answer, Trouble } from "./contract/answer.ts";
import { type MethodName, METHODS, type MethodShape } from "./contract.ts";
import type { Methods } from "./host/methods.ts";
import { GoneError } from "./host/shop-desk.ts";
import { troubleOf } from "./store/file-trouble.ts";

const GONE = "The shop is not open here any more: open it again.";

/**
 * Answers one call from the screen. What came in and what goes out are both held to the contract; nothing throws.
 * Example: a method that is not in the contract gives a trouble with code "refused".
 */
export async function dispatch(methods: Methods, name: string, input: unknown): Promise<Answer<unknown>> {
  if (!isMethod(name)) return trouble("refused", `There is no call "${name}".`);
  const shape: MethodShape = METHODS[name];
  const given = shape.input.safeParse(input);
  if (!given.success)
    return trouble("refused", `${name}: ${given.error.issues[0]?.message ?? "does not fit"}.`);
  try {
    const act = methods[name] as (input: unknown) => Promise<unknown>;
    return { ok: true, value: shape.output.parse(await act(given.data)) };
  } catch (error) {
    return troubleOfError(name, error);
  }
}

export function isMethod(name: string): name is MethodName {
  return Object.hasOwn(METHODS, name);
}

function troubleOfError(name: string, error: unknown): Answer<never> {
  if (error instanceof GoneError) return trouble("gone", GONE);
  const isOfDisk = typeof (error as NodeJS.ErrnoException).syscall === "string";
  if (isOfDisk) return trouble("file", `That did not work: ${troubleOf(error).words}.`);
  console.error(`fault in ${name}:`, error);
  return trouble("fault", `This is a fault of the program (${name}): ${String(error)}`);
}

function trouble(code: Trouble["code"], sentence: string): Answer<never> {
  return { ok: false, trouble: { code, sentence } };
}
