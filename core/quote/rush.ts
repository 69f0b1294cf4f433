import { MIN_PER_DAY } from "../units/conversions.ts";
import { answerLines, type Answered } from "./answer-lines.ts";
import { refinedAnswer } from "./first-answer.ts";
import { lineEnds } from "./line-ends.ts";
import { deskWith, overtimesOf } from "./overtime.ts";
import { type LinePrice, priceLine, priceRule } from "./price.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/** What is tried to hold a date. */
export type RushKind = "push-others" | "any-machine" | "any-feedstock" | "overtime" | "split" | "buy-out";

/** One thing that would hold the wanted date, and its price. */
export interface RushOption {
  readonly kind: RushKind;
  /** what to do, as a sentence */
  readonly sentence: string;
  /** copies that are there by the wanted date */
  readonly copiesInTime: number;
  /** last of these, epoch minute */
  readonly finishMin: number;
  /** last of the others, epoch minute; null: there are none */
  readonly restMin: number | null;
  /** cost over the standing plan's, people's extra hours in it, without the line's own lateness */
  readonly extraCost: number;
  /** price of all copies made from that cost, or from the line's own where that is more */
  readonly price: LinePrice | null;
  /** what it is dearer than the line with no date */
  readonly dearerBy: number | null;
  /** other orders that are finished later because of it */
  readonly laterOrders: number;
}

/**
 * What would hold the wanted date of a line, those with all copies in time first and the cheapest of them, each tried by putting it into the standing plan: others pushed
 * back, a pin taken off, any feedstock that meets the needs, overtime, a part of the copies by then and the rest later, or the
 * rest bought. Empty where the line wants no date or nothing holds it. `stopped` ends it with what was found so far.
 * Example: 40 copies by Thursday: 24 by then and 16 on Saturday for 310, a Saturday shift for 395.
 */
export function rushOptions(
  desk: QuoteDesk,
  line: QuoteLineRequest,
  stopped: () => boolean = () => false,
): RushOption[] {
  if (line.wantedMin === null || line.wantedMin <= desk.request.fromMin) return [];
  const rush = new Rush(desk, line, line.wantedMin);
  const tries = [
    () => rush.pushOthers(),
    () => rush.unpin("machineId", "any-machine", "Make it on any machine that can"),
    () => rush.unpin("feedstockId", "any-feedstock", "Make it of any feedstock that the part accepts"),
    () => rush.anyFamily(),
    () => rush.split(),
    () => rush.overtime(stopped),
  ];
  for (const attempt of tries) if (!stopped()) attempt();
  return rush.found.toSorted((a, b) => b.copiesInTime - a.copiesInTime || a.extraCost - b.extraCost);
}

/** Something that was tried and holds. */
interface Held {
  readonly kind: RushKind;
  readonly sentence: string;
  readonly answered: Answered;
  readonly desk: QuoteDesk;
  /** beside what the plan costs more */
  readonly besides?: number;
  readonly copiesInTime?: number;
  /** left out: when the first line of the answer is */
  readonly finishMin?: number;
  readonly restMin?: number | null;
}

class Rush {
  readonly found: RushOption[] = [];
  private readonly desk: QuoteDesk;
  private readonly line: QuoteLineRequest;
  private readonly wantedMin: number;
  private readonly free;

  constructor(desk: QuoteDesk, line: QuoteLineRequest, wantedMin: number) {
    this.desk = desk;
    this.line = { ...line, allowLate: false };
    this.wantedMin = wantedMin;
    [this.free] = refinedAnswer(desk, [{ ...line, wantedMin: null }]).lines;
  }

  pushOthers(): void {
    this.tryOne("push-others", "Push other orders back", this.desk, this.line);
  }

  unpin(pin: "machineId" | "feedstockId", kind: RushKind, sentence: string): void {
    if (this.line[pin] === undefined) return;
    const { [pin]: _pin, ...free } = this.line;
    this.tryOne(kind, sentence, this.desk, free);
  }

  /** Polymer families that the customer did not name, as far as they meet the part's needs. */
  anyFamily(): void {
    const { shop } = this.desk;
    const part = shop.parts.find(({ id }) => id === this.line.partId);
    if (!part || part.families.length === 0) return;
    const parts = shop.parts.map((one) => (one === part ? { ...part, families: [] } : one));
    const sentence = `Make it of another polymer family that meets its needs, if the customer accepts that (asked for: ${part.families.join(", ")})`;
    this.tryOne("any-feedstock", sentence, { ...this.desk, shop: { ...shop, parts } }, this.line);
  }

