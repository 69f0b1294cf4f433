import { describe, expect, it } from "vitest";
import {
  column,
  rightColumn,
  shortText,
  utf8Bytes,
  visibleText,
  wrapped,
} from "../../../core/report/plain-text.ts";

describe("text from documents", () => {
  it("cannot steer a terminal", () => {
    expect(visibleText("a\u001b[2Jb\u0007")).toBe("a<U+001B>[2Jb<U+0007>");
  });

  it("cannot turn the reading direction round", () => {
    expect(visibleText("x\u202egnp.exe")).toBe("x<U+202E>gnp.exe");
  });

  it("stays on one line", () => {
    expect(visibleText("one\r\n\ttwo")).toBe("one two");
  });

  it("keeps letters of every script", () => {
    expect(visibleText("Größe 模具 قالب 🧵")).toBe("Größe 模具 قالب 🧵");
  });

  it("is cut between characters, with a sign that it was", () => {
    expect(shortText("Spool holder", 6)).toBe("Spool…");
    expect(shortText("Spool", 5)).toBe("Spool");
    expect(shortText("🧵🧵🧵", 2)).toBe("🧵…");
    expect(shortText("x".repeat(10_000), 8)).toBe("xxxxxxx…");
  });

  it("fills a column exactly", () => {
    expect(column("ab", 4)).toBe("ab  ");
    expect(column("abcdef", 4)).toBe("abc…");
    expect(rightColumn("ab", 4)).toBe("  ab");
  });

  it("is wrapped at spaces, and inside words that are longer than a line", () => {
    expect(wrapped("one two three", 7)).toEqual(["one two", "three"]);
    expect(wrapped("abcdefgh", 3)).toEqual(["abc", "def", "gh"]);
    expect(wrapped("", 3)).toEqual([]);
  });

  it("becomes the same UTF-8 as elsewhere", () => {
    for (const text of ["", "abc", "é€𐍈", "模具 🧵", "\ud800x"])
      expect(utf8Bytes(text)).toEqual([...new TextEncoder().encode(text)]);
  });
});
