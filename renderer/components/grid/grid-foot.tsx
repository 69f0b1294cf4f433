import { createMemo, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import { useStores } from "../../store/stores.ts";
import type { GridState } from "./grid-state.ts";
import { cellCount, rowsOf } from "./ranges.ts";
import { hasRejection, rejectionAt } from "./rejections.ts";
import { Button } from "../button.tsx";

interface GridFootProps<Row> {
  readonly state: GridState<Row>;
  readonly words: readonly [one: string, many: string];
  readonly findingAt: ((row: Row, columnId: string) => Finding | undefined) | undefined;
}

const MOST_CHARS = 300;
/** Above this many cells the sum is left out: it would make choosing slow. */
const MOST_SUMMED = 50_000;

/** The line below a grid: what is wrong with the active cell, how much is chosen and shown, what could not be read. */
export function GridFoot<Row extends { readonly id: string }>(props: GridFootProps<Row>): JSX.Element {
  const { format } = useStores();
  const fault = createMemo(() => faultAt(props));
  const chosen = createMemo(() => chosenWords(props, (value) => format().number(value, 3)));
  const unread = createMemo(() =>
    props.state.rows().flatMap((row, place) => (hasRejection(row) ? [place] : [])),
  );
  const shown = (): string => {
    const all = props.state.rows().length;
    const word = all === 1 ? props.words[0] : props.words[1];
    const number = format().number(all, 0);
    return props.state.count() === all
      ? `${number} ${word}`
      : `${format().number(props.state.count(), 0)} of ${number} ${word}`;
  };
  const goToUnread = (): void => {
    const row = props.state.order().findIndex((place) => place === unread()[0]);
    const entry = props.state.rowAt(row);
    if (!entry) return;
    props.state.goTo({
      row,
      col: Math.max(
        0,
        props.state.columns.findIndex(({ id }) => rejectionAt(entry, id)),
      ),
    });
  };
  return (
    <div class="grid-foot">
      <span>{shown()}</span>
      <Show when={unread().length > 0}>
        <Button look="plain" class="bad" onClick={goToUnread}>
          {unread().length} with cells that could not be read
        </Button>
      </Show>
      <span role="status">
        <Show when={fault()} fallback={chosen()}>
          {(found) => (
            <span class={found().severity === "error" ? "fault" : "heed"}>
              <bdi>{shortText(found().sentence, MOST_CHARS)}</bdi>
            </span>
          )}
        </Show>
      </span>
    </div>
  );
}

function faultAt<Row extends { readonly id: string }>({
  state,
  findingAt,
}: GridFootProps<Row>): { readonly severity: Finding["severity"]; readonly sentence: string } | null {
  const { row, col } = state.active();
  const [entry, column] = [state.rowAt(row), state.columns[col]];
  if (!entry || !column) return null;
  const rejection = rejectionAt(entry, column.id);
  if (rejection) return { severity: "error", sentence: rejection.sentence };
  return findingAt?.(entry, column.id) ?? null;
}

function chosenWords<Row>(
  { state, words }: GridFootProps<Row>,
  numberText: (value: number) => string,
): string {
  const ranges = state.ranges();
  const cells = cellCount(ranges);
  if (cells <= 1) return "";
  const rows = rowsOf(ranges).length;
  const range = ranges.at(-1);
  const column = range && range.left === range.right ? state.columns[range.left] : undefined;
  const amount = column?.isSummed ? column.amount : undefined;
  const parts = [`${numberText(rows)} ${rows === 1 ? words[0] : words[1]} chosen`];
  if (amount && cells <= MOST_SUMMED) {
    const sum = rowsOf(ranges).reduce((total, row) => {
      const entry = state.rowAt(row);
      return total + ((entry && amount(entry)) ?? 0);
    }, 0);
    parts.push(`sum ${numberText(sum)}`);
  }
  return parts.join(", ");
}
