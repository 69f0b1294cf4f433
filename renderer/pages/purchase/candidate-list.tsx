import { letterOf } from "../../../core/report/case-view.ts";
import { createEffect, createSignal, createUniqueId, For, type JSX, on, Show } from "solid-js";
import { outlayOf } from "../../../core/shop/check-case-money.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { Candidate } from "../../../core/shop/purchase-case.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields } from "../../components/entry/entry-fields.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Menu } from "../../components/menu.tsx";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { createCandidateFields } from "./case-fields.ts";
import { ChangeEditor } from "./change-editor.tsx";
import type { EditorProps } from "./demand-editor.tsx";
import {
  CHANGE_KINDS,
  CHANGE_WORDS,
  type ChangeKind,
  copyOfCandidate,
  hindranceOf,
  newCandidate,
  newChange,
} from "./new-candidate.ts";

/** What could be bought or done; one of them is open for editing. */
export function CandidateList(props: EditorProps): JSX.Element {
  const { shop, notes } = useStores();
  const [openId, setOpenId] = createSignal<string | null>(props.purchaseCase.candidates[0]?.id ?? null);
  createEffect(
    on(
      () => props.purchaseCase.id,
      () => setOpenId(props.purchaseCase.candidates[0]?.id ?? null),
      { defer: true },
    ),
  );
  const put = (candidates: Candidate[], what: string): void =>
    props.state.put({ ...props.purchaseCase, candidates }, what);
  const add = (candidate: Candidate): void => {
    put([...props.purchaseCase.candidates, candidate], "new candidate");
    setOpenId(candidate.id);
  };
  const addOf = (kind: ChangeKind): void => {
    const hindrance = hindranceOf(kind, shop.shop());
    if (hindrance !== null) return notes.alarm(hindrance);
    add(newCandidate(kind, shop.shop(), props.purchaseCase));
  };
  const aboutAll = (): readonly Finding[] =>
    props.state
      .findingsAt("candidates")
      .filter((finding) => !props.purchaseCase.candidates.some((one) => isAbout(finding, one)));
  return (
    <div class="purchase-stack">
      <div class="purchase-buttons">
        <Menu
          label="Add a candidate"
          icon="add"
          entries={CHANGE_KINDS.map((kind) => ({ label: CHANGE_WORDS[kind], onSelect: () => addOf(kind) }))}
        />
      </div>
      <Show when={props.purchaseCase.candidates.length === 0}>
        <p class="quiet">
          Nothing is named yet. Add what could be bought or done: each candidate is compared with the works as
          it is, and all of them together within the budget.
        </p>
      </Show>
      <FindingList findings={aboutAll()} />
      <For each={props.purchaseCase.candidates.map(({ id }) => id)}>
        {(id, place) => (
          <Show when={props.purchaseCase.candidates.find((one) => one.id === id)}>
            {(candidate) => (
              <CandidateCard
                {...props}
                candidate={candidate()}
                letter={letterOf(place())}
                isOpen={openId() === id}
                onToggle={() => setOpenId((before) => (before === id ? null : id))}
                onCopy={() => add(copyOfCandidate(candidate(), shop.shop(), props.purchaseCase))}
                onRemove={() =>
                  put(
                    props.purchaseCase.candidates.filter((one) => one.id !== id),
                    "removal of a candidate",
                  )
                }
              />
            )}
          </Show>
        )}
      </For>
    </div>
  );
}

/** Sentences name candidates by id and name; those about a machine stand under the id of its candidate. */
function isAbout({ sentence, where }: Finding, { id, name }: Candidate): boolean {
  return sentence.includes(`${id} (${name})`) || where.endsWith(`/candidates/${id}`);
}

interface CardProps extends EditorProps {
  readonly candidate: Candidate;
  readonly letter: string;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
}

function CandidateCard(props: CardProps): JSX.Element {
  const { format } = useStores();
  const id = createUniqueId();
  const columns = createCandidateFields();
  const findings = (): readonly Finding[] =>
    props.state.findingsAt("candidates").filter((finding) => isAbout(finding, props.candidate));
  /** what a closed card keeps to itself */
  const mark = (): string => {
    const errors = findings().filter(({ severity }) => severity === "error").length;
    if (props.isOpen || findings().length === 0) return "";
    return errors > 0 ? "✕ to correct" : "! to heed";
  };
  const outlayText = (): string => {
    const outlay = outlayOf(props.candidate);
    return outlay < 0 ? `brings ${format().money(-outlay)}` : format().money(outlay);
  };
  return (
    <section class="panel candidate" aria-labelledby={`${id}-name`}>
      <h3 class="candidate-head">
        <button
          type="button"
          id={`${id}-name`}
          class="candidate-open"
          aria-expanded={props.isOpen}
          aria-controls={id}
          onClick={() => props.onToggle()}
        >
          <span class="letter-mark">{props.letter}</span>
          <NameText text={props.candidate.name} most={120} />
          <Show when={mark()}>
            {(words) => (
              <span class="candidate-mark" data-severity={words().startsWith("✕") ? "error" : "warning"}>
                {words()}
              </span>
            )}
          </Show>
          <span class="candidate-outlay">{outlayText()}</span>
        </button>
      </h3>
      <div id={id}>
        <Show when={props.isOpen}>
          <div class="purchase-stack candidate-inside">
            <FindingList findings={findings()} />
            <EntryFields
              row={props.candidate}
              rowKey={`${props.purchaseCase.id}/${props.candidate.id}`}
              columns={columns}
              onPut={(next, column) => props.state.putCandidate(next, column.title.toLowerCase())}
            />
            <ChangesOf {...props} />
            <div class="purchase-buttons">
              <Button look="plain" icon="copy" onClick={() => props.onCopy()}>
                Copy
              </Button>
              <Button look="plain" icon="remove" onClick={() => props.onRemove()}>
                Remove candidate {props.letter}
              </Button>
            </div>
          </div>
        </Show>
      </div>
    </section>
  );
}

/** What the candidate changes in the works; it may do several things at once. */
function ChangesOf(props: CardProps): JSX.Element {
  const { shop, notes } = useStores();
  const add = (kind: ChangeKind): void => {
    const hindrance = hindranceOf(kind, shop.shop());
    if (hindrance !== null) return notes.alarm(hindrance);
    const change = newChange(kind, shop.shop(), props.purchaseCase.candidates);
    props.state.putCandidate(
      { ...props.candidate, changes: [...props.candidate.changes, change] },
      "new change",
    );
  };
  return (
    <>
      <For each={props.candidate.changes.map((_, place) => place)}>
        {(place) => (
          <Show when={props.candidate.changes[place]}>
            {(change) => (
              <ChangeEditor
                change={change()}
                rowKey={`${props.purchaseCase.id}/${props.candidate.id}/${place}`}
                purchaseCase={props.purchaseCase}
                onPut={(next, what) =>
                  props.state.putCandidate(
                    { ...props.candidate, changes: props.candidate.changes.with(place, next) },
                    what,
                  )
                }
                onRemove={
                  props.candidate.changes.length === 1
                    ? undefined
                    : () =>
                        props.state.putCandidate(
                          { ...props.candidate, changes: props.candidate.changes.toSpliced(place, 1) },
                          "removal of a change",
                        )
                }
              />
            )}
          </Show>
        )}
      </For>
      <div class="purchase-buttons">
        <Menu
          label="It also changes"
          icon="add"
          look="plain"
          entries={CHANGE_KINDS.map((kind) => ({ label: CHANGE_WORDS[kind], onSelect: () => add(kind) }))}
        />
      </div>
    </>
  );
}
