import { createMemo, createUniqueId, For, type JSX, Show } from "solid-js";
import type { Calendar } from "../../../core/shop/calendar.ts";
import { clockOf, DAY_NAMES, type StaffedPiece, staffedHours, staffedPieces } from "./calendar-week.ts";
import { useStores } from "../../store/stores.ts";

const LEFT = 44;
const HOUR_PX = 17;
const ROW_PX = 24;
const TOP = 18;
const WIDTH = LEFT + 24 * HOUR_PX + 8;
const HEIGHT = TOP + 7 * ROW_PX + 2;
/** Enough room for the number of operators. */
const NUMBER_MIN = 50;

/** An ordinary week as a strip of days: staffed time with its operators, hatched where shifts overlap, cut at midnight. */
export function WeekStrip(props: { readonly calendar: Calendar }): JSX.Element {
  const { format } = useStores();
  const id = createUniqueId();
  const pieces = createMemo(() => staffedPieces(props.calendar));
  const words = (): string =>
    DAY_NAMES.map((name, index) => {
      const ofDay = pieces().filter(({ day }) => day === index + 1);
      const spans = ofDay.map(
        ({ fromMin, toMin, operators }) => `${clockOf(fromMin)} to ${clockOf(toMin)} ${operators}`,
      );
      return `${name}: ${spans.length > 0 ? spans.join(", ") : "nobody"}`;
    }).join("; ");
  return (
    <figure class="week-strip">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Operators in a week. ${words()}`}>
        <defs>
          <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse">
            <rect width="6" height="6" class="strip-staffed" />
            <path d="M-1 1l2-2M0 6l6-6M5 7l2-2" class="strip-hatch" />
          </pattern>
        </defs>
        <For each={[0, 6, 12, 18, 24]}>
          {(hour) => (
            <>
              <text class="strip-text" x={x(hour * 60)} y={12} text-anchor="middle">
                {hour}
              </text>
              <path class="strip-grid" d={`M${x(hour * 60)} ${TOP - 3}V${HEIGHT}`} />
            </>
          )}
        </For>
        <For each={DAY_NAMES}>
          {(name, index) => (
            <>
              <text class="strip-text" x={4} y={TOP + index() * ROW_PX + 16}>
                {name}
              </text>
              <rect
                class="strip-day"
                x={LEFT}
                y={TOP + index() * ROW_PX + 2}
                width={24 * HOUR_PX}
                height={ROW_PX - 4}
              />
            </>
          )}
        </For>
        <For each={pieces()}>{(piece) => <Piece piece={piece} hatchId={id} />}</For>
      </svg>
      <figcaption class="quiet">
        {format().number(staffedHours(pieces()), 2)} staffed hours a week; the numbers are operators
        <Show when={pieces().some(({ shifts }) => shifts.length > 1)}>
          , hatched: shifts overlap and the larger number counts
        </Show>
        .
      </figcaption>
    </figure>
  );
}

function Piece(props: { readonly piece: StaffedPiece; readonly hatchId: string }): JSX.Element {
  const { piece } = props;
  const width = (): number => x(piece.toMin) - x(piece.fromMin);
  const top = TOP + (piece.day - 1) * ROW_PX + 2;
  const fill = (): JSX.CSSProperties => (piece.shifts.length > 1 ? { fill: `url(#${props.hatchId})` } : {});
  return (
    <>
      <rect
        class="strip-piece"
        classList={{ "strip-nobody": piece.operators === 0 }}
        style={fill()}
        x={x(piece.fromMin)}
        y={top}
        width={width()}
        height={ROW_PX - 4}
      />
      <Show when={piece.toMin - piece.fromMin >= NUMBER_MIN}>
        <text class="strip-number" x={x((piece.fromMin + piece.toMin) / 2)} y={top + 14.5}>
          {piece.operators}
        </text>
      </Show>
    </>
  );
}

/** Where a minute of the day lies across. */
function x(minute: number): number {
  return LEFT + (minute / 60) * HOUR_PX;
}
