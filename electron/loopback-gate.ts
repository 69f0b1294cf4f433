import { timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { TOKEN_HEADER } from "./contract.ts";

/** Who may come in: exactly this host, for calls exactly this origin, with the token of this launch. */
export interface Gate {
  readonly host: string;
  readonly origin: string;
  readonly token: string;
}

export interface Refusal {
  readonly status: number;
  readonly sentence: string;
}

/**
 * Why a request is not answered, or null. A foreign Host means that a name of somebody else's was made to point here (DNS
 * rebinding): 421. Pages need no token, since there is nothing in them; every call does.
 */
export function refusalOf({ method = "", headers }: IncomingMessage, gate: Gate): Refusal | null {
  if (headers.host !== gate.host) return { status: 421, sentence: "This server is not known by that name." };
  if (method === "GET" || method === "HEAD") return null;
  if (method !== "POST") return { status: 405, sentence: `${method} is not answered here.` };
  if (headers.origin !== gate.origin)
    return { status: 403, sentence: "Only the program's own page may call." };
  if (!isSame(headers[TOKEN_HEADER], gate.token)) {
    return { status: 403, sentence: "The page is of another launch: use the address that was printed last." };
  }
  return null;
}

/** Compares in the same time whatever is given, so that the token cannot be guessed letter by letter. */
function isSame(given: string | string[] | undefined, token: string): boolean {
  const ours = Buffer.from(token);
  const theirs = Buffer.from(typeof given === "string" ? given : "");
  return theirs.length === ours.length && timingSafeEqual(theirs, ours);
}
