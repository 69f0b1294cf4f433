import { asciiOf } from "./decimal.ts";

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;
const SPACE = 0x20;
const TO_LOWER = 0x20;
const LONGEST_SHOWN = 30;

/** Goes through a text word by word; a word is what stands between spaces, tabs and line ends. */
export class StlWords {
  readonly bytes: Uint8Array;
  /** the present word is bytes [from, to); empty at the end of the text */
  from: number;
  to: number;

  constructor(bytes: Uint8Array, start: number) {
    this.bytes = bytes;
    this.from = start;
    this.to = start;
  }

  /** Goes to the next word; false at the end. */
  next(): boolean {
    const { bytes } = this;
    let at = this.to;
    while (at < bytes.length && (bytes[at] ?? 0) <= SPACE) at++;
    this.from = at;
    while (at < bytes.length && (bytes[at] ?? 0) > SPACE) at++;
    this.to = at;
    return this.to > this.from;
  }

  /** True where the present word is this one, in upper or lower case. */
  is(word: string): boolean {
    if (this.to - this.from !== word.length) return false;
    for (let index = 0; index < word.length; index++) {
      if (((this.bytes[this.from + index] ?? 0) | TO_LOWER) !== word.charCodeAt(index)) return false;
    }
    return true;
  }

  /** True where the next word is on the same line as the present one; does not move. */
  hasMoreOnLine(): boolean {
    let at = this.to;
    while (at < this.bytes.length && (this.bytes[at] ?? 0) <= SPACE) {
      if (this.bytes[at] === LINE_FEED || this.bytes[at] === CARRIAGE_RETURN) return false;
      at++;
    }
    return at < this.bytes.length;
  }

  /** The present word as text, for a sentence. */
  shown(): string {
    const text = asciiOf(this.bytes, this.from, Math.min(this.to, this.from + LONGEST_SHOWN));
    return text.replaceAll(/[^ -~]/g, "?");
  }

  /** The line of the present word, from 1. */
  line(): number {
    let lines = 1;
    for (let at = 0; at < this.from; at++) if (this.bytes[at] === LINE_FEED) lines++;
    return lines;
  }
}
