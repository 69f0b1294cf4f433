import { fileURLToPath } from "node:url";
import { makeHost } from "../../electron/host.ts";
import { startLoopback } from "../../electron/loopback.ts";

/* Started by other-program.ts: a host on the data folder and file named, served to browsers; says its address. */

const [data = "", launchFile = "", screen = ""] = process.argv.slice(2);

const host = makeHost({
  data,
  assets: fileURLToPath(new URL("../../assets", import.meta.url)),
  info: { door: "browser", reason: "a test", version: "0.0.0", platform: "test" },
  launchFile,
  dialogs: null,
  makePdf: null,
  now: () => Date.now(),
});
const door = await startLoopback(host.methods, screen);
console.log(door.url);
