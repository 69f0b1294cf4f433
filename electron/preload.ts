import { contextBridge, ipcRenderer } from "electron";

/*
 * The window's door: one function, plain data through it, no channel of the page's choosing. Names are written out, because a
 * sandboxed preload script may load nothing but Electron; a test holds them to the contract.
 */
contextBridge.exposeInMainWorld("hopperSpool", {
  call: (name: unknown, input: unknown): Promise<unknown> => ipcRenderer.invoke("host", String(name), input),
});
