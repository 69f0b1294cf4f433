import { createEffect, createMemo, For, type JSX, on, Show } from "solid-js";
import { shortText } from "../../../../core/report/plain-text.ts";
import { Button } from "../../../components/button.tsx";
import { Dialog } from "../../../components/dialog.tsx";
import { Select } from "../../../components/select.tsx";
import { useStores } from "../../../store/stores.ts";
import { FIELDS } from "./guess-columns.ts";
import { ENCODINGS } from "./read-table.ts";
import type { TakeInState } from "./take-in-state.ts";
import type { Twins } from "./take-in.ts";

const NOT_THERE = "";
const MOST_SAMPLES = 3;
const MOST_FAULTS = 500;
const MOST_CHARS = 60;

/** Taking in a table: which column is what, how dates and numbers are read, then what was made of it. */
export function TakeInDialog(props: {
  readonly state: TakeInState;
  readonly onClose: () => void;
}): JSX.Element {
  const { format } = useStores();
  const state = (): TakeInState => props.state;
  let content: HTMLDivElement | undefined;
  // The button that had the focus is gone after each step: the keys must go on to the dialog.
  createEffect(
    on(
      [() => state().share() === null, state().result],
      () => queueMicrotask(() => content?.closest<HTMLElement>("[role=dialog]")?.focus()),
      { defer: true },
    ),
  );
  return (
    <Dialog
      title={`Orders from ${shortText(props.state.table.name, MOST_CHARS)}`}
      isOpen
      size="wide"
      onClose={() => {
        state().stop();
        props.onClose();
      }}
      foot={<Foot state={props.state} onClose={() => props.onClose()} />}
    >
      <div class="dialog-part" ref={content}>
        <Show when={state().result()} fallback={<Mapping state={props.state} />}>
          {(result) => (
            <>
              <p>
                <b>{format().number(result().edit.inserted.length, 0)}</b> new orders,{" "}
                <b>{format().number(result().edit.replaced.length, 0)}</b> put in place of orders that are
                here, <b>{format().number(result().left.length, 0)}</b> left out because they are here
                already.
              </p>
              <Faults state={props.state} />
            </>
          )}
        </Show>
      </div>
    </Dialog>
  );
}

function Mapping(props: { readonly state: TakeInState }): JSX.Element {
  const { format } = useStores();
  const state = (): TakeInState => props.state;
  return (
    <>
      <p>
        {format().number(state().rows().length, 0)} lines below a head. Say which column is what; it is
        remembered for the next table with the same heads.
      </p>
      <div class="take-in-switches">
        <Show when={state().table.encoding !== null}>
          <Select
            label="Letters are written in"
            choices={[...ENCODINGS]}
            value={state().table.encoding ?? "utf-8"}
            onChange={(encoding) => void state().readAgain(encoding)}
          />
        </Show>
        <Select
          label="Numbers look like"
          value={state().language()}
          onChange={state().setLanguage}
          choices={[
            { value: "en-GB", label: "1,234.5" },
            { value: "de-DE", label: "1.234,5" },
          ]}
        />
        <Show when={state().mustAskOrder()}>
          <Select
            label={`"${shortText(state().ambiguousDate(), MOST_CHARS)}" is`}
            value={state().dateOrder() ?? ""}
            onChange={state().setDateOrder}
            choices={[{ value: "", label: "please say which" }, ...state().orderChoices()]}
          />
        </Show>
        <Select
          label="Orders that are here already"
          value={state().twins()}
          onChange={(value) => state().setTwins(value as Twins)}
          choices={[
            { value: "replace", label: "take the table's values" },
            { value: "keep", label: "leave as they are" },
            { value: "rename", label: "add under a new name" },
          ]}
        />
      </div>
      <ColumnTable state={props.state} />
      <Show when={state().share() !== null}>
        <progress value={state().share() ?? 0} max={1} aria-label="Reading the table" />
      </Show>
    </>
  );
}

/** One line for each field of an order: the column of the table it comes from, and what stands there. */
function ColumnTable(props: { readonly state: TakeInState }): JSX.Element {
  const heads = createMemo(() => [
    { value: NOT_THERE, label: "not in the table" },
    ...props.state.heads().map((head, place) => ({
      value: String(place),
      label: shortText(head.trim() === "" ? `column ${place + 1}` : head, MOST_CHARS),
    })),
  ]);
  const samples = (place: number | undefined): string => {
    if (place === undefined) return "";
    const texts = props.state
      .rows()
      .slice(0, 50)
      .map((row) => row[place]?.trim() ?? "");
    return [...new Set(texts)]
      .filter((text) => text !== "")
      .slice(0, MOST_SAMPLES)
      .join("; ");
  };
  return (
    <div class="table-box">
      <table class="table">
        <thead>
          <tr>
            <th scope="col">Of an order</th>
            <th scope="col">Column of the table</th>
            <th scope="col">What stands there</th>
          </tr>
        </thead>
        <tbody>
          <For each={FIELDS}>
            {({ field, title }) => (
              <tr>
                <th scope="row">{title}</th>
                <td>
                  <Select
                    hideLabel
                    label={`Column for ${title}`}
                    choices={heads()}
                    value={String(props.state.map()[field] ?? NOT_THERE)}
                    onChange={(value) =>
                      props.state.setColumn(field, value === NOT_THERE ? null : Number(value))
                    }
                  />
                </td>
                <td>
                  <bdi>{shortText(samples(props.state.map()[field]), MOST_CHARS)}</bdi>
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  );
}

function Faults(props: { readonly state: TakeInState }): JSX.Element {
  const faults = () => props.state.result()?.faults ?? [];
  return (
    <Show when={faults().length > 0} fallback={<p class="well">Every cell could be read.</p>}>
      <p>
        <span class="bad">
          {faults().length} {faults().length === 1 ? "cell" : "cells"} could not be read.
        </span>{" "}
        Nothing is lost: each keeps its text in the grid, marked, until you correct it.
      </p>
      <div class="table-box">
        <table class="table">
          <thead>
            <tr>
              <th scope="col" class="num">
                Line
              </th>
              <th scope="col">Column</th>
              <th scope="col">What is wrong</th>
            </tr>
          </thead>
          <tbody>
            <For each={faults().slice(0, MOST_FAULTS)}>
              {(fault) => (
                <tr>
                  <td class="num">{fault.line}</td>
                  <td>{fault.title}</td>
                  <td>
                    <bdi>{shortText(fault.sentence, 200)}</bdi>
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </div>
      <Show when={faults().length > MOST_FAULTS}>
        <p class="quiet">and {faults().length - MOST_FAULTS} more</p>
      </Show>
    </Show>
  );
}

function Foot(props: { readonly state: TakeInState; readonly onClose: () => void }): JSX.Element {
  const close = (): void => {
    props.state.stop();
    props.onClose();
  };
  return (
    <>
      <Show when={props.state.hint()}>{(sentence) => <span class="field-hint">{sentence()}</span>}</Show>
      <Button onClick={close}>{props.state.share() === null ? "Cancel" : "Stop"}</Button>
      <Show
        when={props.state.result()}
        fallback={
          <Button
            look="main"
            disabled={props.state.hint() !== null || props.state.share() !== null}
            onClick={() => void props.state.read()}
          >
            Read the table
          </Button>
        }
      >
        <Button onClick={() => props.state.back()}>Back</Button>
        <Button
          look="main"
          onClick={() => {
            props.state.apply();
            props.onClose();
          }}
        >
          Take them in
        </Button>
      </Show>
    </>
  );
}
