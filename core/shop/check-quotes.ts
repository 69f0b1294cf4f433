import { instantFindings } from "./check-instant.ts";
import { about, type EntryFindings, type Finding } from "./finding.ts";
import type { Quote, QuoteLine } from "./quote.ts";
import { minuteOrNull, type ShopIndex } from "./shop-index.ts";

/**
 * Findings about quotes: references, dates, steps of quantity. All are warnings where plans can go on without the quote: a
 * quote is no order until it is accepted. Example: a quote for a part that is gone: "name one that exists or add it".
 */
export function checkQuotes(index: ShopIndex): Finding[] {
  return index.shop.quotes.flatMap((quote) => {
    const say = about("quotes", quote.id);
    return [
      ...instantFindings(say, "askedAt", quote.askedAt, index.timeZone),
      ...instantFindings(say, "validUntil", quote.validUntil, index.timeZone),
      ...validityFindings(say, quote, index.timeZone),
      ...twiceFindings(say, quote),
      ...quote.lines.flatMap((line, at) => lineFindings(say, line, at, index)),
    ];
  });
}

function validityFindings(say: EntryFindings, { askedAt, validUntil }: Quote, timeZone: string): Finding[] {
  const askedMin = minuteOrNull(askedAt, timeZone);
  const untilMin = minuteOrNull(validUntil, timeZone);
  if (askedMin === null || untilMin === null || untilMin >= askedMin) return [];
  const what = `it holds until ${validUntil}, before it was asked for at ${askedAt}; correct one`;
  return [say.warning("validUntil", "valid-before-asked", what)];
}

function twiceFindings(say: EntryFindings, { lines }: Quote): Finding[] {
  const twice = lines.filter(({ id }, at) => lines.findIndex((line) => line.id === id) < at);
  return twice.map(({ id }) =>
    say.error("lines", "duplicate-line", `two of its lines are called ${id}; give each an id of its own`),
  );
}

function lineFindings(say: EntryFindings, line: QuoteLine, at: number, index: ShopIndex): Finding[] {
  const place = `lines/${at}`;
  const missing = (field: string, word: string, id: string): Finding =>
    say.warning(
      `${place}/${field}`,
      `unknown-${word}`,
      `line ${line.id} names ${word} ${id}, which does not exist; name one that exists or add it`,
    );
  const { partId, machineId, feedstockId, wantedAt, promisedAt } = line;
  return [
    ...(index.parts.has(partId) ? [] : [missing("partId", "part", partId)]),
    ...(machineId === undefined || index.machines.has(machineId)
      ? []
      : [missing("machineId", "machine", machineId)]),
    ...(feedstockId === undefined || index.feedstocks.has(feedstockId)
      ? []
      : [missing("feedstockId", "feedstock", feedstockId)]),
    ...(wantedAt === null ? [] : instantFindings(say, `${place}/wantedAt`, wantedAt, index.timeZone)),
    ...(promisedAt === null ? [] : instantFindings(say, `${place}/promisedAt`, promisedAt, index.timeZone)),
    ...breakFindings(say, line, place),
  ];
}

function breakFindings(say: EntryFindings, { id, breaks }: QuoteLine, place: string): Finding[] {
  const counts = new Set(breaks.map(({ quantity }) => quantity));
  if (counts.size === breaks.length) return [];
  const what = `line ${id} has two prices for one quantity; keep one`;
  return [say.warning(`${place}/breaks`, "break-twice", what)];
}
