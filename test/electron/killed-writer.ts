import { writeSync } from "node:fs";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { makeHost } from "../../electron/host.ts";

/* Started by killed.test.ts and ended by it with kill -9: edits and saves the shops named, and says what was acknowledged. */

const [data = "", ...paths] = process.argv.slice(2);

const hosts = paths.map((launchFile) =>
  makeHost({
    data,
    assets: "",
    info: { door: "browser", reason: "a test", version: "0", platform: "test" },
    launchFile,
    dialogs: null,
    makePdf: null,
    now: () => Date.now(),
  }),
);

await Promise.all(hosts.map(({ methods }, shop) => writeForEver(methods, shop)));

async function writeForEver({ openFirst, commit, save }: (typeof hosts)[number]["methods"], shop: number) {
  const { handle, shop: document } = (await openFirst({})) as Opened;
  const [order] = document.orders;
  if (!order) throw new Error("the shop has no order");
  for (let count = 1; ; count++) {
    const entry = { ...order, note: String(count) };
    const change = { kind: "put", list: "orders", entry, at: null } as const;
    await commit({ handle, client: "writer", baseVersion: count - 1, changes: [change] });
    writeSync(1, `${shop} ${count}\n`);
    // Saves run beside the edits that follow, each shop in a rhythm of its own.
    if (count % (2 + shop) === 0) void save({ handle, overwrite: false });
  }
}
