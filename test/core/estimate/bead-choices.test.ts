import { expect, test } from "vitest";
import { beadChoices } from "../../../core/estimate/bead-choices.ts";
import { aNozzle, aPart } from "../../fixtures/a-route.ts";

const NOZZLE = aNozzle();

function codes(part = aPart(), nozzle = NOZZLE): string[] {
  return beadChoices(part, nozzle).reasons.map(({ code }) => code);
}

test("widest, usual and narrowest bead are tried with the thickest layer that may show", () => {
  const widths = [0.6, 1.15 * 0.4, 0.36];
  expect(beadChoices(aPart(), NOZZLE).thick).toEqual(
    widths.map((beadWidthMm) => ({ beadWidthMm, layerHeightMm: 0.2 })),
  );
});

test("no bead is wider than the smallest feature", () => {
  expect(
    beadChoices(aPart({ smallestFeatureMm: 0.4 }), NOZZLE).thick.map((bead) => bead.beadWidthMm),
  ).toEqual([0.4, 0.36]);
});

test("a feature of just the narrowest bead can be made, a finer one not", () => {
  expect(codes(aPart({ smallestFeatureMm: 0.36 }))).toEqual([]);
  expect(codes(aPart({ smallestFeatureMm: 0.35 }))).toEqual(["feature-too-fine"]);
});

test("a surface that allows just the thinnest layer can be made, a finer one not", () => {
  expect(codes(aPart({ maxLayerHeightMm: 0.1 }))).toEqual([]);
  expect(codes(aPart({ maxLayerHeightMm: 0.09 }))).toEqual(["layer-too-thick"]);
});

test("layers are never thicker than the bead is wide", () => {
  const nozzle = aNozzle({ beadWidthMm: { min: 0.2, max: 0.2 }, layerHeightMm: { min: 0.1, max: 0.3 } });
  const { thick } = beadChoices(aPart({ maxLayerHeightMm: 0.3 }), nozzle);
  expect(thick).toEqual([{ beadWidthMm: 0.2, layerHeightMm: 0.2 }]);
});

test("thinner layers stay within the nozzle's range", () => {
  const heights = new Set(beadChoices(aPart(), NOZZLE).thin.map((bead) => bead.layerHeightMm));
  expect([...heights]).toEqual([0.2 * 0.75, 0.1]);
  expect(beadChoices(aPart({ maxLayerHeightMm: 0.1 }), NOZZLE).thin).toEqual([]);
});

test("the sentence names the detail and the bead", () => {
  expect(beadChoices(aPart({ smallestFeatureMm: 0.2 }), NOZZLE).reasons[0]?.sentence).toBe(
    "smallest detail 0.2 mm, narrowest bead of nozzle n04 0.36 mm.",
  );
});
