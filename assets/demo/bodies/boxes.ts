import { block, joined, outline, along, pin, rectangle, upright, without, type Solid } from "./kit.ts";

/** A box without a lid, wall and floor equally thick. */
function openBox(x: number, y: number, z: number, wall: number, corner: number): Solid {
  const inside = upright(rectangle(x - 2 * wall, y - 2 * wall, corner - wall), z).translate([0, 0, wall]);
  return without(upright(rectangle(x, y, corner), z), inside);
}

/** Bin with a lowered front. */
export function smallBin(): Solid {
  const front = outline([
    [-60, 0],
    [60, 0],
    [90, 60],
    [-90, 60],
  ]);
  return without(openBox(200, 150, 120, 2.4, 10), along(front, 20).translate([0, -75, 85]));
}

/** Tray for clips, three low partitions across it. */
export function clipTray(): Solid {
  const partitions = [-85, 0, 85].map((x) => block(2.8, 257, 18).translate([x, 0, 1]));
  return joined(openBox(340, 260, 60, 2.8, 12), ...partitions);
}

/** Cover of terminals with open notches for cables in one long side. */
export function terminalCover(): Solid {
  const notches = [-36, -12, 12, 36].map((x) => block(12, 10, 20).translate([x, -40, 34]));
  return without(openBox(120, 80, 45, 2.4, 6), ...notches);
}

/** Housing of relays with four posts for screws. */
export function relayHousing(): Solid {
  const places: [number, number][] = [
    [-73, -48],
    [73, -48],
    [-73, 48],
    [73, 48],
  ];
  const posts = places.map((at) => pin(10, at, 1, 35));
  const screws = places.map((at) => pin(3.2, at, 12, 40));
  return without(joined(openBox(160, 110, 60, 2.4, 5), ...posts), ...screws);
}
