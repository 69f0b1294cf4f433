import { block, joined, pin, rectangle, turned, without, type Solid, type Vec2 } from "./kit.ts";

/** A ring with chamfered edges outside. */
function ring(outer: number, height: number, wall: number, chamfer: number, sides: number): Solid {
  const [r, bore] = [outer / 2, outer / 2 - wall];
  return turned(
    [
      [bore, 0],
      [r - chamfer, 0],
      [r, chamfer],
      [r, height - chamfer],
      [r - chamfer, height],
      [bore, height],
    ],
    sides,
  );
}

export function spacer(): Solid {
  return ring(40, 12, 6, 0.8, 72);
}

/** Sealing ring with a rounded back. */
export function sealForm(): Solid {
  const back: Vec2[] = Array.from({ length: 9 }, (_, step) => {
    const angle = (Math.PI * step) / 8;
    return [57 + 3 * Math.cos(angle), 5 + 3 * Math.sin(angle)];
  });
  return turned([[54, 0], [60, 0], ...back], 52);
}

/** Foot that takes knocks: a cone with a sunk screw hole. */
export function bumperFoot(): Solid {
  return turned(
    [
      [3, 0],
      [22.5, 0],
      [22.5, 3],
      [20.5, 23],
      [18.5, 25],
      [6, 25],
      [6, 18],
      [3, 13],
    ],
    64,
  );
}

/** Grommet with a groove for the sheet it sits in. */
export function grommet(): Solid {
  return turned(
    [
      [9, 0],
      [15, 0],
      [15, 6],
      [13.2, 7.8],
      [13.2, 10.2],
      [15, 12.4],
      [15, 18],
      [9, 18],
    ],
    64,
  );
}

/** Hood for a lamp: flared, with two notches in its rim. */
export function lensHood(): Solid {
  const hood = turned(
    [
      [38.6, 0],
      [41, 0],
      [45, 70],
      [42.6, 70],
    ],
    80,
  );
  return without(hood, block(30, 120, 18).translate([0, 0, 56]));
}

/** Socket with two slots for the lamp's key. */
export function lampSocket(): Solid {
  return without(ring(60, 55, 4, 1, 72), block(80, 8, 12).translate([0, 0, 45]));
}

/** Column of a lamp: one plain wall. */
export function lampColumn(): Solid {
  return ring(180, 880, 4.6, 0, 96);
}

/** Cap of a bollard: a thick ring, chamfered at its upper edge. */
export function bollardCap(): Solid {
  return turned(
    [
      [23.4, 0],
      [32, 0],
      [32, 137],
      [30, 140],
      [23.4, 140],
    ],
    64,
  );
}

/** What an impeller is milled from: a disc and a hub with its bore, and eight thick blades that lean. */
export function impellerBlank(): Solid {
  const bar = rectangle(40, 4.4);
  const fan = bar.add(bar.rotate(45)).add(bar.rotate(90)).add(bar.rotate(135)).extrude(22, 6, 28);
  const reach = turned(
    [
      [0, 0],
      [19, 0],
      [19, 15],
      [9, 22],
      [0, 22],
    ],
    72,
  );
  const hub = turned(
    [
      [0, 0],
      [19, 0],
      [19, 12],
      [9, 16],
      [8, 22],
      [0, 22],
    ],
    72,
  );
  return without(joined(hub, fan.intersect(reach)), pin(5, [0, 0], -1, 24));
}
