/** What the choice of a door depends on. */
export interface Place {
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
  /** true for the superuser, as whom Electron and Chromium do not start in their sandbox */
  readonly isRoot: boolean;
  /** Electron's program, or null where only its package is here */
  readonly electron: string | null;
  readonly wantsAddressOnly: boolean;
  readonly wantsBrowser: boolean;
}

export interface Door {
  readonly kind: "window" | "browser" | "address";
  readonly reason: string;
}

/** Which door to take, and why in a sentence. */
export function chooseDoor({ platform, env, isRoot, electron, wantsAddressOnly, wantsBrowser }: Place): Door {
  const hasDisplay = platform !== "linux" || Boolean(env["DISPLAY"]) || Boolean(env["WAYLAND_DISPLAY"]);
  if (wantsAddressOnly) return { kind: "address", reason: "--no-open was given: open the address yourself." };
  if (!hasDisplay)
    return {
      kind: "address",
      reason: "There is no display here: open the address in a browser of this machine.",
    };
  if (wantsBrowser) return { kind: "browser", reason: "--browser was given." };
  if (electron === null) return { kind: "browser", reason: NO_ELECTRON };
  if (isRoot && platform === "linux")
    return {
      kind: "browser",
      reason: "Electron does not start its sandbox for the superuser: the browser is used.",
    };
  return { kind: "window", reason: "The Electron runtime is on this machine." };
}

const NO_ELECTRON =
  "The Electron runtime is not on this machine: the browser is used. `npx install-electron` fetches it where there is a network.";
