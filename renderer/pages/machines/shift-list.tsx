import { For, Index, type JSX, Show } from "solid-js";
import type { Calendar, Shift } from "../../../core/shop/calendar.ts";
import { lastsAllDay, minuteOfDay } from "../../../core/shop/week-of-shifts.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { clockColumn, dayColumn } from "../../components/entry/time-columns.ts";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import { useStores } from "../../store/stores.ts";
import { DAY_NAMES } from "./calendar-week.ts";

export type PutCalendar = (next: Calendar, what: string) => void;

interface CalendarPart {
  readonly calendar: Calendar;
  readonly onPut: PutCalendar;
}

const FIRST_SHIFT: Shift = { days: [1, 2, 3, 4, 5], start: "08:00", end: "16:00", operators: 1 };

/** The regular shifts of a calendar: weekdays on which each starts, its times, its operators. */
export function ShiftList(props: CalendarPart): JSX.Element {
  const columns = createShiftColumns();
  const put = (shifts: Shift[], what: string): void =>
    props.onPut({ ...props.calendar, shifts }, `${what} of ${props.calendar.id}`);
  const toggle = (place: number, shift: Shift, day: number): void => {
    const days = shift.days.includes(day)
      ? shift.days.filter((one) => one !== day)
      : [...shift.days, day].toSorted((a, b) => a - b);
    if (days.length > 0) put(props.calendar.shifts.with(place, { ...shift, days }), "days of a shift");
  };
  return (
    <FieldGroup
      title="Shifts"
      tools={
        <Button
          icon="add"
          onClick={() =>
            put([...props.calendar.shifts, props.calendar.shifts.at(-1) ?? FIRST_SHIFT], "new shift")
          }
        >
          New shift
        </Button>
      }
    >
      <Show when={props.calendar.shifts.length === 0}>
        <p class="quiet">Nobody is ever there: add a shift.</p>
      </Show>
      <Index each={props.calendar.shifts}>
        {(shift, place) => (
          <div class="entry-card" role="group" aria-label={`Shift ${place + 1}`}>
            <div class="day-row" role="group" aria-label={`Days on which shift ${place + 1} starts`}>
              <For each={DAY_NAMES}>
                {(name, index) => (
                  <button
                    type="button"
                    class="button day-button"
                    aria-pressed={shift().days.includes(index() + 1)}
                    onClick={() => toggle(place, shift(), index() + 1)}
                  >
                    {name}
                  </button>
                )}
              </For>
            </div>
            <EntryFields
              row={shift()}
              rowKey={`${props.calendar.id}/${place}`}
              columns={columns}
              onPut={(next) => put(props.calendar.shifts.with(place, next), "shift")}
            />
            <div class="entry-card-head">
              <span class="quiet">{endWords(shift())}</span>
              <Button
                look="plain"
                icon="remove"
                onClick={() => put(props.calendar.shifts.toSpliced(place, 1), "removal of a shift")}
              >
                Remove shift {place + 1}
              </Button>
            </div>
          </div>
        )}
      </Index>
    </FieldGroup>
  );
}

type Closure = Calendar["closures"][number];

/** Days on which the works is shut. */
export function ClosureList(props: CalendarPart): JSX.Element {
  const { plan } = useStores();
  const columns = createClosureColumns();
  const put = (closures: Closure[], what: string): void =>
    props.onPut({ ...props.calendar, closures }, `${what} of ${props.calendar.id}`);
  const add = (): void => {
    const day =
      props.calendar.closures.at(-1)?.to ??
      plan.plan()?.plannedFrom.slice(0, 10) ??
      new Date().toISOString().slice(0, 10);
    put([...props.calendar.closures, { from: day, to: day, reason: "" }], "new closure");
  };
  return (
    <FieldGroup
      title="Closed days"
      tools={
        <Button icon="add" onClick={add}>
          New closure
        </Button>
      }
    >
      <Show when={props.calendar.closures.length === 0}>
        <p class="quiet">No closed days are set. On a closed day nobody is there and no machine runs.</p>
      </Show>
      <Index each={props.calendar.closures}>
        {(closure, place) => (
          <div class="entry-card">
            <EntryFields
              row={closure()}
              rowKey={`${props.calendar.id}/${place}`}
              columns={columns}
              group={`Closure ${place + 1}`}
              onPut={(next) => put(props.calendar.closures.with(place, next), "closure")}
            />
            <div>
              <Button
                look="plain"
                icon="remove"
                onClick={() => put(props.calendar.closures.toSpliced(place, 1), "removal of a closure")}
              >
                Remove closure {place + 1}
              </Button>
            </div>
          </div>
        )}
      </Index>
    </FieldGroup>
  );
}

function endWords(shift: Shift): string {
  if (lastsAllDay(shift)) return "Ends when it starts: read as 24 hours.";
  return minuteOfDay(shift.end) < minuteOfDay(shift.start) ? "Passes midnight: ends on the next day." : "";
}

function createShiftColumns(): ValueColumn<Shift>[] {
  const { format } = useStores();
  return [
    clockColumn<Shift>({
      id: "start",
      title: "Starts",
      get: (row) => row.start,
      set: (row, start) => ({ ...row, start }),
    }),
    clockColumn<Shift>({
      id: "end",
      title: "Ends",
      get: (row) => row.end,
      set: (row, end) => ({ ...row, end }),
    }),
    valueColumns<Shift>(format).number({
      id: "operators",
      title: "Operators",
      isWhole: true,
      get: (row) => row.operators,
      set: (row, operators) => ({ ...row, operators }),
    }),
  ];
}

function createClosureColumns(): ValueColumn<Closure>[] {
  const { format } = useStores();
  return [
    dayColumn<Closure>(format, {
      id: "from",
      title: "From",
      get: (row) => row.from,
      set: (row, from) => ({ ...row, from, to: row.to < from ? from : row.to }),
    }),
    dayColumn<Closure>(format, {
      id: "to",
      title: "To and with",
      get: (row) => row.to,
      set: (row, to) => ({ ...row, to }),
    }),
    valueColumns<Closure>(format).text({
      id: "reason",
      title: "Reason",
      isOptional: true,
      get: (row) => row.reason,
      set: (row, reason) => ({ ...row, reason }),
    }),
  ];
}
