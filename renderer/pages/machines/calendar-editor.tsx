import { createMemo, type JSX, Show } from "solid-js";
import type { Calendar } from "../../../core/shop/calendar.ts";
import { listed, whereOf } from "../../../core/shop/finding.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { valueColumns } from "../../components/entry/value-columns.ts";
import { FindingList } from "../../components/finding-list.tsx";
import { Select } from "../../components/select.tsx";
import { createEntryEdits } from "../../store/entry-edits.ts";
import { useStores } from "../../store/stores.ts";
import { copyCalendar, idsOf, newCalendar } from "./machine-rows.ts";
import { ClosureList, ShiftList } from "./shift-list.tsx";
import { WeekStrip } from "./week-strip.tsx";

/** Calendars: when people are there and how many. Starts with the one that serves the chosen machine. */
export function CalendarEditor(): JSX.Element {
  const { shop, selection, format } = useStores();
  const edits = createEntryEdits("calendars");
  const make = valueColumns<Calendar>(format);
  const columns = [
    make.text({
      id: "id",
      title: "Calendar",
      mostChars: 64,
      get: (row) => row.id,
      set: (row, id) => ({ ...row, id }),
    }),
    make.text({ id: "name", title: "Name", get: (row) => row.name, set: (row, name) => ({ ...row, name }) }),
  ];
  const calendars = () => shop.shop().calendars;
  const calendar = createMemo(() => {
    const { calendarId, machineId } = selection.chosen();
    const served = shop.shop().machines.find(({ id }) => id === machineId)?.calendarId;
    return calendars().find(({ id }) => id === (calendarId ?? served)) ?? calendars()[0];
  });
  const users = (id: string): string[] =>
    shop.shop().machines.flatMap((machine) => (machine.calendarId === id ? [machine.id] : []));
  const put = (next: Calendar, what: string): void => {
    const before = calendar();
    if (!before) return;
    selection.choose({ calendarId: next.id });
    edits.put(before.id, next, what);
  };
  const add = (entry: Calendar, what: string): void => {
    shop.apply(what, [{ kind: "put", list: "calendars", entry, at: null }]);
    selection.choose({ calendarId: entry.id });
  };
  const remove = (id: string): void => {
    shop.apply(`removal of calendar ${id}`, [{ kind: "remove", list: "calendars", id, at: null }]);
    selection.choose({ calendarId: null });
  };
  return (
    <>
      <FieldGroup
        title="Calendar"
        tools={
          <>
            <Button icon="add" onClick={() => add(newCalendar(idsOf(calendars())), "new calendar")}>
              New calendar
            </Button>
            <Show when={calendar()}>
              {(shown) => (
                <>
                  <Button
                    icon="copy"
                    onClick={() =>
                      add(copyCalendar(shown(), idsOf(calendars())), `duplicate of calendar ${shown().id}`)
                    }
                  >
                    Duplicate
                  </Button>
                  <Button
                    icon="remove"
                    disabled={users(shown().id).length > 0}
                    onClick={() => remove(shown().id)}
                  >
                    Delete
                  </Button>
                </>
              )}
            </Show>
          </>
        }
      >
        <Show when={calendar()} fallback={<p class="quiet">There is no calendar yet.</p>}>
          {(shown) => (
            <>
              <Select
                label="Shown"
                choices={calendars().map(({ id, name }) => ({ value: id, label: name }))}
                value={shown().id}
                onChange={(calendarId) => selection.choose({ calendarId })}
              />
              <p class="quiet">
                {users(shown().id).length > 0
                  ? `Serves ${listed(users(shown().id))}; as long as it does it cannot be deleted.`
                  : "Serves no machine."}
              </p>
              <EntryFields
                row={shown()}
                rowKey={shown().id}
                columns={columns}
                onPut={(next, column) => put(next, `${column.title.toLowerCase()} of calendar ${next.id}`)}
              />
              <FindingList findings={shop.findingsAt(whereOf("calendars", shown().id))} />
              <WeekStrip calendar={shown()} />
            </>
          )}
        </Show>
      </FieldGroup>
      <Show when={calendar()}>
        {(shown) => (
          <>
            <ShiftList calendar={shown()} onPut={put} />
            <ClosureList calendar={shown()} onPut={put} />
          </>
        )}
      </Show>
    </>
  );
}
