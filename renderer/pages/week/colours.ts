/** Colours of the picture, resolved for the theme that holds now. */
export interface WeekColours {
  readonly surface: string;
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly edge: string;
  readonly accent: string;
  readonly alarm: string;
  readonly heed: string;
  readonly staffed: string;
  readonly unstaffed: string;
  readonly barPrint: string;
  readonly barWait: string;
  readonly barEdge: string;
}

const TOKENS: Readonly<Record<keyof WeekColours, string>> = {
  surface: "--surface",
  ink: "--ink",
  quiet: "--quiet",
  rule: "--rule",
  edge: "--edge",
  accent: "--accent",
  alarm: "--alarm",
  heed: "--heed",
  staffed: "--staffed",
  unstaffed: "--unstaffed",
  barPrint: "--bar-print",
  barWait: "--bar-wait",
  barEdge: "--bar-edge",
};

/** Reads the colours by way of an element, since a canvas knows neither variables nor light-dark(). */
export function readColours(probe: HTMLElement): WeekColours {
  const read = (token: string): string => {
    probe.style.color = `var(${token})`;
    return getComputedStyle(probe).color;
  };
  const colours = Object.fromEntries(Object.entries(TOKENS).map(([name, token]) => [name, read(token)]));
  probe.style.color = "";
  return colours as unknown as WeekColours;
}
