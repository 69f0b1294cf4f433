/**
 * Minor-unit digits by ISO 4217. Kept as a table because Intl reports 0 for HUF, IQD and MGA, where the standard has 2, 3
 * and 2. Any code that is not listed has two digits, as most have.
 */
const DIGITS: Readonly<Record<string, number>> = {
  BIF: 0,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  ISK: 0,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  PYG: 0,
  RWF: 0,
  UGX: 0,
  UYI: 0,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
  BHD: 3,
  IQD: 3,
  JOD: 3,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  TND: 3,
  CLF: 4,
  UYW: 4,
};

/** Digits after the decimal point of a currency's minor unit. Example: EUR gives 2, JPY 0, KWD 3. */
export function minorUnitDigits(currency: string): number {
  return DIGITS[currency] ?? 2;
}
