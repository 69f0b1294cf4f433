import type { Measures } from "../../core/shop/part.ts";

/** Bodies of simple shape, measured by formula, mm. Each gives solid volume, surface and bounding box (z is vertical). */

type Layers = NonNullable<Measures["layers"]>;

export function block(x: number, y: number, z: number): Measures {
  return body(x * y * z, 2 * (x * y + y * z + z * x), x, y, z);
}

/** Solid cylinder standing on its end. */
export function bar(d: number, h: number): Measures {
  return body((Math.PI * d * d * h) / 4, (Math.PI * d * d) / 2 + Math.PI * d * h, d, d, h);
}

/** Round tube without floor, wall t. */
export function tube(d: number, h: number, t: number): Measures {
  const bore = d - 2 * t;
  const ring = (Math.PI * (d * d - bore * bore)) / 4;
  return body(ring * h, 2 * ring + Math.PI * (d + bore) * h, d, d, h);
}

/** Rectangular sleeve without floor, wall t. */
export function sleeve(x: number, y: number, z: number, t: number): Measures {
  return taperedSleeve({ x, y }, { x, y }, z, t, 1);
}

/** Rectangular box without lid, wall and floor t. */
export function openBox(x: number, y: number, z: number, t: number): Measures {
  const [ix, iy, iz] = [x - 2 * t, y - 2 * t, z - t];
  const surface = x * y + 2 * (x + y) * z + 2 * (ix + iy) * iz + x * y;
  return body(x * y * z - ix * iy * iz, surface, x, y, z);
}

/** Angle: two legs of thickness t, foot x, upright z, width y. */
export function angle(x: number, y: number, z: number, t: number): Measures {
  const section = t * (x + z - t);
  return body(section * y, 2 * section + 2 * (x + z) * y, x, y, z);
}

/** Channel open at the top: floor and two walls of thickness t, length y. */
export function channel(x: number, y: number, z: number, t: number): Measures {
  const section = t * (x + 2 * (z - t));
  return body(section * y, 2 * section + 2 * (x + 2 * z - t) * y, x, y, z);
}

/** Upright sheet of length l, bent so that it stands on x by y, thickness t, height z, the same in every layer. */
export function bentSheet(l: number, t: number, x: number, y: number, z: number): Measures {
  const outline = 2 * (l + t);
  const layers = cuts(z, 1, () => ({ areaMm2: l * t, perimeterMm: outline, islands: 1 }));
  return { ...body(l * t * z, outline * z + 2 * l * t, x, y, z), layers };
}

/**
 * Sleeve whose outside tapers from `foot` at the bottom to `top`, wall t measured level, no floor and no roof; measured in
 * `steps` cuts.
 */
export function taperedSleeve(
  foot: { x: number; y: number },
  top: { x: number; y: number },
  z: number,
  t: number,
  steps: number,
): Measures {
  const at = (share: number) => ({
    x: foot.x + (top.x - foot.x) * share,
    y: foot.y + (top.y - foot.y) * share,
  });
  const ring = ({ x, y }: { x: number; y: number }) => 2 * t * (x + y) - 4 * t * t;
  const slantX = Math.hypot(z, (foot.x - top.x) / 2);
  const slantY = Math.hypot(z, (foot.y - top.y) / 2);
  const sides = (dx: number) => (foot.x + top.x - 2 * dx) * slantY + (foot.y + top.y - 2 * dx) * slantX;
  const surface = sides(0) + sides(2 * t) + ring(foot) + ring(top);
  const volume = ((ring(foot) + ring(top)) / 2) * z;
  const layers = cuts(z, steps, (share) => {
    const { x, y } = at(share);
    return { areaMm2: ring({ x, y }), perimeterMm: 4 * (x + y) - 8 * t, islands: 1 };
  });
  return { ...body(volume, surface, Math.max(foot.x, top.x), Math.max(foot.y, top.y), z), layers };
}

function cuts(z: number, steps: number, cut: (share: number) => Omit<Layers[number], "zMm">): Layers {
  return Array.from({ length: steps }, (_, index) => {
    const share = (index + 0.5) / steps;
    const { areaMm2, perimeterMm, islands } = cut(share);
    return { zMm: round(z * share), areaMm2: round(areaMm2), perimeterMm: round(perimeterMm), islands };
  });
}

function body(volume: number, area: number, x: number, y: number, z: number): Measures {
  return { volumeMm3: round(volume), areaMm2: round(area), boxMm: { x, y, z } };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
