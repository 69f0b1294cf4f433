import type { Session, WebContents } from "electron";
import { SCREEN_ORIGIN } from "./screen-scheme.ts";

/** Copying cells to the clipboard is the one thing of this kind that the screen does. */
const ALLOWED = new Set(["clipboard-sanitized-write"]);
const OWN_SCHEMES = ["app:", "blob:", "data:", "devtools:"];

/** The page stays where it is: no other address, no new window, no embedded one. */
export function lockContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  contents.on("will-navigate", stay);
  contents.on("will-redirect", stay);
  contents.on("will-attach-webview", (event) => event.preventDefault());
}

function stay(event: { readonly preventDefault: () => void }, url: string): void {
  if (!isOwn(url)) event.preventDefault();
}

/** No camera, no place, no device, no network. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer) => answer(ALLOWED.has(permission)));
  session.setPermissionCheckHandler((_contents, permission) => ALLOWED.has(permission));
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, answer) => {
    answer({ cancel: !OWN_SCHEMES.some((scheme) => url.startsWith(scheme)) });
  });
}

/** True for the page's own address. Example: "app://screen.example/" is none. */
export function isOwn(url: string): boolean {
  return url === SCREEN_ORIGIN || url.startsWith(`${SCREEN_ORIGIN}/`);
}
