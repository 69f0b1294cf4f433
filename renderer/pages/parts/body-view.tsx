import { createEffect, createMemo, createResource, type JSX, on, onCleanup, onMount, Show } from "solid-js";
import { sideUp, vectorUp } from "../../../core/shop/direction.ts";
import { measuredStanding } from "../../../core/shop/directions-up.ts";
import type { Part } from "../../../core/shop/part.ts";
import { Button } from "../../components/button.tsx";
import { useStores } from "../../store/stores.ts";
import { askBodies } from "../../worker/body-client.ts";
import { type BodyScene, canDraw, createBodyScene } from "./body-scene.ts";
import type { SceneColours } from "./scene-content.ts";
import type { ChosenWay } from "./ways-table.tsx";

interface BodyViewProps {
  readonly part: Part;
  readonly chosen: ChosenWay | null;
}

const STEP_DEG = 10;
const DRAG_DEG_PER_PX = 0.5;
const CLOSER = 0.85;

/** The corners to draw, or the sentence why there are none. */
interface Shape {
  readonly cornersMm: Float32Array | null;
  readonly note: string;
}

/** The body with the chosen side up on the platform of the chosen machine, to scale; turned by mouse and arrow keys. */
export default function BodyView(props: BodyViewProps): JSX.Element {
  const { shop, format, prefs, host } = useStores();
  const up = createMemo(() => props.chosen?.route.route.orientation ?? "z");
  const machine = createMemo(() =>
    shop.shop().machines.find(({ id }) => id === props.chosen?.way.machineIds[0]),
  );
  const asked = createMemo(() => ({ part: props.part, up: up() }), undefined, {
    equals: (a, b) => a.up === b.up && a.part.geometry === b.part.geometry && a.part.id === b.part.id,
  });
  const [shape] = createResource(asked, async ({ part, up: label }): Promise<Shape> => {
    const { geometry } = part;
    if (geometry.kind !== "mesh")
      return { cornersMm: null, note: "It has no file: its bounding box stands for it." };
    const answer = await host.call("readMesh", { handle: shop.opened.handle, partId: part.id });
    if (!answer.ok) return { cornersMm: null, note: answer.trouble.sentence };
    if (answer.value.status === "failed") return { cornersMm: null, note: answer.value.sentence };
    const { bytes, fileName, sameAsMeasured } = answer.value;
    const standing = measuredStanding(part, label);
    const vector = (standing && vectorUp(standing)) ?? { x: 0, y: 0, z: 1 };
    try {
      const { cornersMm, findings } = await askBodies({
        kind: "shape",
        bytes,
        fileName,
        unit: geometry.unit,
        up: vector,
      });
      const other = sameAsMeasured ? "" : "The file is not the one that was measured: take it in again.";
      return { cornersMm, note: cornersMm ? other : (findings[0]?.sentence ?? "") };
    } catch (fault) {
      return { cornersMm: null, note: fault instanceof Error ? fault.message : String(fault) };
    }
  });
  const sizeMm = createMemo(() => sizeOf(props.part, up()), undefined, {
    equals: (a, b) => a.x === b.x && a.y === b.y && a.z === b.z,
  });
  let canvas: HTMLCanvasElement | undefined;
  let scene: BodyScene | null = null;
  const isAble = canDraw();
  onMount(() => {
    if (!canvas || !isAble) return;
    const made = createBodyScene(canvas);
    scene = made;
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry?.contentRect ?? { width: 0, height: 0 };
      if (width > 0 && height > 0) made.resize(width, height);
    });
    watch.observe(canvas);
    const dark = matchMedia("(prefers-color-scheme: dark)");
    dark.addEventListener("change", show);
    onCleanup(() => {
      watch.disconnect();
      dark.removeEventListener("change", show);
      made.end();
      scene = null;
    });
    createEffect(on([shape, machine, sizeMm, prefs.prefs], () => show()));
  });
  function show(): void {
    const found = shape();
    if (!scene || !canvas || !found) return;
    const envelopeMm = machine()?.envelopeMm ?? null;
    const edgeMarginMm = machine()?.edgeMarginMm ?? 0;
    scene.show({ cornersMm: found.cornersMm, sizeMm: sizeMm(), envelopeMm, edgeMarginMm }, coloursOf(canvas));
  }
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => scene?.turn(-STEP_DEG, 0),
    ArrowRight: () => scene?.turn(STEP_DEG, 0),
    ArrowUp: () => scene?.turn(0, STEP_DEG),
    ArrowDown: () => scene?.turn(0, -STEP_DEG),
    "+": () => scene?.zoom(CLOSER),
    "-": () => scene?.zoom(1 / CLOSER),
    Home: () => scene?.look("body"),
    End: () => scene?.look("room"),
  };
  const words = (): string => {
    const room = machine();
    const where = room
      ? ` on ${room.name}, ${format().lengthText(room.envelopeMm.x)} × ${format().lengthText(room.envelopeMm.y)} × ${format().lengthText(room.envelopeMm.z)}`
      : "";
    const { x, y, z } = sizeMm();
    return `${sideUp(up())}: ${format().lengthText(x)} × ${format().lengthText(y)} on the platform, ${format().lengthText(z)} high${where}.`;
  };
  const drag = (event: PointerEvent & { currentTarget: HTMLElement }): void => {
    if (event.currentTarget.hasPointerCapture(event.pointerId))
      scene?.turn(-event.movementX * DRAG_DEG_PER_PX, event.movementY * DRAG_DEG_PER_PX);
  };
  return (
    <>
      <Show when={isAble} fallback={<p class="quiet">This browser cannot draw in three dimensions here.</p>}>
        <canvas
          ref={canvas}
          class="body-canvas"
          tabindex="0"
          role="img"
          aria-label={`The body, ${words()} Arrow keys turn it, plus and minus come closer and go away, Home looks at the body, End at the whole room.`}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={drag}
          onWheel={(event) => {
            event.preventDefault();
            scene?.zoom(event.deltaY < 0 ? CLOSER : 1 / CLOSER);
          }}
          onKeyDown={(event) => {
            const step = keys[event.key];
            if (!step) return;
            event.preventDefault();
            step();
          }}
        />
        <div class="panel-tools">
          <Button onClick={() => scene?.look("body")}>Look at the body</Button>
          <Button onClick={() => scene?.look("room")}>Look at the whole room</Button>
          <Button aria-label="Turn left" onClick={() => scene?.turn(-STEP_DEG * 3, 0)}>
            ↺
          </Button>
          <Button aria-label="Turn right" onClick={() => scene?.turn(STEP_DEG * 3, 0)}>
            ↻
          </Button>
        </div>
      </Show>
      <p>{words()}</p>
      <p class="quiet">{shape.loading ? "The body is read." : shape()?.note}</p>
    </>
  );
}

/** The body as it stands with a side up: its box, from what was measured or from its axes. */
function sizeOf(part: Part, up: string): { readonly x: number; readonly y: number; readonly z: number } {
  const standing = measuredStanding(part, up);
  if (standing) {
    const xs = standing.hullMm.map(([x]) => x);
    const ys = standing.hullMm.map(([, y]) => y);
    return { x: span(xs), y: span(ys), z: standing.heightMm };
  }
  const { x, y, z } = part.geometry.measures.boxMm;
  const axis = up.replace("-", "");
  if (axis === "x") return { x: y, y: z, z: x };
  return axis === "y" ? { x, y: z, z: y } : { x, y, z };
}

function span(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** Styles name colours for light and dark at once; the browser tells which one holds. */
function coloursOf(element: HTMLElement): SceneColours {
  const probe = document.createElement("span");
  element.after(probe);
  const resolved = (name: string): string => {
    probe.style.color = `var(${name})`;
    return getComputedStyle(probe).color;
  };
  const colours = {
    back: resolved("--surface"),
    body: resolved("--accent"),
    line: resolved("--edge"),
    plate: resolved("--faint"),
  };
  probe.remove();
  return colours;
}
