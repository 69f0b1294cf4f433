import { describe, expect, test } from "vitest";
import { measureBody } from "../../../core/geometry/measure.ts";
import { readGood, refusal, warningsOf } from "../../fixtures/a-reading.ts";
import { BOX_TRIANGLES, boxCorners } from "../../fixtures/box-corners.ts";
import { boxObject, componentsObject, meshXml, modelXml, threeMf } from "../../fixtures/three-mf-bytes.ts";

const OPTIONS = { unit: null, fileName: "part.3mf" } as const;
const PRODUCTION = 'xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"';
const LATTICE = 'xmlns:b="http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02"';

const readXml = (model: string) => readGood(threeMf(model), OPTIONS);
const refuseXml = (model: string) => refusal(threeMf(model), OPTIONS);
const warnXml = (model: string) => warningsOf(threeMf(model), OPTIONS);
const measured = (model: string) => measureBody(readXml(model).mesh);

const item = (transform: string, id = 1) => `<item objectid="${id}" transform="${transform}"/>`;
const twoItems = (x: number) => item("1 0 0 0 1 0 0 0 1 0 0 0") + item(`1 0 0 0 1 0 0 0 1 ${x} 0 0`);
const withRequired = (namespace: string) =>
  modelXml({ attributes: `xmlns:q="${namespace}" requiredextensions="q"` });
const bad = (from: string | RegExp, to: string) => modelXml().replace(from, to);
const inside = (id: number, of: number) => componentsObject(of, [`<component objectid="${id}"/>`]);
const ten = (id: number) =>
  componentsObject(
    id + 1,
    Array.from({ length: 10 }, () => `<component objectid="${id}"/>`),
  );

describe("a 3MF", () => {
  test("of a box gives its one body in mm", () => {
    const { bodies, unit, unitIsGuess, findings } = readXml(
      modelXml({ objects: [boxObject(1, [10, 20, 30], 'name="crate"')] }),
    );
    expect({ unit, unitIsGuess, findings }).toEqual({ unit: "millimeter", unitIsGuess: false, findings: [] });
    expect(bodies.map(({ name, triangles }) => [name, triangles])).toEqual([["crate", 12]]);
    expect(measured(modelXml())).toMatchObject({
      volumeMm3: 6000,
      areaMm2: 2200,
      closed: true,
      inverted: false,
    });
  });

  test("reads the same stored and deflated", () => {
    expect(readGood(threeMf(modelXml(), 0), OPTIONS)).toEqual(readGood(threeMf(modelXml(), 6), OPTIONS));
  });

  test.each([
    ["micron", 0.001],
    ["millimeter", 1],
    ["centimeter", 10],
    ["inch", 25.4],
    ["foot", 304.8],
    ["meter", 1000],
  ])("in %s is %d mm to the unit", (unit, mm) => {
    const reading = readXml(modelXml({ attributes: `unit="${unit}"` }));
    expect(reading.unit).toBe(unit);
    expect(measureBody(reading.mesh).volumeMm3 / (6000 * mm ** 3)).toBeCloseTo(1, 12);
  });

  test("in a unit that 3MF does not know is refused", () => {
    expect(refuseXml(modelXml({ attributes: 'unit="furlong"' }))).toMatch(/^unknown-unit .*furlong.*inch/);
  });

  test("is read in the caller's unit where one is given, with a warning if the file says another", () => {
    const bytes = threeMf(modelXml({ attributes: 'unit="inch"' }));
    expect(warningsOf(bytes, { ...OPTIONS, unit: "inch" })).toEqual([]);
    expect(warningsOf(bytes, { ...OPTIONS, unit: "centimeter" })).toEqual(["unit-overruled"]);
    expect(measureBody(readGood(bytes, { ...OPTIONS, unit: "centimeter" }).mesh).volumeMm3).toBeCloseTo(
      6e6,
      6,
    );
  });

  test("with vertices that belong to no triangle has the box of its triangles", () => {
    const object = `<object id="1">${meshXml([...boxCorners([1, 1, 5]), [500, 0, 0]], BOX_TRIANGLES)}</object>`;
    expect(Math.max(...readXml(modelXml({ objects: [object] })).mesh.cornersMm)).toBe(5);
  });

  test("with a vertex of its own for each corner of each triangle is welded and closed", () => {
    const corners = BOX_TRIANGLES.flatMap((triangle) =>
      triangle.map((corner) => boxCorners([4, 4, 4])[corner] ?? ([0, 0, 0] as const)),
    );
    const faces = BOX_TRIANGLES.map((_, n) => [3 * n, 3 * n + 1, 3 * n + 2] as const);
    const object = `<object id="1">${meshXml(corners, faces)}</object>`;
    expect(measured(modelXml({ objects: [object] }))).toMatchObject({ closed: true, volumeMm3: 64 });
  });
});

