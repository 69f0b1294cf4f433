import { listenForInterrupt } from "./interrupt.ts";

// Everything else is loaded only now, so that Ctrl+C is heard from the first moment on.
listenForInterrupt();
const { runCommand } = await import("./run-command.ts");
process.exitCode = await runCommand(process.argv.slice(2));
