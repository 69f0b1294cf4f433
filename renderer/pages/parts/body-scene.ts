import { Color, Group, PerspectiveCamera, Scene, Vector3, WebGLRenderer } from "three";
import { addLights, groupOf, release, type SceneColours, type SceneContent } from "./scene-content.ts";

/** A view of a body on a platform that is turned by steps. Nothing is drawn unless something changes. */
export interface BodyScene {
  readonly show: (content: SceneContent, colours: SceneColours) => void;
  readonly resize: (widthPx: number, heightPx: number) => void;
  /** turns round the vertical and up, degrees */
  readonly turn: (aroundDeg: number, upDeg: number) => void;
  readonly zoom: (factor: number) => void;
  /** back to the first look: at the body, or at the whole room */
  readonly look: (at: "body" | "room") => void;
  readonly end: () => void;
}

const FIELD_DEG = 35;
const FIRST_AROUND_DEG = 35;
const FIRST_UP_DEG = 24;
const MOST_UP_DEG = 89;
const RAD = Math.PI / 180;
/** The whole is a little smaller than the view. */
const ROOM_FACTOR = 0.62;

/** True where the browser can draw in three dimensions; asking first keeps three from complaining on the console. */
export function canDraw(): boolean {
  return document.createElement("canvas").getContext("webgl2") !== null;
}

export function createBodyScene(canvas: HTMLCanvasElement): BodyScene {
  const renderer = new WebGLRenderer({ canvas, antialias: true });
  const scene = new Scene();
  const camera = new PerspectiveCamera(FIELD_DEG, 1, 1, 1e6);
  // The platform lies flat, z points up, as on the machine.
  camera.up.set(0, 0, 1);
  const eye: Eye = { aroundDeg: FIRST_AROUND_DEG, upDeg: FIRST_UP_DEG, distance: 100, heightMm: 0 };
  let group = new Group();
  let content: SceneContent | null = null;
  addLights(scene);

  function draw(): void {
    placeCamera(camera, eye);
    renderer.render(scene, camera);
  }

  function look(at: "body" | "room"): void {
    if (!content) return;
    const { x, y, z } = (at === "room" ? content.envelopeMm : null) ?? content.sizeMm;
    eye.heightMm = z / 2;
    const radius = ROOM_FACTOR * Math.hypot(x, y, z);
    eye.distance = radius / Math.sin((FIELD_DEG / 2) * RAD) / Math.min(1, camera.aspect);
    draw();
  }

  return {
    show: (next, colours) => {
      const isNew = next.sizeMm !== content?.sizeMm;
      content = next;
      scene.remove(group);
      release(group);
      group = groupOf(next, colours);
      scene.add(group);
      scene.background = new Color(colours.back);
      if (isNew) look("body");
      else draw();
    },
    resize: (widthPx, heightPx) => {
      renderer.setPixelRatio(Math.min(2, devicePixelRatio));
      renderer.setSize(widthPx, heightPx, false);
      camera.aspect = widthPx / heightPx;
      if (content) draw();
    },
    turn: (around, up) => {
      eye.aroundDeg += around;
      eye.upDeg = Math.max(-MOST_UP_DEG, Math.min(MOST_UP_DEG, eye.upDeg + up));
      draw();
    },
    zoom: (factor) => {
      eye.distance *= factor;
      draw();
    },
    look: (at) => {
      Object.assign(eye, { aroundDeg: FIRST_AROUND_DEG, upDeg: FIRST_UP_DEG });
      look(at);
    },
    end: () => {
      release(group);
      renderer.dispose();
      renderer.forceContextLoss();
    },
  };
}

/** From where the body is seen; what is looked at lies above the middle of the platform. */
interface Eye {
  aroundDeg: number;
  upDeg: number;
  distance: number;
  heightMm: number;
}

function placeCamera(camera: PerspectiveCamera, { aroundDeg, upDeg, distance, heightMm }: Eye): void {
  const flat = distance * Math.cos(upDeg * RAD);
  camera.position.set(
    flat * Math.sin(aroundDeg * RAD),
    -flat * Math.cos(aroundDeg * RAD),
    heightMm + distance * Math.sin(upDeg * RAD),
  );
  camera.near = distance / 100;
  camera.far = distance * 100;
  camera.updateProjectionMatrix();
  camera.lookAt(new Vector3(0, 0, heightMm));
}
