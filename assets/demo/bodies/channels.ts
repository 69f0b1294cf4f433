import { along, block, bore, outline, pin, rectangle, upright, without, type Solid } from "./kit.ts";

/** A channel open at the top: floor and two walls, with small fillets of straight cut in its corners. */
function channel(x: number, y: number, z: number, wall: number, fillet: number): Solid {
  const [half, inner] = [x / 2, x / 2 - wall];
  return along(
    outline([
      [-half, 0],
      [half, 0],
      [half, z],
      [inner, z],
      [inner, wall + fillet],
      [inner - fillet, wall],
      [-inner + fillet, wall],
      [-inner, wall + fillet],
      [-inner, z],
      [-half, z],
    ]),
    y,
  );
}

/** Clip for one cable: a channel whose lips lean in, steeply enough to carry themselves. */
export function clip(): Solid {
  return along(
    outline([
      [-6, 0],
      [6, 0],
      [6, 10],
      [4.4, 10],
      [3.4, 8.6],
      [3.4, 8.2],
      [4, 7.2],
      [4, 2],
      [-4, 2],
      [-4, 7.2],
      [-3.4, 8.2],
      [-3.4, 8.6],
      [-4.4, 10],
      [-6, 10],
    ]),
    32,
  );
}

/** Channel for cables with two screw holes in its floor. */
export function cableGuide(): Solid {
  return without(channel(30, 60, 25, 3, 2), pin(5, [0, -18], -1, 9), pin(5, [0, 18], -1, 9));
}

/** Guard over bars that carry current: a channel with slots for air in its floor. */
export function busbarGuard(): Solid {
  const slot = upright(rectangle(64, 18, 6), 12);
  const slots = [-72, -36, 0, 36, 72].map((y) => slot.translate([0, y, -1]));
  return without(channel(90, 190, 50, 4.5, 3), ...slots);
}

/** One half of a clamp for pipes: a deep channel 38 mm long with screw holes; the file holds it twice, 42 mm apart. */
export function pipeSaddle(): Solid {
  const half = channel(120, 38, 70, 8, 12);
  return without(half, pin(7, [-34, 0], -1, 14), pin(7, [34, 0], -1, 14)).translate([0, -21, 0]);
}

/** Drawer handle: a bar with room for the fingers under an arch, and two holes for screws from behind. */
export function handle(): Solid {
  const arch = outline(
    Array.from({ length: 25 }, (_, step) => {
      const angle = (Math.PI * step) / 24;
      return [46 * Math.cos(angle), 14 * Math.sin(angle)];
    }),
  );
  const bar = along(rectangle(140, 36, 5).translate([0, 14]), 28);
  const feet = without(bar, block(200, 60, 20).translate([0, 0, -20]));
  const fingers = along(arch, 40).translate([0, 0, -1e-3]);
  return without(feet, fingers, pin(4, [-58, 0], -1, 21), pin(4, [58, 0], -1, 21));
}

/** Finger of a gripper: a block with a notch for round pieces and two cross bores. */
export function gripperFinger(): Solid {
  const notch = along(
    outline([
      [45.5, 4],
      [45.5, 16],
      [36, 10],
    ]),
    40,
  );
  const bores = [-34, -16].map((x) => bore(5.5, 40).translate([x, 0, 10]));
  return without(upright(rectangle(90, 28, 3), 20), notch, ...bores);
}
