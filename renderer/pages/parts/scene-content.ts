import {
  AmbientLight,
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  PlaneGeometry,
  type Scene,
} from "three";

/** What the view shows, mm. */
export interface SceneContent {
  /** corners of triangles, lowest at 0 and centred; null: a box of the size stands for the body */
  readonly cornersMm: Float32Array | null;
  readonly sizeMm: { readonly x: number; readonly y: number; readonly z: number };
  /** the machine's room; null: the body alone */
  readonly envelopeMm: { readonly x: number; readonly y: number; readonly z: number } | null;
  readonly edgeMarginMm: number;
}

/** Colours as the styles have them, so that light and dark follow. */
export interface SceneColours {
  readonly back: string;
  readonly body: string;
  readonly line: string;
  readonly plate: string;
}

/** Daylight from all sides, more from the front left. */
export function addLights(scene: Scene): void {
  scene.add(new AmbientLight(0xffffff, 1.3));
  const main = new DirectionalLight(0xffffff, 1.9);
  main.position.set(-0.5, -0.8, 1.2);
  const other = new DirectionalLight(0xffffff, 0.6);
  other.position.set(0.9, 0.6, -0.2);
  scene.add(main, other);
}

/** The body, and where a machine is named its platform, its room and the edge that stays free. */
export function groupOf(
  { cornersMm, sizeMm, envelopeMm, edgeMarginMm }: SceneContent,
  colours: SceneColours,
): Group {
  const group = new Group();
  const body = cornersMm ? bodyOf(cornersMm) : new BoxGeometry(sizeMm.x, sizeMm.y, sizeMm.z);
  if (!cornersMm) body.translate(0, 0, sizeMm.z / 2);
  group.add(new Mesh(body, new MeshLambertMaterial({ color: paler(colours.body), flatShading: true })));
  if (!cornersMm) group.add(lines(new EdgesGeometry(body), colours.line));
  if (!envelopeMm) return group;
  const { x, y, z } = envelopeMm;
  const plate = new Mesh(new PlaneGeometry(x, y), new MeshLambertMaterial({ color: colours.plate, side: 2 }));
  plate.position.z = -Math.max(x, y) / 2000;
  group.add(plate);
  const room = new EdgesGeometry(new BoxGeometry(x, y, z));
  room.translate(0, 0, z / 2);
  group.add(lines(room, colours.line));
  if (2 * edgeMarginMm < Math.min(x, y)) {
    const free = new EdgesGeometry(new PlaneGeometry(x - 2 * edgeMarginMm, y - 2 * edgeMarginMm));
    group.add(lines(free, colours.line));
  }
  return group;
}

/** Pale enough for its shaded sides to be told apart. */
function paler(colour: string): Color {
  return new Color(colour).lerp(new Color(0xffffff), 0.35);
}

function bodyOf(cornersMm: Float32Array): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(cornersMm, 3));
  geometry.computeVertexNormals();
  return geometry;
}

function lines(geometry: BufferGeometry, colour: string): LineSegments {
  return new LineSegments(geometry, new LineBasicMaterial({ color: colour }));
}

/** Gives back what the drawing holds of a group. */
export function release(group: Group): void {
  group.traverse((thing) => {
    if (!(thing instanceof Mesh) && !(thing instanceof LineSegments)) return;
    (thing.geometry as BufferGeometry).dispose();
    (thing.material as MeshLambertMaterial).dispose();
  });
}
