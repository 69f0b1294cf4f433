import {
  block,
  disc,
  inset,
  joined,
  outline,
  pin,
  rectangle,
  upright,
  without,
  type Outline,
  type Solid,
} from "./kit.ts";

/** One upright wall along an outline, no floor and no roof. */
function sleeve(shape: Outline, height: number, wall: number): Solid {
  return upright(shape.subtract(inset(shape, wall)), height);
}

/** Shroud of a fan: a sleeve with a corner lug in each upper corner, whose undersides hang over. */
export function fanShroud(): Solid {
  const lug = upright(
    outline([
      [0, 0],
      [22, 0],
      [0, 22],
    ]),
    4,
  ).subtract(pin(4.5, [6, 6], -1, 6));
  const lugs = [0, 90, 180, 270].map((turn) => lug.translate([-88, -88, 56]).rotate([0, 0, turn]));
  return joined(sleeve(rectangle(180, 180, 6), 60, 3.2), ...lugs);
}

/** Sleeve of a storage bin with two grips in its rim. */
export function storageBin(): Solid {
  const grips = block(90, 400, 24).translate([0, 0, 200]);
  return without(sleeve(rectangle(400, 300, 15), 220, 4.4), grips);
}

/** Letter D of a sign as one wall around it. */
export function signageLetter(): Solid {
  const bow = disc(500, 96).intersect(rectangle(252, 520).translate([126, 0]));
  const letter = bow.add(rectangle(101, 500).translate([-49.5, 0])).translate([-75, 0]);
  return sleeve(letter.rotate(90), 90, 5);
}

export function longPlanter(): Solid {
  return sleeve(rectangle(1000, 420, 60), 480, 9);
}

/** Form of a casting with rounded corners, to be machined. */
export function foundryPattern(): Solid {
  return sleeve(rectangle(700, 500, 30), 180, 14);
}

/** Jig for trimming, with four notches for clamps in its rim. */
export function trimJig(): Solid {
  const notches = [-350, 350].map((x) => block(120, 700, 60).translate([x, 0, 215]));
  return without(sleeve(rectangle(1400, 500, 40), 250, 15), ...notches);
}

/** Shell of a chair: one wall bent about the sitter, a little narrower towards its rim. */
export function chairShell(): Solid {
  const whole = rectangle(520, 1000, 250).translate([0, 260]);
  const wall = whole.subtract(inset(whole, 9)).intersect(rectangle(600, 480));
  return wall.extrude(780, 0, 0, [0.94, 0.94]);
}
