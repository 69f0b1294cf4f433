const MINUS = 0x2d;
const PLUS = 0x2b;
const POINT = 0x2e;
const ZERO = 0x30;
const LETTER_E = 0x65;
const TO_LOWER = 0x20;

/** A mantissa below 2^53 and a power of ten up to 10^22 are both exact, so one product or quotient rounds correctly (Clinger 1990). */
const MOST_EXACT_DIGITS = 15;
const MOST_EXACT_POWER = 22;
/** A longer word is no number that anybody wrote. */
const LONGEST_NUMBER = 400;
const POWERS_OF_TEN = Array.from({ length: MOST_EXACT_POWER + 1 }, (_, power) => 10 ** power);

/**
 * The decimal number that bytes [from, to) spell in ASCII with a decimal point and perhaps an exponent, or null where they
 * are anything else. Source of the fast way: W. D. Clinger, How to read floating point numbers accurately, 1990 (from
 * memory); the rest goes through the language's own reader. Example: the bytes of "-1.5e1" give -15, those of "1,5" null.
 */
export function decimalOf(bytes: Uint8Array, from: number, to: number): number | null {
  if (to - from > LONGEST_NUMBER) return null;
  const sign = bytes[from];
  let at = sign === MINUS || sign === PLUS ? from + 1 : from;
  let mantissa = 0;
  let digits = 0;
  let significant = 0;
  let scale = 0;
  let pointAt = -1;
  for (; at < to; at++) {
    const byte = bytes[at] ?? 0;
    const digit = byte - ZERO;
    if (digit >= 0 && digit <= 9) {
      digits++;
      if (mantissa > 0 || digit > 0) significant++;
      mantissa = 10 * mantissa + digit;
      if (pointAt >= 0) scale--;
    } else if (byte === POINT && pointAt < 0) pointAt = at;
    else break;
  }
  if (digits === 0) return null;
  if (at < to) {
    const exponent = exponentOf(bytes, at, to);
    if (exponent === null) return null;
    scale += exponent;
  }
  if (significant > MOST_EXACT_DIGITS || Math.abs(scale) > MOST_EXACT_POWER) return slowly(bytes, from, to);
  const power = POWERS_OF_TEN[Math.abs(scale)] ?? 1;
  const value = scale < 0 ? mantissa / power : mantissa * power;
  return sign === MINUS ? -value : value;
}

function exponentOf(bytes: Uint8Array, from: number, to: number): number | null {
  if (((bytes[from] ?? 0) | TO_LOWER) !== LETTER_E) return null;
  const sign = bytes[from + 1];
  let at = sign === MINUS || sign === PLUS ? from + 2 : from + 1;
  if (at >= to) return null;
  let exponent = 0;
  for (; at < to; at++) {
    const digit = (bytes[at] ?? 0) - ZERO;
    if (digit < 0 || digit > 9) return null;
    exponent = 10 * exponent + digit;
  }
  return sign === MINUS ? -exponent : exponent;
}

function slowly(bytes: Uint8Array, from: number, to: number): number {
  return Number(asciiOf(bytes, from, to));
}

/** Bytes [from, to) as text, one character for each byte. Example: 0x68, 0x69 give "hi". */
export function asciiOf(bytes: Uint8Array, from: number, to: number): string {
  let text = "";
  for (let at = from; at < to; at++) text += String.fromCharCode(bytes[at] ?? 0);
  return text;
}

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** The same for a text, spaces around it allowed. Example: " -1.5e1 " gives -15, "0x10" and "" give null. */
export function decimalOfText(text: string): number | null {
  if (text.length > LONGEST_NUMBER) return null;
  const word = text.trim();
  return DECIMAL.test(word) ? Number(word) : null;
}
