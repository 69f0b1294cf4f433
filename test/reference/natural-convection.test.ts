/**
 * Natural convection on an upright wall: S. W. Churchill and H. H. S. Chu (1975), "Correlating equations for laminar and
 * turbulent free convection from a vertical plate", Int. J. Heat Mass Transfer 18:1323-1329; properties of air as tabled by
 * Incropera and DeWitt (both from memory). A textbook cross-check that lives in this file: the estimate takes one coefficient
 * for all walls, and this shows that it is a fair one.
 */
import { describe, expect, test } from "vitest";
import { CONVECTION_W_PER_M2K } from "../../core/estimate/layer-limits.ts";
import { KELVIN_AT_0_C } from "../../core/units/conversions.ts";

/** Air at 300, 350 and 400 K: kinematic viscosity and diffusivity, 1e-6 m2/s, and conductivity, 1e-3 W/(m K). */
const AIR = [
  { viscosity: 15.89, diffusivity: 22.5, conductivity: 26.3 },
  { viscosity: 20.92, diffusivity: 29.9, conductivity: 30.0 },
  { viscosity: 26.41, diffusivity: 38.3, conductivity: 33.8 },
] as const;

describe("an upright wall in air of 20 degC, within 1 %", () => {
  test.each([
    [150, 0.3, 6.93],
    [60, 0.3, 5.2],
    [150, 0.1, 8.0],
  ])("of %i degC and %f m height loses %f W/(m2 K)", (wallC, heightM, coefficient) => {
    expect(Math.abs(uprightPlateWPerM2K(wallC, 20, heightM) / coefficient - 1)).toBeLessThan(0.01);
  });

  test("the coefficient that the estimate uses is within 2 % of a wall of 0.3 m at 150 degC, and between the others", () => {
    expect(Math.abs(CONVECTION_W_PER_M2K / uprightPlateWPerM2K(150, 20, 0.3) - 1)).toBeLessThan(0.02);
    expect(CONVECTION_W_PER_M2K).toBeGreaterThan(uprightPlateWPerM2K(60, 20, 0.3));
    expect(CONVECTION_W_PER_M2K).toBeLessThan(uprightPlateWPerM2K(150, 20, 0.1));
  });
});

/** Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492 / Pr)^(9/16))^(8/27))^2 with the air as at the mean of wall and air. */
function uprightPlateWPerM2K(wallC: number, airC: number, heightM: number): number {
  const filmK = (wallC + airC) / 2 + KELVIN_AT_0_C;
  const viscosity = between("viscosity", filmK) * 1e-6;
  const diffusivity = between("diffusivity", filmK) * 1e-6;
  const rayleigh = ((9.81 / filmK) * (wallC - airC) * heightM ** 3) / (viscosity * diffusivity);
  const prandtl = (1 + (0.492 / (viscosity / diffusivity)) ** (9 / 16)) ** (8 / 27);
  const nusselt = (0.825 + (0.387 * rayleigh ** (1 / 6)) / prandtl) ** 2;
  return (nusselt * between("conductivity", filmK) * 1e-3) / heightM;
}

function between(property: keyof (typeof AIR)[number], kelvin: number): number {
  const below = kelvin < 350 ? 0 : 1;
  const [from, to] = [AIR[below]![property], AIR[below + 1]![property]];
  return from + ((to - from) * (kelvin - 300 - 50 * below)) / 50;
}
