/** How a language writes numbers. Reading and showing go by the same signs. */
interface NumberSigns {
  readonly decimal: string;
  readonly group: string;
}

/** Binary fractions such as 1.005 lie a hair below what was meant. */
const RELATIVE_DUST = 1e-12;
const MINUS = "\u2212";
const MOST_EDITED_DIGITS = 12;

/** The decimal and grouping signs of a language. Example: "de-DE" gives "," and ".". */
function signsOf(language: string): NumberSigns {
  const known = knownSigns.get(language);
  if (known) return known;
  const parts = new Intl.NumberFormat(language).formatToParts(1_234_567.8);
  const sign = (type: string): string => parts.find((part) => part.type === type)?.value ?? "";
  const made = { decimal: sign("decimal") || ".", group: sign("group") };
  knownSigns.set(language, made);
  return made;
}

/** A language is slow to ask. */
const knownSigns = new Map<string, NumberSigns>();

/**
 * A number with a count of decimals from least to most, digits grouped as the language does.
 * Example: 12345.675 with 2 and 2 in "en-GB" gives "12,345.68".
 */
export function numberText(value: number, least: number, most: number, language: string): string {
  if (!Number.isFinite(value)) return value > 0 ? "unlimited" : "unknown";
  const shown = formatterOf(language, least, most).format(value * (1 + RELATIVE_DUST));
  return shown.replace("-", MINUS).replace(/^\u2212(?=[0.,]*$)/, "");
}

/**
 * A number as it is put into a field to be edited: all of it, not grouped, with the language's decimal sign.
 * Example: 0.1 + 0.2 in "de-DE" gives "0,3".
 */
export function editedNumber(value: number, language: string): string {
  return String(Number(value.toPrecision(MOST_EDITED_DIGITS))).replace(".", signsOf(language).decimal);
}

/**
 * Reads a number as people type it: blanks and apostrophes group; where both signs occur the last one is the decimal sign; a
 * lone comma or point is the decimal sign unless the language groups with it and three digits follow. Null: no number.
 * Examples: "1.234,5" gives 1234.5 anywhere; "1,234" gives 1234 in "en-GB" and 1.234 in "de-DE"; "1,5" gives 1.5 anywhere.
 */
export function readNumber(text: string, language: string): number | null {
  const bare = text.replace(/[\s\u00a0\u202f'\u2019]/g, "").replace(/^[\u2212\u2013]/, "-");
  const match = /^([+-]?)([\d.,]*)(?:e([+-]?\d{1,3}))?$/i.exec(bare);
  if (!match?.[2] || !/\d/.test(match[2])) return null;
  const digits = withPoint(match[2], signsOf(language));
  if (digits === null) return null;
  const value = Number(`${match[1]}${digits}e${match[3] ?? "0"}`);
  return Number.isFinite(value) ? value : null;
}

function withPoint(digits: string, signs: NumberSigns): string | null {
  const last = Math.max(digits.lastIndexOf(","), digits.lastIndexOf("."));
  if (last < 0) return digits;
  const sign = digits.charAt(last);
  const other = sign === "," ? "." : ",";
  const count = digits.split(sign).length - 1;
  if (digits.includes(other)) {
    // Both signs: the last one is the decimal sign, so it may stand there once only.
    return count === 1 && isGrouped(digits.slice(0, last), other)
      ? plain(digits.slice(0, last)) + pointed(digits, last)
      : null;
  }
  const groups = isGrouped(digits, sign) && (count > 1 || sign === signs.group);
  if (groups) return plain(digits);
  return count === 1 ? plain(digits.slice(0, last)) + pointed(digits, last) : null;
}

function pointed(digits: string, last: number): string {
  return `.${digits.slice(last + 1)}`;
}

function plain(digits: string): string {
  return digits.replace(/[.,]/g, "") || "0";
}

/** Groups of three, or of two before the last three as in India. */
function isGrouped(digits: string, sign: string): boolean {
  return new RegExp(`^\\d{1,3}(\\${sign}\\d{2,3})*\\${sign}\\d{3}$`).test(digits);
}

const formatters = new Map<string, Intl.NumberFormat>();

function formatterOf(language: string, least: number, most: number): Intl.NumberFormat {
  const key = `${language} ${least} ${most}`;
  const known = formatters.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(language, { minimumFractionDigits: least, maximumFractionDigits: most });
  formatters.set(key, made);
  return made;
}
