/**
 * Text from a document made harmless for a terminal or a calendar: control characters (which can move the cursor or clear
 * the screen) and characters that reverse the reading direction are written out, lone surrogates replaced, line breaks and
 * tabs become spaces. Nothing is dropped. Example: an escape character gives "<U+001B>".
 */
export function visibleText(text: string): string {
  return text
    .replace(/[\t\n\r\u2028\u2029]+/g, " ")
    .replace(UNSEEN, writtenOut)
    .replace(LONE_SURROGATE, REPLACEMENT);
}

/**
 * Text with the characters that turn the reading direction round (bidirectional controls of Unicode) written out, all else
 * as it is: for files that have their own rules for other characters. Example: U+202E gives "<U+202E>".
 */
export function withoutTurns(text: string): string {
  return text.replace(TURNS, writtenOut);
}

function writtenOut(char: string): string {
  return `<U+${(char.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}>`;
}

/** The same, cut to so many characters; a cut text ends in "…". Example: "Spool holder", 6 gives "Spool…". */
export function shortText(text: string, mostChars: number): string {
  const start = text.slice(0, (mostChars + 1) * UNITS_PER_CHAR);
  const chars = [...visibleText(start)];
  if (chars.length <= mostChars && start.length === text.length) return chars.join("");
  return `${chars
    .slice(0, mostChars - 1)
    .join("")
    .trimEnd()}…`;
}

/** Text in a column: cut or filled with spaces to exactly so many characters. */
export function column(text: string, chars: number): string {
  const short = shortText(text, chars);
  return short + " ".repeat(chars - [...short].length);
}

/** The same, but flush right. */
export function rightColumn(text: string, chars: number): string {
  return " ".repeat(Math.max(0, chars - [...text].length)) + text;
}

/** Lines of at most so many characters, broken at spaces; a longer word is broken inside. */
export function wrapped(text: string, chars: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of visibleText(text)
    .split(" ")
    .flatMap((long) => pieces(long, chars))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if ([...longer].length > chars) lines.push(line);
    line = [...longer].length > chars ? word : longer;
  }
  return [...lines, line].filter((entry) => entry !== "");
}

/** Bytes of a text in UTF-8, lone surrogates as the replacement character. Example: "é" gives [0xC3, 0xA9]. */
export function utf8Bytes(text: string): number[] {
  const bytes: number[] = [];
  for (const char of text.replace(LONE_SURROGATE, REPLACEMENT)) {
    const code = char.codePointAt(0) ?? 0;
    const more = utf8Size(code) - 1;
    bytes.push((LEADING_BITS[more] ?? 0) | (code >> (6 * more)));
    for (let shift = 6 * (more - 1); shift >= 0; shift -= 6) bytes.push(0x80 | ((code >> shift) & 0x3f));
  }
  return bytes;
}

/** How many bytes a code point takes in UTF-8. Example: U+20AC, the euro sign, takes 3. */
export function utf8Size(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}

const LEADING_BITS = [0x00, 0xc0, 0xe0, 0xf0] as const;
const LONE_SURROGATE = /\p{Cs}/gu;
const REPLACEMENT = "\ufffd";
const UNSEEN = /[\p{Cc}\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu;
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** A character takes one or two units of a string; what lies beyond is never shown, so it is not looked at. */
const UNITS_PER_CHAR = 2;

function pieces(word: string, chars: number): string[] {
  const all = [...word];
  if (all.length <= chars) return [word];
  const count = Math.ceil(all.length / chars);
  return Array.from({ length: count }, (_, index) => all.slice(index * chars, (index + 1) * chars).join(""));
}
