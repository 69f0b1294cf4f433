import type { Quote, QuoteLine } from "../../core/shop/quote.ts";

/** A line that is not priced yet; what a quote has of its own is given. */
function line(own: Pick<QuoteLine, "id" | "partId" | "quantity"> & Partial<QuoteLine>): QuoteLine {
  return {
    wantedAt: null,
    allowLate: true,
    pricePerPiece: null,
    oneOffPrice: 0,
    breaks: [],
    promisedAt: null,
    likelihoodPct: null,
    unitCost: null,
    ...own,
  };
}

/** Invented quotes to invented customers: one that was sent, one that was declined, one still to be priced. */
export const QUOTES: Quote[] = [
  {
    id: "Q-2026-0001",
    customer: "Fennimoor Switchgear (invented)",
    customerAddress: "4 Invented Wharf\n00000 Nowhere",
    askedAt: "2026-11-24T10:00:00+01:00",
    validUntil: "2026-12-24T10:00:00+01:00",
    state: "sent",
    reason: "",
    note: "",
    lines: [
      line({
        id: "Q-2026-0001-1",
        partId: "busbar-guard",
        quantity: 12,
        wantedAt: "2026-12-11T16:00:00+01:00",
        allowLate: false,
        pricePerPiece: 26.5,
        breaks: [{ quantity: 24, pricePerPiece: 25.9 }],
        promisedAt: "2026-12-10T16:00:00+01:00",
        likelihoodPct: 92,
        unitCost: 21.2,
      }),
    ],
  },
  {
    id: "Q-2026-0002",
    customer: "Osierfield Play (invented)",
    customerAddress: "",
    askedAt: "2026-11-20T09:00:00+01:00",
    validUntil: "2026-12-20T09:00:00+01:00",
    state: "declined",
    decidedAt: "2026-11-25T14:00:00+01:00",
    reason: "Had them made elsewhere, a week earlier",
    note: "",
    lines: [
      line({
        id: "Q-2026-0002-1",
        partId: "planter",
        quantity: 6,
        wantedAt: "2026-12-04T12:00:00+01:00",
        pricePerPiece: 148,
        promisedAt: "2026-12-11T12:00:00+01:00",
        likelihoodPct: 85,
        unitCost: 118.4,
      }),
    ],
  },
  {
    id: "Q-2026-0003",
    customer: "Wherrygate Pumps (invented)",
    customerAddress: "",
    askedAt: "2026-11-27T11:00:00+01:00",
    validUntil: "2026-12-27T11:00:00+01:00",
    state: "draft",
    reason: "",
    note: "",
    lines: [
      line({
        id: "Q-2026-0003-1",
        partId: "sensor-bracket",
        quantity: 40,
        wantedAt: "2026-12-14T12:00:00+01:00",
      }),
    ],
  },
];
