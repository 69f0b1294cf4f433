import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { base64 } from "../../../core/report/base64.ts";
import { namespacedUuid, uuidOfNames } from "../../../core/report/name-uuid.ts";
import { utf8Bytes } from "../../../core/report/plain-text.ts";
import { sha256 } from "../../../core/report/sha256.ts";

function hexOf(text: string): string {
  return Buffer.from(sha256(utf8Bytes(text))).toString("hex");
}

describe("SHA-256", () => {
  // NIST, "Descriptions of SHA-256": the two examples for FIPS 180-4 (from memory, and held against Node below).
  it.each([
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
  ])("of %s is as published", (text, hash) => {
    expect(hexOf(text)).toBe(hash);
  });

  it("is the same as Node's at every length around a block's end", () => {
    for (let length = 0; length <= 200; length += 1) {
      const text = "x".repeat(length);
      expect(hexOf(text)).toBe(createHash("sha256").update(text).digest("hex"));
    }
  });
});

describe("UUIDs of names", () => {
  it("follow the example of RFC 9562 (Davis, Peabody & Leach 2024), appendix B.2", () => {
    const dns = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";
    expect(namespacedUuid(dns, "www.example.com")).toBe("5c146b14-3c52-8afd-938a-375d0df1fbf6");
  });

  it("are the same for the same names and differ for others", () => {
    expect(uuidOfNames(["works", "B-001"])).toBe(uuidOfNames(["works", "B-001"]));
    expect(
      new Set([
        uuidOfNames(["works", "B-001"]),
        uuidOfNames(["works", "B-002"]),
        uuidOfNames(["work", "B-001"]),
      ]).size,
    ).toBe(3);
  });
});

describe("base64", () => {
  // RFC 4648 (Josefsson 2006), section 10.
  it.each([
    ["", ""],
    ["f", "Zg=="],
    ["fo", "Zm8="],
    ["foo", "Zm9v"],
    ["foob", "Zm9vYg=="],
    ["fooba", "Zm9vYmE="],
    ["foobar", "Zm9vYmFy"],
  ])("of %j is %j", (text, encoded) => {
    expect(base64(utf8Bytes(text))).toBe(encoded);
  });
});