describe("placing", () => {
  test("one object in two items gives two bodies and twice the volume", () => {
    const { bodies, mesh } = readXml(
      modelXml({ items: item("1 0 0 0 1 0 0 0 1 0 0 0") + item("1 0 0 0 1 0 0 0 1 50 0 0") }),
    );
    expect(bodies.map((body) => measureBody(body.mesh).volumeMm3)).toEqual([6000, 6000]);
    expect(measureBody(bodies[1]!.mesh).boxMm).toEqual({
      min: { x: 50, y: 0, z: 0 },
      max: { x: 60, y: 20, z: 30 },
    });
    expect(measureBody(mesh)).toMatchObject({ volumeMm3: 12_000, shells: 2 });
  });

  test("a quarter turn takes x to y: points are rows", () => {
    const { boxMm } = measured(modelXml({ items: item("0 1 0 -1 0 0 0 0 1 0 0 0") }));
    expect(boxMm).toEqual({ min: { x: -20, y: 0, z: 0 }, max: { x: 0, y: 10, z: 30 } });
  });

  test("a mirrored body keeps its outside outside", () => {
    expect(measured(modelXml({ items: item("-1 0 0 0 1 0 0 0 1 0 0 0") }))).toMatchObject({
      volumeMm3: 6000,
      inverted: false,
      closed: true,
    });
  });

  test("a mirrored component of a mirrored item is not mirrored", () => {
    const mirror = "-1 0 0 0 1 0 0 0 1 0 0 0";
    const objects = [boxObject(1), componentsObject(2, [`<component objectid="1" transform="${mirror}"/>`])];
    expect(measured(modelXml({ objects, items: item(mirror, 2) }))).toMatchObject({
      inverted: false,
      boxMm: { min: { x: 0 }, max: { x: 10 } },
    });
  });

  test("a component is moved first, then what is around it", () => {
    const objects = [
      boxObject(1, [1, 1, 5]),
      componentsObject(2, ['<component objectid="1" transform="1 0 0 0 1 0 0 0 1 10 0 0"/>']),
    ];
    const { boxMm } = measured(modelXml({ objects, items: item("2 0 0 0 2 0 0 0 2 0 0 7", 2) }));
    expect(boxMm).toEqual({ min: { x: 20, y: 0, z: 7 }, max: { x: 22, y: 2, z: 17 } });
  });

  test("transforms are in the file's unit", () => {
    const { boxMm } = measured(
      modelXml({ attributes: 'unit="centimeter"', items: item("1 0 0 0 1 0 0 0 1 1 0 0") }),
    );
    expect(boxMm).toEqual({ min: { x: 10, y: 0, z: 0 }, max: { x: 110, y: 200, z: 300 } });
  });

  test("components that refer to a later object are placed", () => {
    const objects = [componentsObject(2, ['<component objectid="1"/>']), boxObject(1)];
    expect(measured(modelXml({ objects, items: '<item objectid="2"/>' })).volumeMm3).toBe(6000);
  });

  test("objects that the build does not use are not made", () => {
    expect(measured(modelXml({ objects: [boxObject(1), boxObject(2)] })).volumeMm3).toBe(6000);
  });

  test("bodies whose boxes overlap are warned of", () => {
    expect(warnXml(modelXml({ items: twoItems(9) }))).toEqual(["bodies-overlap"]);
    expect(warnXml(modelXml({ items: twoItems(10) }))).toEqual([]);
  });

  test.each([
    ["eleven numbers", "1 0 0 0 1 0 0 0 1 0 0", "transform"],
    ["a word", "1 0 0 0 1 0 0 0 1 0 0 zero", "transform"],
    ["no volume", "1 0 0 0 1 0 0 0 0 0 0 0", "transform"],
    ["a number beyond floats", "1 0 0 0 1 0 0 0 1 0 0 1e999", "transform"],
    ["absurd distance", "1 0 0 0 1 0 0 0 1 0 0 1e30", "absurd-coordinates"],
  ])("a transform of %s is refused", (_, transform, code) => {
    expect(refuseXml(modelXml({ items: item(transform) }))).toMatch(new RegExp(`^${code} `));
  });
});

