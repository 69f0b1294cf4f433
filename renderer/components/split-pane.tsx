import { createSignal, type JSX } from "solid-js";
import { useStores } from "../store/stores.ts";

interface SplitPaneProps {
  /** under which name the width is remembered */
  readonly name: string;
  readonly main: JSX.Element;
  readonly side: JSX.Element;
  readonly sideLabel: string;
  /** width of the panel until somebody moves the line, px */
  readonly usualPx?: number;
}

const LEAST_PX = 220;
const MOST_PX = 900;
const USUAL_PX = 352;
const STEP_PX = 24;
const USUAL_FONT_PX = 16;

/** On large screens letters are larger, and so is the panel. */
function withLetters(widthPx: number): number {
  const fontPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Math.round((widthPx * (fontPx || USUAL_FONT_PX)) / USUAL_FONT_PX);
}

/** A page and a panel beside it; the line between moves by hand and by the arrow keys, and stays where it was put. */
export function SplitPane(props: SplitPaneProps): JSX.Element {
  const { prefs } = useStores();
  const key = (): string => `width of ${props.name}`;
  const [widthPx, setWidthPx] = createSignal(
    Number(prefs.remembered(key()) ?? withLetters(props.usualPx ?? USUAL_PX)),
  );
  const move = (next: number): void => {
    setWidthPx(Math.round(Math.min(MOST_PX, Math.max(LEAST_PX, next))));
    prefs.remember(key(), String(widthPx()));
  };
  let box: HTMLDivElement | undefined;
  const drag = (event: PointerEvent & { currentTarget: HTMLElement }): void => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId) || !box) return;
    move(box.getBoundingClientRect().right - event.clientX);
  };
  return (
    <div class="split" ref={box} style={{ "--side": `${widthPx()}px` }}>
      {props.main}
      <div
        class="split-bar"
        role="separator"
        aria-orientation="vertical"
        aria-label={`Width of ${props.sideLabel}`}
        aria-valuenow={widthPx()}
        aria-valuemin={LEAST_PX}
        aria-valuemax={MOST_PX}
        tabindex="0"
        onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
        onPointerMove={drag}
        onKeyDown={(event) => {
          if (event.key === "ArrowLeft") move(widthPx() + STEP_PX);
          if (event.key === "ArrowRight") move(widthPx() - STEP_PX);
        }}
      />
      <aside class="side" aria-label={props.sideLabel} tabindex="0">
        {props.side}
      </aside>
    </div>
  );
}
