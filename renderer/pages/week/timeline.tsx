import { createEffect, createSignal, For, type JSX, on, onCleanup, onMount, Show } from "solid-js";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { readColours, type WeekColours } from "./colours.ts";
import type { MoveHand } from "./move-hand.ts";
import { type Hatches, makeHatches } from "./hatches.ts";
import { paintWeek } from "./paint-week.ts";
import { createPointer } from "./pointer.ts";
import { rowsInSight, topOf } from "./row-places.ts";
import { Tip } from "./tip.tsx";
import { thisMinute, type WeekState } from "./week-state.ts";
import type { WeekView } from "./week-view.ts";

interface TimelineProps {
  readonly week: WeekState;
  readonly view: WeekView;
  readonly hand: MoveHand;
  readonly sizeFactor: number;
  /** the focus goes to the list, where the keys are */
  readonly onChosen: () => void;
}

const HEAD_PX = 40;
const MINUTE_MS = 60_000;

/** The week as a picture: machines as rows, time to scale. The list below holds the same for keyboard and reader. */
export function Timeline(props: TimelineProps): JSX.Element {
  const { shop, prefs } = useStores();
  let canvas!: HTMLCanvasElement;
  let box!: HTMLDivElement;
  let probe!: HTMLSpanElement;
  const [look, setLook] = createSignal<{
    colours: WeekColours;
    hatches: Hatches;
    density: number;
    font: string;
  } | null>(null);
  const [nowMin, setNowMin] = createSignal(thisMinute());
  const headPx = (): number => Math.round(HEAD_PX * props.sizeFactor);
  const pointer = createPointer(props, headPx);
  const readLook = (): void => {
    const context = canvas.getContext("2d");
    if (!context) return;
    const colours = readColours(probe);
    const density = devicePixelRatio || 1;
    const font = getComputedStyle(document.body).fontFamily;
    setLook({ colours, density, font, hatches: makeHatches(context, colours, density) });
  };
  onMount(() => {
    const resize = new ResizeObserver(() => {
      props.view.setSize(box.clientWidth, Math.max(0, box.clientHeight - headPx()));
      if ((look()?.density ?? 0) !== (devicePixelRatio || 1)) readLook();
    });
    resize.observe(box);
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const timer = setInterval(() => setNowMin(thisMinute()), MINUTE_MS);
    dark.addEventListener("change", readLook);
    box.addEventListener("wheel", pointer.onWheel, { passive: false });
    onCleanup(() => {
      resize.disconnect();
      dark.removeEventListener("change", readLook);
      clearInterval(timer);
    });
    readLook();
  });
  createEffect(
    on(
      () => prefs.prefs().theme,
      () => queueMicrotask(readLook),
      { defer: true },
    ),
  );
  createPaint(props, {
    canvas: () => canvas,
    look,
    nowMin,
    headPx,
    hoveredId: () => pointer.hovered()?.build.id ?? null,
    timeZone: () => shop.shop().timeZone,
  });
  return (
    <div class="week-picture">
      <RowNames week={props.week} view={props.view} headPx={headPx()} />
      <div
        class="week-canvas"
        ref={box}
        classList={{ grabs: pointer.isPanning(), holds: pointer.hovered() !== null }}
        onPointerDown={pointer.onDown}
        onPointerMove={pointer.onMove}
        onPointerUp={pointer.onUp}
        onPointerCancel={pointer.onCancel}
        onPointerLeave={pointer.onLeave}
      >
        <canvas
          ref={canvas}
          role="img"
          aria-label={`Timeline of ${props.week.picture().byId.size} builds on ${props.week.picture().rows.length} machines; the list of builds holds the same.`}
        />
        <span ref={probe} class="unseen" aria-hidden="true" />
        <Show when={pointer.tip()}>{(tip) => <Tip tip={tip()} hand={props.hand} />}</Show>
      </div>
    </div>
  );
}

interface PaintSource {
  readonly canvas: () => HTMLCanvasElement;
  readonly look: () => { colours: WeekColours; hatches: Hatches; density: number; font: string } | null;
  readonly nowMin: () => number;
  readonly headPx: () => number;
  readonly hoveredId: () => string | null;
  readonly timeZone: () => string;
}

/** Paints once per frame at most, whenever anything that is in the picture has changed. */
function createPaint(props: TimelineProps, source: PaintSource): void {
  let frame = 0;
  onCleanup(() => cancelAnimationFrame(frame));
  createEffect(() => {
    const look = source.look();
    const { week, view, hand } = props;
    const [widthPx, heightPx] = [view.widthPx(), view.heightPx()];
    const timeZone = source.timeZone();
    const facts = {
      picture: week.picture(),
      grounds: week.grounds(),
      scale: view.scale(),
      rows: view.rows(),
      timeZone,
      widthPx,
      heightPx,
      headPx: source.headPx(),
      nowMin: source.nowMin(),
      chosenId: week.chosen()?.build.id ?? null,
      hoveredId: source.hoveredId(),
      ghost: hand.ghost(),
      sizeFactor: props.sizeFactor,
    };
    if (!look || widthPx === 0) return;
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(() => {
      const canvas = source.canvas();
      const context = canvas.getContext("2d", { alpha: false });
      if (!context) return;
      fitCanvas(canvas, widthPx, heightPx + facts.headPx, look.density);
      paintWeek({ ...facts, context, ...look }, look.density);
    });
  });
}

function fitCanvas(canvas: HTMLCanvasElement, widthPx: number, heightPx: number, density: number): void {
  const [width, height] = [Math.round(widthPx * density), Math.round(heightPx * density)];
  if (canvas.width === width && canvas.height === height) return;
  canvas.width = width;
  canvas.height = height;
  canvas.style.width = `${widthPx}px`;
  canvas.style.height = `${heightPx}px`;
}

/** Names of the machines in sight, beside their rows. */
function RowNames(props: {
  readonly week: WeekState;
  readonly view: WeekView;
  readonly headPx: number;
}): JSX.Element {
  const places = (): number[] => {
    const { first, end } = rowsInSight(props.view.rows(), props.view.heightPx());
    return Array.from({ length: Math.max(0, end - first) }, (_, at) => first + at);
  };
  return (
    <div class="week-names" aria-hidden="true">
      <div class="week-names-rows" style={{ top: `${props.headPx}px` }}>
        <For each={places()}>
          {(place) => {
            const row = () => props.week.picture().rows[place];
            return (
              <div
                class="week-name"
                style={{
                  top: `${topOf(props.view.rows(), place)}px`,
                  height: `${props.view.rows().heightPx}px`,
                }}
              >
                <b>
                  <NameText text={row()?.machineId ?? ""} />
                </b>
                <NameText text={row()?.name ?? ""} />
              </div>
            );
          }}
        </For>
      </div>
    </div>
  );
}