describe("object types", () => {
  test.each(["support", "solidsupport", "surface", "other"])("%s is left out, with a warning", (type) => {
    const objects = [boxObject(1), boxObject(2, [1, 1, 1], `type="${type}" name="prop"`)];
    const model = modelXml({ objects, items: '<item objectid="1"/><item objectid="2"/>' });
    expect(measured(model).volumeMm3).toBe(6000);
    expect(readXml(model).findings[0]).toMatchObject({
      code: "not-a-part",
      sentence: expect.stringContaining(`object 2 "prop" is of type ${type}`),
    });
  });

  test("model is the part", () => {
    expect(warnXml(modelXml({ objects: [boxObject(1, [10, 20, 30], 'type="model"')] }))).toEqual([]);
  });

  test("with nothing of type model leave nothing to build", () => {
    expect(refuseXml(modelXml({ objects: [boxObject(1, [1, 1, 1], 'type="support"')] }))).toMatch(
      /^no-triangles /,
    );
  });
});

describe("extensions", () => {
  test("that are required are refused by their names", () => {
    const namespace = "http://schemas.microsoft.com/3dmanufacturing/slice/2015/07";
    expect(refuseXml(withRequired(namespace))).toMatch(
      /^required-extension .*"slices" \(http:.*slice\/2015\/07\)/,
    );
  });

  test("that are required and unknown are refused by their namespaces", () => {
    expect(refuseXml(withRequired("urn:unheard"))).toMatch(/^required-extension .* urn:unheard,/);
  });

  test("that are required by an undeclared prefix are refused by it", () => {
    expect(refuseXml(modelXml({ attributes: 'requiredextensions="z"' }))).toMatch(
      /^required-extension .* z,/,
    );
  });

  test("that only name sets of triangles may be required", () => {
    expect(
      readXml(withRequired("http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07")).bodies,
    ).toHaveLength(1);
  });

  test("that put an object in another part are refused with its path", () => {
    const items = '<item objectid="1" p:path="/3D/other.model"/>';
    expect(refuseXml(modelXml({ attributes: PRODUCTION, items }))).toMatch(
      /^required-extension .*\/3D\/other.model.*production/,
    );
  });

  test("that only add an identity are read over", () => {
    expect(warnXml(modelXml({ attributes: PRODUCTION, items: '<item objectid="1" p:UUID="x"/>' }))).toEqual(
      [],
    );
  });

  test("that hold geometry are refused even when not required", () => {
    const lattice = boxObject(1).replace("</mesh>", "<b:beamlattice/></mesh>");
    expect(refuseXml(modelXml({ attributes: LATTICE, objects: [lattice] }))).toMatch(
      /^extension-geometry .*"beam lattice"/,
    );
  });

  test("that are unknown are warned of once", () => {
    const odd = boxObject(1).replace("</mesh>", "<o:a/><o:b/></mesh>");
    expect(warnXml(modelXml({ attributes: 'xmlns:o="urn:odd"', objects: [odd] }))).toEqual([
      "unknown-extension",
    ]);
  });

  test("hide core elements within theirs", () => {
    const hidden = boxObject(1).replace(
      "</vertices>",
      '<o:a xmlns:o="urn:odd"><vertex x="99" y="0" z="0"/></o:a></vertices>',
    );
    expect(measured(modelXml({ objects: [hidden] })).boxMm.max.x).toBe(10);
  });
});

