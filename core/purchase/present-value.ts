/**
 * Net present value of cash flows one year apart, the first one today: the sum of CF_t / (1 + rate)^t. Rate as a share, above
 * -1. Brigham and Ehrhardt (textbook pair, from memory): -1000, 500, 400, 300, 100 at 10 % are worth 78.8198.
 */
export function netPresentValue(flows: readonly number[], rate: number): number {
  if (!(rate > -1)) throw new RangeError(`a rate of ${rate} makes no present value: it must be above -1`);
  let value = 0;
  for (let year = flows.length - 1; year >= 0; year--) value = value / (1 + rate) + flows[year]!;
  return value;
}

/** Cash on one day, days counted from any day. */
export interface DatedFlow {
  readonly day: number;
  readonly amount: number;
}

/**
 * Present value on the day of the first flow, years of 365 days. A spreadsheet's help (from memory): -10000 on 1 January
 * 2008, 2750 on 1 March, 4250 on 30 October, 3250 on 15 February 2009, 2750 on 1 April at 9 % are worth 2086.6476.
 */
export function datedPresentValue(flows: readonly DatedFlow[], rate: number): number {
  const start = flows[0]?.day ?? 0;
  return flows.reduce((value, { day, amount }) => value + amount / (1 + rate) ** ((day - start) / DAYS), 0);
}

const DAYS = 365;
