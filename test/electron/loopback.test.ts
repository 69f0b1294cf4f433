import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { request as rawRequest } from "node:http";
import { connect } from "node:net";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { openFrame, packFrame } from "../../electron/contract/byte-frame.ts";
import { type Loopback, startLoopback } from "../../electron/loopback.ts";
import { aDeskWithShop, type Desk } from "./a-desk.ts";

interface Door {
  readonly desk: Desk;
  readonly loopback: Loopback;
  readonly token: string;
  readonly screen: string;
}

async function aDoor(): Promise<Door> {
  const desk = aDeskWithShop();
  const screen = join(desk.folder, "screen");
  mkdirSync(screen);
  writeFileSync(join(screen, "index.html"), "<title>screen</title>");
  writeFileSync(join(desk.folder, "secret.html"), "secret");
  const loopback = await startLoopback(desk.host.methods, screen);
  onTestFinished(async () => {
    await desk.host.end();
    await loopback.end();
  });
  const token = new URLSearchParams(new URL(loopback.url).hash.slice(1)).get("token") ?? "";
  return { desk, loopback, token, screen };
}

interface Asked {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Uint8Array;
}

interface Given {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: Buffer;
}

/** A call as the page makes it, but for what the test changes. */
function ask({ loopback, token }: Door, asked: Asked = {}): Promise<Given> {
  const { method = "POST", path = "/call/appInfo", headers = {}, body = "{}" } = asked;
  const own = {
    host: `127.0.0.1:${loopback.port}`,
    origin: `http://127.0.0.1:${loopback.port}`,
    "content-type": "application/json",
    "x-launch-token": token,
  };
  return new Promise((resolve, reject) => {
    const options = { host: "127.0.0.1", port: loopback.port, method, path, headers: { ...own, ...headers } };
    const sent = rawRequest(options, (response) => {
      const chunks: Buffer[] = [];
      response.on("data", (chunk: Buffer) => chunks.push(chunk));
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(chunks),
        }),
      );
    });
    sent.once("error", reject);
    sent.end(method === "POST" ? body : undefined);
  });
}

test("the page's own call is answered", async () => {
  const { status, body } = await ask(await aDoor());
  expect(status).toBe(200);
  expect(JSON.parse(body.toString())).toMatchObject({ ok: true, value: { door: "browser" } });
});

test("it listens on 127.0.0.1 alone, with 32 bytes of token after the # of its address", async () => {
  const { loopback, token } = await aDoor();
  expect(new URL(loopback.url).hostname).toBe("127.0.0.1");
  expect(Buffer.from(token, "base64url")).toHaveLength(32);
});

test("every launch has a token of its own", async () => {
  expect((await aDoor()).token).not.toBe((await aDoor()).token);
});

test("a wrong token of the right length is refused", async () => {
  const door = await aDoor();
  const wrong = door.token.startsWith("A") ? `B${door.token.slice(1)}` : `A${door.token.slice(1)}`;
  expect((await ask(door, { headers: { "x-launch-token": wrong } })).status).toBe(403);
});

test("a missing token is refused", async () => {
  expect((await ask(await aDoor(), { headers: { "x-launch-token": "" } })).status).toBe(403);
});

test("a token of another length is refused", async () => {
  const door = await aDoor();
  expect((await ask(door, { headers: { "x-launch-token": `${door.token}x` } })).status).toBe(403);
});

test("a foreign Host is refused with 421, pages and calls alike", async () => {
  const door = await aDoor();
  const headers = { host: `rebound.example:${door.loopback.port}` };
  expect((await ask(door, { headers })).status).toBe(421);
  expect((await ask(door, { method: "GET", path: "/", headers })).status).toBe(421);
});

test("localhost is not the Host either", async () => {
  const door = await aDoor();
  expect((await ask(door, { headers: { host: `localhost:${door.loopback.port}` } })).status).toBe(421);
});

test("another port in the Host is refused", async () => {
  expect((await ask(await aDoor(), { headers: { host: "127.0.0.1:1" } })).status).toBe(421);
});

test("a foreign Origin is refused, even with the token", async () => {
  expect((await ask(await aDoor(), { headers: { origin: "https://page.example" } })).status).toBe(403);
});

test("the Origin null of a sandboxed frame or a file is refused", async () => {
  expect((await ask(await aDoor(), { headers: { origin: "null" } })).status).toBe(403);
});

test.each(["PUT", "DELETE", "PATCH", "OPTIONS"])("the method %s is refused with 405", async (method) => {
  const { status, headers } = await ask(await aDoor(), { method });
  expect(status).toBe(405);
  expect(headers["allow"]).toBe("GET, HEAD, POST");
});

test("a call by GET is no call", async () => {
  expect((await ask(await aDoor(), { method: "GET" })).status).toBe(404);
});

test.each([
  "text/plain",
  "application/x-www-form-urlencoded",
  "multipart/form-data",
  "application/json; charset=utf-8",
])("a body of type %s is refused with 415", async (type) => {
  expect((await ask(await aDoor(), { headers: { "content-type": type } })).status).toBe(415);
});

test("a body that is not JSON is refused with 400", async () => {
  expect((await ask(await aDoor(), { body: "{" })).status).toBe(400);
});

test("a body announced as larger than 64 MB is refused with 413 before it is read", async () => {
  const headers = { "content-length": String(64 * 2 ** 20 + 1) };
  expect(await statusOfHead(headers)).toBe(413);
});

