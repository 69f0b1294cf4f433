import type { Answer } from "../electron/contract/answer.ts";
import { openFrame, packFrame } from "../electron/contract/byte-frame.ts";
import {
  BRIDGE,
  BYTES_PATH,
  CALL_PATH,
  type Host,
  type Input,
  type MethodName,
  METHODS,
  type Output,
  TOKEN_HEADER,
  TOKEN_KEY,
} from "../electron/contract.ts";

/**
 * The one door to the outside: the preload script's bridge in the desktop window, the loopback server in a browser. Nothing
 * else of the screen knows which. A call never throws: where the other side is not there any more, that is a trouble too.
 */
export const host: Host = {
  call: async (name, input) => {
    try {
      return (await (bridge()?.call(name, input) ?? callLoopback(name, input))) as Answer<
        Output<typeof name>
      >;
    } catch {
      return NOT_THERE;
    }
  },
};

interface Bridge {
  call(name: string, input: unknown): Promise<unknown>;
}

const NOT_THERE: Answer<never> = {
  ok: false,
  trouble: {
    code: "gone",
    sentence:
      "The program behind this page does not answer: it was ended or the page is old. Start it again; what was edited up to then is in its journal.",
  },
};

function bridge(): Bridge | undefined {
  return (window as unknown as Record<string, Bridge | undefined>)[BRIDGE];
}

async function callLoopback<Name extends MethodName>(name: Name, input: Input<Name>): Promise<unknown> {
  const carries = (METHODS[name] as { bytes?: "in" | "out" }).bytes;
  if (carries === undefined) {
    const response = await post(CALL_PATH + name, "application/json", JSON.stringify(input));
    return response.json();
  }
  const { bytes, ...message } = input as { bytes?: Uint8Array };
  const response = await post(
    BYTES_PATH + name,
    "application/octet-stream",
    packFrame({ message, bytes: bytes ?? null }),
  );
  return answerOf(new Uint8Array(await response.arrayBuffer()));
}

/** The bytes of a frame go back to where the contract has them. */
function answerOf(body: Uint8Array): unknown {
  const frame = openFrame(body);
  if (!frame) throw new Error("the answer is no frame");
  const answer = frame.message as { ok: boolean; value?: object };
  return frame.bytes ? { ...answer, value: { ...answer.value, bytes: frame.bytes } } : answer;
}

function post(path: string, type: string, body: BodyInit): Promise<Response> {
  return fetch(`.${path}`, {
    method: "POST",
    headers: { "content-type": type, [TOKEN_HEADER]: token() },
    body,
  });
}

/** The token comes in the address after "#"; it is taken off at once, so that it is in no history and no picture. */
function token(): string {
  const given = new URLSearchParams(location.hash.slice(1)).get(TOKEN_KEY);
  if (given !== null) {
    sessionStorage.setItem(TOKEN_KEY, given);
    history.replaceState(null, "", location.pathname);
  }
  return sessionStorage.getItem(TOKEN_KEY) ?? "";
}
