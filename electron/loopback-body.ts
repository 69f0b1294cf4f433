import type { IncomingMessage } from "node:http";

/** Reads a body; null as soon as it is known to be larger than allowed, and no more of it is kept. */
export async function readBody(request: IncomingMessage, mostBytes: number): Promise<Buffer | null> {
  if (Number(request.headers["content-length"] ?? 0) > mostBytes) return null;
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