describe("a 3MF is refused", () => {
  test.each([
    ["a document type", bad("<model", "<!DOCTYPE model [<!ENTITY a 'b'>]><model"), "document-type"],
    ["another encoding", bad('encoding="UTF-8"', 'encoding="ISO-8859-1"'), "not-utf-8"],
    ["an entity of its own", bad('id="1"', 'id="&a;"'), "damaged-xml"],
    ["XML that was cut", modelXml().slice(0, -20), "damaged-xml"],
    ["another root", '<svg xmlns="http://www.w3.org/2000/svg"/>', "not-3mf"],
    ["a root of another namespace", bad("core/2015/02", "core/2013/01"), "not-3mf"],
    ["no item", modelXml({ items: "" }), "nothing-to-build"],
    ["an unknown object", modelXml({ items: '<item objectid="9"/>' }), "no-such-object"],
    ["an item without object", modelXml({ items: "<item/>" }), "no-such-object"],
    ["an id given twice", modelXml({ objects: [boxObject(1), boxObject(1)] }), "object-id-twice"],
    ["an object without id", bad('object id="1"', "object"), "object-without-id"],
    ["a vertex number too high", bad('v1="0"', 'v1="8"'), "no-such-vertex"],
    ["a vertex number below 0", bad('v1="0"', 'v1="-1"'), "no-such-vertex"],
    ["a vertex number that is none", bad('v1="0"', 'v1="1.0"'), "no-such-vertex"],
    ["a vertex number beyond all", bad('v1="0"', 'v1="99999999999"'), "no-such-vertex"],
    ["a triangle without third corner", bad(/ v3="\d"/, ""), "no-such-vertex"],
    ["a decimal comma", bad('x="10"', 'x="10,5"'), "absurd-coordinates"],
    ["a coordinate that is no number", bad('x="10"', 'x="NaN"'), "absurd-coordinates"],
    [
      "a coordinate of a million digits",
      bad('x="10"', `x="${"1".repeat(1_000_000)}x"`),
      "absurd-coordinates",
    ],
    ["a coordinate left out", bad('x="10" ', ""), "absurd-coordinates"],
    ["an absurd coordinate", bad('x="10"', 'x="1e30"'), "absurd-coordinates"],
    ["an empty mesh", modelXml({ objects: [`<object id="1">${meshXml([], [])}</object>`] }), "no-triangles"],
    ["elements in elements without end", "<model>".repeat(200), "not-3mf"],
    ["deep elements", bad("<resources>", `<resources>${"<x>".repeat(200)}`), "damaged-xml"],
  ])("for %s", (_, model, code) => {
    expect(model).not.toBe(modelXml());
    expect(refuseXml(model)).toMatch(new RegExp(`^${code} `));
  });

  test("for UTF-16", () => {
    const text = `\ufeff${modelXml().replace("UTF-8", "UTF-16")}`;
    const latin = Buffer.from(text, "utf16le").toString("latin1");
    expect(refuseXml(latin)).toMatch(/^(not-utf-8|damaged-xml|not-3mf) /);
  });

  test("with the line of damaged XML", () => {
    expect(refuseXml(modelXml().replace("<resources>", "<resources>\n\n<"))).toMatch(
      /3D\/3dmodel.model, line 4: the XML is damaged/,
    );
  });

  test("for an object within itself, at once or by another", () => {
    expect(refuseXml(modelXml({ objects: [inside(1, 1)] }))).toMatch(/^object-in-itself /);
    expect(refuseXml(modelXml({ objects: [inside(2, 1), inside(3, 2), inside(1, 3)] }))).toMatch(
      /^object-in-itself /,
    );
  });
});

test("a triangle that names a vertex twice is left out, with a warning", () => {
  const model = modelXml().replace("</triangles>", '<triangle v1="3" v2="3" v3="5"/></triangles>');
  expect(warnXml(model)).toEqual(["triangles-without-area"]);
  expect(measured(model)).toMatchObject({ volumeMm3: 6000, closed: true });
});

describe("limits", () => {
  test("components within components that stand for billions are refused before any is made", () => {
    const objects = [boxObject(1), ...Array.from({ length: 20 }, (_, place) => ten(place + 1))];
    const start = performance.now();
    expect(refuseXml(modelXml({ objects, items: '<item objectid="21"/>' }))).toMatch(/^too-many-triangles /);
    expect(performance.now() - start).toBeLessThan(1000);
  });

  test("so are billions of nothing", () => {
    const objects = ['<object id="1"/>', ...Array.from({ length: 20 }, (_, place) => ten(place + 1))];
    expect(refuseXml(modelXml({ objects, items: '<item objectid="21"/>' }))).toMatch(/^too-many-objects /);
  });

  test("thousands of levels of components are refused", () => {
    const objects = [
      boxObject(0),
      ...Array.from({ length: 5000 }, (_, n) => componentsObject(n + 1, [`<component objectid="${n}"/>`])),
    ];
    expect(refuseXml(modelXml({ objects, items: '<item objectid="5000"/>' }))).toMatch(/^too-deep /);
  });

  test("the triangles of all items count", () => {
    const bytes = threeMf(modelXml({ items: '<item objectid="1"/>'.repeat(3) }));
    expect(refusal(bytes, { ...OPTIONS, limits: { maxTriangles: 35 } })).toMatch(/^too-many-triangles /);
    expect(readGood(bytes, { ...OPTIONS, limits: { maxTriangles: 36 } }).bodies).toHaveLength(3);
  });
});
