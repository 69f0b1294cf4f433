import { meanChordMm } from "./motion-time.ts";

/** One cut through what is deposited, and how it is filled. */
export interface Cut {
  readonly areaMm2: number;
  readonly perimeterMm: number;
  readonly islands: number;
  /** how much an outline of one island shortens per mm of inward offset: 8 for a rectangle, 2 pi for a smooth outline */
  readonly shrinkPerMm: number;
  /** corners of the outlines of all islands; none: not known */
  readonly corners?: number;
}

/** How a layer is laid down. */
export interface Filling {
  readonly beadWidthMm: number;
  readonly walls: number;
  /** share of the inside that is filled, 0 to 1 */
  readonly density: number;
}

/** Path of one layer. */
export interface LayerPath {
  readonly wallMm: number;
  /** walls that found room */
  readonly walls: number;
  readonly infillMm: number;
  /** mean length of the infill's lines, mm; 0 without infill */
  readonly infillLineMm: number;
}

/**
 * Path of one layer from its area and outline alone: walls at half a bead, one and a half beads ... inside the outline, the
 * rest filled at the given density with lines one bead apart. Beads never take more than the area: where two walls would
 * overlap, what is left is one shorter wall. Exact for rectangles and for smooth convex outlines.
 * Example: 60 x 40 mm, bead 0.45, 2 walls, 20 %: walls 392.8 mm, infill 988.107 mm in lines of 36.2 mm.
 */
export function layerPath(cut: Cut, filling: Filling): LayerPath {
  const { beadWidthMm, density } = filling;
  const shrink = cut.shrinkPerMm * cut.islands * beadWidthMm;
  let wallMm = 0;
  let walls = 0;
  let innerMm2 = cut.areaMm2;
  while (walls < filling.walls) {
    const lengthMm = Math.min(cut.perimeterMm - shrink * (walls + 0.5), innerMm2 / beadWidthMm);
    if (lengthMm <= 0) break;
    wallMm += lengthMm;
    innerMm2 -= lengthMm * beadWidthMm;
    walls += 1;
  }
  if (density <= 0 || innerMm2 <= LEAST_SHARE * cut.areaMm2) {
    return { wallMm, walls, infillMm: 0, infillLineMm: 0 };
  }
  const innerPerimeterMm = Math.max(cut.perimeterMm - shrink * walls, circleMm(innerMm2));
  return {
    wallMm,
    walls,
    infillMm: (density * innerMm2) / beadWidthMm,
    infillLineMm: meanChordMm(innerMm2, innerPerimeterMm),
  };
}

/**
 * Share of the outline's corners that the walls of a path come by: 1 where every wall goes all along the outline, less where
 * it is shorter because the area gives no more, as the one wall of a tube one bead thick goes along both of its outlines.
 * Example: a square tube of 100 mm, 8 mm thick, one wall of 8 mm: 400 of 773 mm, 0.517.
 */
export function followedShare(cut: Cut, path: LayerPath, beadWidthMm: number): number {
  const shrink = cut.shrinkPerMm * cut.islands * beadWidthMm;
  const fullMm = path.walls * cut.perimeterMm - (shrink * path.walls ** 2) / 2;
  return fullMm > path.wallMm ? path.wallMm / fullMm : 1;
}

/** Outline of a circle of an area, mm: no outline of that area is shorter. Example: 314.16 mm2 gives 62.83 mm. */
export function circleMm(areaMm2: number): number {
  return 2 * Math.sqrt(Math.PI * areaMm2);
}

/** An inside smaller than this share of the area is rounding dust. */
const LEAST_SHARE = 1e-9;
