import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { Answer } from "./contract/answer.ts";
import { openFrame, packFrame } from "./contract/byte-frame.ts";
import { BYTES_PATH, CALL_PATH, METHODS, type MethodShape, TOKEN_KEY } from "./contract.ts";
import { dispatch, isMethod } from "./dispatch.ts";
import type { Methods } from "./host/methods.ts";
import { readBody } from "./loopback-body.ts";
import { type Gate, refusalOf } from "./loopback-gate.ts";
import { PAGE_HEADERS } from "./page-headers.ts";
import { screenFile } from "./screen-files.ts";

/** Largest bodies: a shop document as text, a mesh. */
const MOST_JSON_BYTES = 64 * 2 ** 20;
const MOST_FRAME_BYTES = 256 * 2 ** 20;

export interface Loopback {
  /** the whole address, with the token of this launch after "#" */
  readonly url: string;
  readonly port: number;
  readonly end: () => Promise<void>;
}

/** Serves the screen and the host to this machine's browser: 127.0.0.1 only, a free port, a token made for this launch. */
export async function startLoopback(methods: Methods, screenFolder: string): Promise<Loopback> {
  const token = randomBytes(32).toString("base64url");
  let gate: Gate = { host: "", origin: "", token };
  const server = createServer((request, response) => {
    void answer(request, response, { gate, methods, screenFolder }).catch(() => response.destroy());
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, "127.0.0.1", resolve);
  });
  const { port } = server.address() as AddressInfo;
  gate = { host: `127.0.0.1:${port}`, origin: `http://127.0.0.1:${port}`, token };
  const end = async (): Promise<void> => {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  };
  return { url: `${gate.origin}/#${TOKEN_KEY}=${token}`, port, end };
}

interface Served {
  readonly gate: Gate;
  readonly methods: Methods;
  readonly screenFolder: string;
}

async function answer(request: IncomingMessage, response: ServerResponse, served: Served): Promise<void> {
  const refusal = refusalOf(request, served.gate);
  if (refusal) return refuse(response, refusal.status, refusal.sentence);
  const path = (request.url ?? "/").split(/[?#]/)[0] ?? "/";
  if (request.method !== "POST") return sendFile(response, served.screenFolder, path);
  if (path.startsWith(CALL_PATH)) return call(request, response, served, path.slice(CALL_PATH.length));
  if (path.startsWith(BYTES_PATH)) return callBytes(request, response, served, path.slice(BYTES_PATH.length));
  return refuse(response, 404, "There is nothing here.");
}

async function sendFile(response: ServerResponse, folder: string, path: string): Promise<void> {
  const file = await screenFile(folder, path);
  if (!file) return refuse(response, 404, "There is no such file.");
  send(response, 200, file.type, file.bytes);
}

async function call(
  request: IncomingMessage,
  response: ServerResponse,
  { methods }: Served,
  name: string,
): Promise<void> {
  if (carriesBytes(name)) return refuse(response, 404, `${name} carries bytes: call it at ${BYTES_PATH}.`);
  const body = await bodyOf(request, response, "application/json", MOST_JSON_BYTES);
  if (!body) return;
  const input = parsed(body);
  if (input === undefined) return refuse(response, 400, "The body is not JSON.");
  const given = await dispatch(methods, name, input);
  send(response, 200, "application/json; charset=utf-8", JSON.stringify(given));
}

async function callBytes(
  request: IncomingMessage,
  response: ServerResponse,
  { methods }: Served,
  name: string,
): Promise<void> {
  if (!carriesBytes(name)) return refuse(response, 404, `${name} carries no bytes: call it at ${CALL_PATH}.`);
  const body = await bodyOf(request, response, "application/octet-stream", MOST_FRAME_BYTES);
  if (!body) return;
  const frame = openFrame(body);
  if (!frame) return refuse(response, 400, "The body is no frame of a message and bytes.");
  const input = frame.bytes ? { ...(frame.message as object), bytes: frame.bytes } : frame.message;
  const given = await dispatch(methods, name, input);
  send(response, 200, "application/octet-stream", frameOf(given));
}

/** The bytes of an answer go behind its message. */
function frameOf(given: Answer<unknown>): Uint8Array {
  if (!given.ok) return packFrame({ message: given, bytes: null });
  const { bytes, ...value } = given.value as { bytes?: Uint8Array };
  return packFrame({ message: { ok: true, value }, bytes: bytes ?? null });
}

function carriesBytes(name: string): boolean {
  return isMethod(name) && (METHODS[name] as MethodShape).bytes !== undefined;
}

/** The body, or null after refusing it. */
async function bodyOf(
  request: IncomingMessage,
  response: ServerResponse,
  type: string,
  mostBytes: number,
): Promise<Buffer | null> {
  if (request.headers["content-type"] !== type) {
    refuse(response, 415, `The body must be ${type}.`);
    return null;
  }
  const body = await readBody(request, mostBytes);
  if (!body) {
    response.setHeader("connection", "close");
    refuse(
      response,
      413,
      `The body is larger than ${mostBytes / 2 ** 20} MB: that is more than is taken here.`,
    );
  }
  return body;
}

function parsed(body: Buffer): unknown {
  try {
    return JSON.parse(body.toString("utf8"));
  } catch {
    return undefined;
  }
}

function refuse(response: ServerResponse, status: number, sentence: string): void {
  if (status === 405) response.setHeader("allow", "GET, HEAD, POST");
  send(response, status, "text/plain; charset=utf-8", sentence);
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, {
    ...PAGE_HEADERS,
    "content-type": type,
    "content-length": Buffer.byteLength(body),
  });
  response.end(body);
}
