import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { crc32 } from "../../../core/geometry/crc32.ts";
import { readGood, refusal } from "../../fixtures/a-reading.ts";
import { bytesOf } from "../../fixtures/stl-bytes.ts";
import { modelXml, packed, relationships, threeMf } from "../../fixtures/three-mf-bytes.ts";

const OPTIONS = { unit: null, fileName: "part.3mf" } as const;
const DIRECTORY_ENTRY = 0x02014b50;

const refuse = (bytes: Uint8Array) => refusal(bytes, OPTIONS);

/** A copy with a 32-bit field changed in the directory entry of the second part, which is the model. */
function withField(bytes: Uint8Array, offset: number, change: (value: number) => number): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  const entries: number[] = [];
  for (let at = 0; at < copy.length - 4; at++)
    if (view.getUint32(at, true) === DIRECTORY_ENTRY) entries.push(at);
  const at = (entries[1] ?? 0) + offset;
  view.setUint32(at, change(view.getUint32(at, true)), true);
  return copy;
}

describe("the root model is found by its relationship", () => {
  test.each([
    ["/3D/3dmodel.model", "3D/3dmodel.model"],
    ["3D/3dmodel.model", "3D/3dmodel.model"],
    ["/a/b/body.xml", "a/b/body.xml"],
    ["/3d/3DMODEL.model", "3D/3dmodel.model"],
    ["/my%20part.model", "my part.model"],
    ["/x/../3D/./m.model", "3D/m.model"],
  ])("%s is %s", (target, path) => {
    const bytes = packed({ [path]: modelXml(), "_rels/.rels": relationships(target) });
    expect(readGood(bytes, OPTIONS).bodies).toHaveLength(1);
  });

  test("and not by its usual path", () => {
    const parts = {
      "_rels/.rels": relationships("/real.model"),
      "3D/3dmodel.model": "<no/>",
      "real.model": modelXml(),
    };
    expect(readGood(packed(parts), OPTIONS).bodies).toHaveLength(1);
  });
});

describe("a package is refused", () => {
  const rels = relationships("/a.model");
  test.each([
    ["without relationships", packed({ "part.stl": "solid" }), "not-3mf"],
    [
      "of another kind",
      packed({ "_rels/.rels": rels.replace("3dmodel", "officeDocument"), "a.model": modelXml() }),
      "not-3mf",
    ],
    ["without the model that it names", packed({ "_rels/.rels": rels }), "model-missing"],
    [
      "with two roots",
      packed({
        "_rels/.rels": rels.replace(
          "<Relationship ",
          `${/<Relationship .*\/>/.exec(rels)?.[0].replace("a.model", "b.model")}<Relationship `,
        ),
        "a.model": modelXml(),
      }),
      "several-models",
    ],
    [
      "with a part given twice",
      packed({ "_rels/.rels": rels, "a.model": modelXml(), "/A.model": modelXml() }),
      "part-twice",
    ],
    ["without any part", zipSync({}), "not-3mf"],
    ["that was cut", threeMf(modelXml()).slice(0, -30), "damaged-package"],
    ["with only its first bytes", threeMf(modelXml()).slice(0, 12), "damaged-package"],
  ])("%s", (_, bytes, code) => {
    expect(refuse(bytes)).toMatch(new RegExp(`^${code} `));
  });

  test("that is encrypted", () => {
    expect(refuse(withField(threeMf(modelXml()), 8, (flags) => flags | 1))).toMatch(/^encrypted /);
  });

  test("that is packed by an unknown method", () => {
    expect(refuse(withField(threeMf(modelXml()), 8, (word) => (word & 0xffff) | (14 << 16)))).toMatch(
      /^unknown-packing .* 14 /,
    );
  });

  test("with another check sum than announced", () => {
    expect(refuse(withField(threeMf(modelXml()), 16, (sum) => sum ^ 1))).toMatch(
      /^damaged-package .*check sum/,
    );
  });

  test.each([-1, 1])("with %i byte more than announced", (step) => {
    expect(refuse(withField(threeMf(modelXml()), 24, (size) => size + step))).toMatch(
      /^damaged-package .*size/,
    );
  });

  test("whose one digit was changed on the way: the body would be another", () => {
    const bytes = threeMf(modelXml(), 0);
    const at = Buffer.from(bytes).indexOf('x="10"') + 3;
    bytes[at] = "9".charCodeAt(0);
    expect(refuse(bytes)).toMatch(/^damaged-package .*check sum/);
  });
});

describe("a bomb", () => {
  const spaces = threeMf(modelXml({ attributes: " ".repeat(12_500_000) }));

  test("that announces more than the limit is refused before anything is unpacked", () => {
    const bytes = withField(threeMf(modelXml()), 24, () => 2_000_000_000);
    expect(refuse(bytes)).toMatch(/^unpacks-too-large .* 2000000\d\d\d bytes/);
  });

  test("that announces less than it unpacks to is stopped at what it announces", () => {
    const bytes = withField(spaces, 24, () => 1000);
    const start = performance.now();
    expect(refuse(bytes)).toMatch(/^damaged-package .*size/);
    expect(performance.now() - start).toBeLessThan(1000);
  });

  test("that unpacks to a thousand times its size is stopped by the ratio", () => {
    const model = modelXml({ objects: ["<basematerials/>".repeat(700_000)] });
    expect(refuse(threeMf(model))).toMatch(/^unpacks-too-large .*200 times/);
  });

  test("of one endless element is stopped", () => {
    expect(refusal(spaces, { ...OPTIONS, limits: { maxUnpackedRatio: 2000 } })).toMatch(
      /^damaged-xml .*no end/,
    );
  });

  test.each([-1, 0])("counts all parts together, limit %i from their sum", (step) => {
    const sum = modelXml().length + relationships("/3D/3dmodel.model").length;
    const limits = { maxUnpackedBytes: sum + step };
    const bytes = threeMf(modelXml());
    if (step < 0) expect(refusal(bytes, { ...OPTIONS, limits })).toMatch(/^unpacks-too-large /);
    else expect(readGood(bytes, { ...OPTIONS, limits }).bodies).toHaveLength(1);
  });
});

test("a package with 64-bit fields and a comment at its end is read", () => {
  const bytes = threeMf(modelXml());
  const view = new DataView(bytes.buffer);
  const end = bytes.length - 22;
  const long = new Uint8Array(56 + 20 + 22 + 5);
  const longView = new DataView(long.buffer);
  longView.setUint32(0, 0x06064b50, true);
  longView.setBigUint64(32, BigInt(view.getUint16(end + 10, true)), true);
  longView.setBigUint64(48, BigInt(view.getUint32(end + 16, true)), true);
  longView.setUint32(56, 0x07064b50, true);
  longView.setBigUint64(64, BigInt(end), true);
  long.set(bytes.subarray(end), 76);
  longView.setUint16(76 + 10, 0xffff, true);
  longView.setUint32(76 + 16, 0xffffffff, true);
  longView.setUint16(76 + 20, 5, true);
  const whole = new Uint8Array(end + long.length);
  whole.set(bytes.subarray(0, end));
  whole.set(long, end);
  expect(readGood(whole, OPTIONS).bodies).toHaveLength(1);
});

test("the check sum is the standard's: 123456789 gives CBF43926, in pieces too", () => {
  expect(crc32(0, bytesOf("123456789"))).toBe(0xcbf43926);
  expect(crc32(crc32(0, bytesOf("1234")), bytesOf("56789"))).toBe(0xcbf43926);
});