  /** The most copies that are there in time, and the others as cheap as can be; bought where that can be. */
  split(): void {
    const { line, desk } = this;
    const copies = this.mostInTime();
    if (copies < 1 || copies >= line.quantity) return;
    const first = { ...line, quantity: copies };
    const rest = {
      ...line,
      id: `${line.id} rest`,
      quantity: line.quantity - copies,
      wantedMin: null,
      allowLate: true,
    };
    const answered = answerLines(desk, [first, rest], "first");
    if (answered.isHeld) this.takeSplit(answered, copies);
    this.buyRest(first, line.quantity - copies);
  }

  /** Two lots may both be there by then although one could not be: the cheapest place of the others can be an early one. */
  private takeSplit(answered: Answered, copies: number): void {
    const { desk, wantedMin, line } = this;
    const [firstMin, restMin] = answered.lines.map(({ finishMin }) => finishMin);
    if (typeof firstMin !== "number" || typeof restMin !== "number") return;
    const made = { kind: "split" as const, answered, desk };
    const { quantity } = line;
    if (restMin > wantedMin) {
      const sentence = `Deliver ${copies} of ${quantity} copies by then and the others later`;
      this.take({ ...made, sentence, copiesInTime: copies, restMin });
    } else {
      const sentence = `Make ${copies} and ${quantity - copies} copies as two lots: all ${quantity} are ready by then`;
      this.take({ ...made, sentence, finishMin: Math.max(firstMin, restMin) });
    }
  }

  private buyRest(first: QuoteLineRequest, rest: number): void {
    const { desk, line } = this;
    const buyOut = desk.shop.parts.find(({ id }) => id === line.partId)?.buyOut;
    if (!buyOut) return;
    const arriveMin = desk.request.fromMin + Math.ceil(buyOut.leadTimeDays * MIN_PER_DAY);
    const answered = answerLines(desk, [first], "first");
    if (!answered.isHeld || arriveMin > this.wantedMin) return;
    const sentence = `Make ${first.quantity} of ${line.quantity} copies and buy the other ${rest}`;
    this.take({
      kind: "buy-out",
      sentence,
      answered,
      desk,
      besides: rest * buyOut.pricePerPiece,
      copiesInTime: line.quantity,
    });
  }

  private mostInTime(): number {
    let fits = 0;
    let tooMany = this.line.quantity;
    while (tooMany - fits > 1) {
      const middle = Math.floor((fits + tooMany) / 2);
      if (answerLines(this.desk, [{ ...this.line, quantity: middle }], "first").isHeld) fits = middle;
      else tooMany = middle;
    }
    return fits;
  }

  overtime(stopped: () => boolean): void {
    const { desk, line, wantedMin } = this;
    for (const calendar of desk.shop.calendars) {
      for (const overtime of overtimesOf(desk.shop, calendar, desk.request.fromMin)) {
        if (stopped()) return;
        const hours = overtime.hoursUntil(wantedMin);
        if (hours === 0) continue;
        const besides = hours * desk.shop.costing.labourPerH * overtime.shift.operators;
        const sentence = `Work ${overtime.words}: ${hours} hours until then`;
        this.tryOne("overtime", sentence, deskWith(desk, overtime), line, besides);
      }
    }
  }

  private tryOne(
    kind: RushKind,
    sentence: string,
    desk: QuoteDesk,
    line: QuoteLineRequest,
    besides = 0,
  ): void {
    const answered = answerLines(desk, [line], "all");
    if (answered.isHeld) this.take({ kind, sentence, answered, desk, besides });
  }

  private take({ kind, sentence, answered, desk, besides = 0, ...part }: Held): void {
    const finishMin = part.finishMin ?? answered.lines[0]?.finishMin;
    if (finishMin === null || finishMin === undefined) return;
    const { line, free } = this;
    const extraCost = answered.extraCost + besides;
    const copiesCost = Math.max(extraCost, free?.ownCost ?? 0);
    const price = priceLine({ quantity: line.quantity, copiesCost, oneOffCost: 0 }, priceRule(desk.shop));
    this.found.push({
      kind,
      sentence: `${sentence}.`,
      copiesInTime: part.copiesInTime ?? line.quantity,
      finishMin,
      restMin: part.restMin ?? null,
      extraCost,
      price,
      dearerBy: price && free?.price ? price.total - free.price.total : null,
      laterOrders: laterOrders(desk, answered),
    });
  }
}

function laterOrders({ problem, standing }: QuoteDesk, answered: Answered): number {
  const before = lineEnds(problem, standing);
  const after = lineEnds(answered.problem, answered.schedule);
  return before.filter(({ finishedMin }, at) => (after[at]?.finishedMin ?? 0) > (finishedMin ?? Infinity))
    .length;
}