/** Sends only the head, so that the answer cannot have waited for the body. */
async function statusOfHead(headers: Record<string, string>): Promise<number> {
  const { loopback, token } = await aDoor();
  const host = `127.0.0.1:${loopback.port}`;
  const all = {
    host,
    origin: `http://${host}`,
    "content-type": "application/json",
    "x-launch-token": token,
    ...headers,
  };
  const head = Object.entries(all).map(([name, value]) => `${name}: ${value}\r\n`);
  return new Promise((resolve, reject) => {
    const socket = connect(loopback.port, "127.0.0.1", () => {
      socket.write(`POST /call/appInfo HTTP/1.1\r\n${head.join("")}\r\n`);
    });
    socket.once("error", reject);
    socket.once("data", (chunk: Buffer) => {
      resolve(Number(chunk.toString().split(" ")[1]));
      socket.destroy();
    });
  });
}

test("a body that turns out larger than 64 MB is refused with 413", async () => {
  const door = await aDoor();
  const body = Buffer.alloc(64 * 2 ** 20 + 1, 0x20);
  const given = await ask(door, { body, headers: { "transfer-encoding": "chunked" } }).catch(
    (error: NodeJS.ErrnoException) => error.code,
  );
  // The server hangs up on a sender that goes on; which of the two is seen first is the network's choice.
  const seen = typeof given === "object" ? given.status : given;
  expect([413, "EPIPE", "ECONNRESET"]).toContain(seen);
});

test.each([
  "/../secret.html",
  "/%2e%2e/secret.html",
  "/..%2fsecret.html",
  "/%2e%2e%2fsecret.html",
  "/..%5csecret.html",
  "/x/../../secret.html",
  "/%00index.html",
  "/%zz",
  "//etc/passwd",
])("the path %s leads nowhere", async (path) => {
  const { status, body } = await ask(await aDoor(), { method: "GET", path });
  expect(status).toBe(404);
  expect(body.toString()).not.toContain("secret");
});

test("a link out of the screen's folder leads nowhere", async () => {
  const door = await aDoor();
  symlinkSync(join(door.desk.folder, "secret.html"), join(door.screen, "link.html"));
  expect((await ask(door, { method: "GET", path: "/link.html" })).status).toBe(404);
});

test("a file of a kind that the screen is not made of is not served", async () => {
  const door = await aDoor();
  writeFileSync(join(door.screen, "notes.txt"), "x");
  expect((await ask(door, { method: "GET", path: "/notes.txt" })).status).toBe(404);
});

test("a call that the contract does not have is refused as data", async () => {
  const { status, body } = await ask(await aDoor(), { path: "/call/constructor" });
  expect(status).toBe(200);
  expect(JSON.parse(body.toString())).toMatchObject({ ok: false, trouble: { code: "refused" } });
});

test("input that does not fit the contract is refused as data", async () => {
  const { body } = await ask(await aDoor(), { path: "/call/openRecent", body: '{"path":"/etc/passwd"}' });
  expect(JSON.parse(body.toString())).toMatchObject({ ok: false, trouble: { code: "refused" } });
});

test("every answer carries the policy and the headers that isolate the page", async () => {
  const door = await aDoor();
  for (const asked of [{ method: "GET", path: "/" }, {}, { method: "GET", path: "/none" }]) {
    const { headers } = await ask(door, asked);
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["cross-origin-opener-policy"]).toBe("same-origin");
    expect(headers["cross-origin-embedder-policy"]).toBe("require-corp");
    expect(headers["x-content-type-options"]).toBe("nosniff");
  }
});

test("a mesh goes in and out as bytes, unchanged", async () => {
  const door = await aDoor();
  const { handle } = await door.desk.open();
  const bytes = Uint8Array.from({ length: 1000 }, (_, index) => index % 256);
  const headers = { "content-type": "application/octet-stream" };
  const message = { handle, fileName: "body.stl" };
  const stored = await ask(door, { path: "/bytes/storeMesh", headers, body: packFrame({ message, bytes }) });
  const answer = openFrame(stored.body)?.message as { value: { file: string; sha256: string } } | undefined;
  expect(answer).toMatchObject({ ok: true });
  await addMeshPart(door, handle, answer?.value ?? { file: "", sha256: "" });
  const read = await ask(door, {
    path: "/bytes/readMesh",
    headers,
    body: packFrame({ message: { handle, partId: "P" }, bytes: null }),
  });
  expect(openFrame(read.body)?.message).toMatchObject({ ok: true, value: { sameAsMeasured: true } });
  expect(openFrame(read.body)?.bytes).toEqual(bytes);
});

async function addMeshPart(
  { desk }: Door,
  handle: string,
  { file, sha256 }: { file: string; sha256: string },
): Promise<void> {
  const measures = { volumeMm3: 1, areaMm2: 6, boxMm: { x: 1, y: 1, z: 1 } };
  const entry = {
    id: "P",
    name: "Part",
    geometry: { kind: "mesh", file, sha256, unit: "millimeter", measures },
    families: [],
    needs: {},
    smallestFeatureMm: 1,
    maxLayerHeightMm: 1,
    shells: 1,
    solidLayers: 1,
    infillPct: 20,
    supportAllowed: true,
    toolPathsReady: [],
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  } as const;
  const changes = [
    {
      kind: "put" as const,
      list: "parts" as const,
      entry: { ...entry, families: [], toolPathsReady: [] },
      at: null,
    },
  ];
  await desk.call("commit", { handle, client: "test", baseVersion: 0, changes });
}

test("a body at the bytes' door that is no frame is refused with 400", async () => {
  const headers = { "content-type": "application/octet-stream" };
  expect((await ask(await aDoor(), { path: "/bytes/readMesh", headers, body: "xx" })).status).toBe(400);
});
