/** The first place at which a text stops being JSON. Line and column count from 1. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
}

/**
 * Finds where a text stops being JSON by RFC 8259, or null where it is JSON throughout. Tools for parsing say this in words
 * of their own that differ from version to version; this one always says what was expected.
 * Example: '{"a": 1,}' gives line 1, column 9, expected a name in double quotes.
 */
export function findJsonFault(text: string): JsonFault | null {
  const scanner: Scanner = { text, at: 0 };
  try {
    scanValue(scanner, 0);
    skipSpace(scanner);
    if (scanner.at < text.length) fault(scanner, "the end of the text");
    return null;
  } catch (problem) {
    if (!(problem instanceof ScanStop)) throw problem;
    return { ...positionOf(text, scanner.at), expected: problem.expected };
  }
}

interface Scanner {
  readonly text: string;
  at: number;
}

class ScanStop extends Error {
  readonly expected: string;
  constructor(expected: string) {
    super(expected);
    this.expected = expected;
  }
}

const DEEPEST = 200;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;
/** Everything but double quotes, backslashes and control characters. */
const PLAIN_TEXT = /[ !#-[\]-\u{10ffff}]*/uy;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

function fault(scanner: Scanner, expected: string): never {
  skipSpace(scanner);
  throw new ScanStop(expected);
}

function take(scanner: Scanner, pattern: RegExp): boolean {
  pattern.lastIndex = scanner.at;
  if (!pattern.test(scanner.text)) return false;
  scanner.at = pattern.lastIndex;
  return true;
}

function skipSpace(scanner: Scanner): void {
  take(scanner, SPACE);
}

function takeSign(scanner: Scanner, sign: string): boolean {
  skipSpace(scanner);
  if (scanner.text[scanner.at] !== sign) return false;
  scanner.at += 1;
  return true;
}

function scanValue(scanner: Scanner, depth: number): void {
  if (depth > DEEPEST) fault(scanner, `no more than ${DEEPEST} levels of brackets`);
  if (takeSign(scanner, "{")) scanObject(scanner, depth);
  else if (takeSign(scanner, "[")) scanList(scanner, depth);
  else if (scanner.text[scanner.at] === '"') scanText(scanner);
  else if (!take(scanner, NUMBER) && !take(scanner, WORD)) {
    fault(scanner, "a value: text in double quotes, a number, true, false, null, { or [");
  }
}

function scanObject(scanner: Scanner, depth: number): void {
  if (takeSign(scanner, "}")) return;
  do {
    skipSpace(scanner);
    if (scanner.text[scanner.at] !== '"') fault(scanner, "a name in double quotes");
    scanText(scanner);
    if (!takeSign(scanner, ":")) fault(scanner, "a colon after the name");
    scanValue(scanner, depth + 1);
  } while (takeSign(scanner, ","));
  if (!takeSign(scanner, "}")) fault(scanner, "a comma or a closing }");
}

function scanList(scanner: Scanner, depth: number): void {
  if (takeSign(scanner, "]")) return;
  do scanValue(scanner, depth + 1);
  while (takeSign(scanner, ","));
  if (!takeSign(scanner, "]")) fault(scanner, "a comma or a closing ]");
}

function scanText(scanner: Scanner): void {
  scanner.at += 1;
  do take(scanner, PLAIN_TEXT);
  while (take(scanner, ESCAPE));
  if (scanner.text[scanner.at] === "\\")
    throw new ScanStop('\\", \\\\, \\/, \\b, \\f, \\n, \\r, \\t or \\u and four digits');
  if (scanner.text[scanner.at] !== '"')
    throw new ScanStop("a closing double quote before the end of the line");
  scanner.at += 1;
}

function positionOf(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}
