import { along, block, bore, joined, outline, pin, rectangle, upright, without, type Solid } from "./kit.ts";

/** Angle bracket for a sensor: two legs, a gusset between them, two holes in each leg. */
export function sensorBracket(): Solid {
  const legs = along(
    outline([
      [-30, 0],
      [30, 0],
      [30, 5],
      [-25, 5],
      [-25, 50],
      [-30, 50],
    ]),
    45,
  );
  const gusset = along(
    outline([
      [-26, 4],
      [0, 4],
      [-26, 30],
    ]),
    5,
  );
  const feet = [-13, 13].map((y) => pin(6.6, [17, y], -1, 8));
  const backs = [-13, 13].map((y) => bore(6.6, 10).rotate([0, 0, 90]).translate([-27.5, y, 37]));
  return without(joined(legs, gusset), ...feet, ...backs);
}

/** Nameplate on a foot: an upright plate with two letters sunk into its front, the foot with a window. */
export function nameplate(): Solid {
  const foot = without(
    upright(rectangle(70, 40, 4), 3),
    upright(rectangle(50, 14, 3), 9).translate([0, -6, -3]),
  );
  const plate = block(70, 3, 30).translate([0, 18.5, 0]);
  const letters = joined(letterH().translate([-14, 16.6, 7]), letterL().translate([14, 16.6, 7]));
  return without(joined(foot, plate), letters);
}

/** Letters of 16 mm from bars, deep enough to be sunk by 0.6 mm. */
function letterH(): Solid {
  return joined(
    bar(3, 16).translate([-5, 0, 0]),
    bar(3, 16).translate([5, 0, 0]),
    bar(12, 3).translate([0, 0, 6.5]),
  );
}

function letterL(): Solid {
  return joined(bar(3, 16).translate([-4, 0, 0]), bar(11, 3));
}

function bar(x: number, z: number): Solid {
  return block(x, 2, z);
}
