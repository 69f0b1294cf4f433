import { type Accessor, createSignal } from "solid-js";

/** What a person is looking at, kept from page to page: the part of the order chosen on one page is shown on the next. */
export interface Chosen {
  readonly orderId: string | null;
  readonly partId: string | null;
  readonly machineId: string | null;
  readonly calendarId: string | null;
  readonly feedstockId: string | null;
  readonly buildId: string | null;
}

export interface Selection {
  readonly chosen: Accessor<Chosen>;
  /** chooses some and leaves the others: choose({ partId: "clip" }) */
  readonly choose: (part: Partial<Chosen>) => void;
}

const NOTHING: Chosen = {
  orderId: null,
  partId: null,
  machineId: null,
  calendarId: null,
  feedstockId: null,
  buildId: null,
};

export function createSelection(): Selection {
  const [chosen, setChosen] = createSignal(NOTHING);
  return { chosen, choose: (part) => void setChosen((before) => ({ ...before, ...part })) };
}
