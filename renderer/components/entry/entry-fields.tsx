import { createEffect, createSignal, createUniqueId, For, type JSX, Match, on, Show, Switch } from "solid-js";
import type { Finding } from "../../../core/shop/finding.ts";
import { Check, Field } from "../field.tsx";
import { isUnfit } from "../grid/grid-column.ts";
import { Select } from "../select.tsx";
import type { ColumnGroup, ValueColumn } from "./value-columns.ts";

interface EntryFieldsProps<Row> {
  readonly row: Row;
  /** another key: another entry, whose texts are shown afresh */
  readonly rowKey: string;
  readonly columns: readonly ValueColumn<Row>[];
  readonly onPut: (next: Row, column: ValueColumn<Row>) => void;
  readonly findingAt?: ((columnId: string) => Finding | undefined) | undefined;
  /** in front of each label, for assistive technology: "Nozzle n04" */
  readonly group?: string;
}

/** Columns of one entry as labelled fields. A field is taken when it is left or Enter is pressed; Escape brings it back. */
export function EntryFields<Row>(props: EntryFieldsProps<Row>): JSX.Element {
  return (
    <div class="fields" role={props.group ? "group" : undefined} aria-label={props.group}>
      <For each={props.columns}>{(column) => <EntryField {...props} column={column} />}</For>
    </div>
  );
}

function EntryField<Row>(props: EntryFieldsProps<Row> & { readonly column: ValueColumn<Row> }): JSX.Element {
  const put = (text: string): void => {
    const answer = props.column.put(props.row, text);
    if (!isUnfit(answer as object)) props.onPut(answer as Row, props.column);
  };
  return (
    <Switch fallback={<TextField {...props} />}>
      <Match when={props.column.kind === "choice"}>
        <Select
          label={props.column.title}
          choices={props.column.choices?.() ?? []}
          value={props.column.editText?.(props.row) ?? ""}
          onChange={put}
        />
      </Match>
      <Match when={props.column.kind === "tick"}>
        <Check
          label={props.column.title}
          checked={props.column.text(props.row) === "yes"}
          onChange={(isOn) => put(isOn ? "yes" : "no")}
        />
      </Match>
    </Switch>
  );
}

function TextField<Row>(props: EntryFieldsProps<Row> & { readonly column: ValueColumn<Row> }): JSX.Element {
  const text = (): string => (props.column.editText ?? props.column.text)(props.row);
  const [fault, setFault] = createSignal<string | null>(null);
  createEffect(
    on(
      () => [props.rowKey, text()],
      () => setFault(null),
    ),
  );
  const take = (input: HTMLInputElement): void => {
    if (input.value === text()) return void setFault(null);
    const answer = props.column.put(props.row, input.value);
    if (isUnfit(answer as object)) return void setFault((answer as { unfit: string }).unfit);
    props.onPut(answer as Row, props.column);
    setFault(null);
    input.value = text();
  };
  return (
    <Field
      label={props.column.title}
      unit={props.column.unit?.() || undefined}
      fault={fault() ?? errorOf(props.findingAt?.(props.column.id))}
      value={text()}
      inputMode={props.column.align === "end" ? "decimal" : "text"}
      autocomplete="off"
      onChange={(event) => take(event.currentTarget)}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || event.currentTarget.value === text()) return;
        event.stopPropagation();
        event.currentTarget.value = text();
        setFault(null);
      }}
    />
  );
}

function errorOf(finding: Finding | undefined): string | null {
  return finding?.severity === "error" ? finding.sentence : null;
}

interface GroupProps {
  readonly title: string;
  readonly tools?: JSX.Element;
  readonly children: JSX.Element;
}

/** A titled group of fields in a panel. */
export function FieldGroup(props: GroupProps): JSX.Element {
  const id = createUniqueId();
  return (
    <section class="panel" aria-labelledby={id}>
      <div class="panel-head">
        <h3 id={id}>{props.title}</h3>
        <Show when={props.tools}>
          <div class="panel-tools">{props.tools}</div>
        </Show>
      </div>
      {props.children}
    </section>
  );
}

interface EntryGroupsProps<Row> {
  readonly row: Row;
  readonly groups: readonly ColumnGroup<Row>[];
  /** `what` stands after "Undo": "set-up of B1" */
  readonly onPut: (next: Row, what: string) => void;
  readonly findingAt: (row: Row, columnId: string) => Finding | undefined;
}

/** All fields of one entry, group by group. */
export function EntryGroups<Row extends { readonly id: string }>(props: EntryGroupsProps<Row>): JSX.Element {
  return (
    <For each={props.groups}>
      {(group) => (
        <FieldGroup title={group.title}>
          <EntryFields
            row={props.row}
            rowKey={props.row.id}
            columns={group.columns}
            onPut={(next, column) => props.onPut(next, `${column.title.toLowerCase()} of ${next.id}`)}
            findingAt={(columnId) => props.findingAt(props.row, columnId)}
          />
        </FieldGroup>
      )}
    </For>
  );
}
