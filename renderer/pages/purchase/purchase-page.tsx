import { createSignal, createUniqueId, type JSX, Show } from "solid-js";
import { cashCsv } from "../../../core/report/case-cash.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { MS_PER_MIN } from "../../../core/units/conversions.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { Menu } from "../../components/menu.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { Select } from "../../components/select.tsx";
import { saveExport } from "../../store/save-export.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/machines.css";
import "../../styles/purchase.css";
import type { PageEntry } from "../page-list.ts";
import { AnswerPanel } from "./answer-panel.tsx";
import { CaseEditor } from "./case-editor.tsx";
import { createCaseFields } from "./case-fields.ts";
import { fileStem, giveOutCase, takeInCase } from "./case-files.ts";
import { copyOfCase, newCase } from "./new-case.ts";
import { createPurchaseState, type PurchaseState } from "./purchase-state.ts";
import { CaseSheetDialog } from "./sheet-dialog.tsx";
import { WorkFoot } from "./work-foot.tsx";
import { type CaseAnswered, workingOf } from "./working.ts";

/** Is another machine worth it: a case at the left, its answer at the right. */
export default function PurchasePage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, notes, shortcuts } = useStores();
  const state = createPurchaseState();
  const working = workingOf(shop);
  const fields = createCaseFields();
  const headingId = createUniqueId();
  const [sheet, setSheet] = createSignal<CaseAnswered | null>(null);
  const answered = (): CaseAnswered | null => {
    const shown = state.open();
    return shown && working.answerOf(shown.id);
  };
  const work = (): void => {
    const shown = state.open();
    if (!shown || working.going()) return;
    const error = state.findings().find(({ severity }) => severity === "error");
    if (error) return notes.alarm(error.sentence);
    working.start(shop.shop(), shown);
  };
  const showSheet = (): void => {
    if (answered()) setSheet(answered());
    else notes.alarm("There is no answer to print yet: press Work it out first.");
  };
  const startNew = (): void =>
    state.add(newCase(shop.shop(), Math.floor(Date.now() / MS_PER_MIN)), "new case");
  shortcuts.add([
    { keys: "N", label: "New case", group: "Purchase", run: startNew },
    { keys: "W", label: "Work the case out", group: "Purchase", run: work },
  ]);
  return (
    <PageFrame
      page={props.page}
      fills
      facts={countWords(shop.shop().cases.length)}
      tools={
        <>
          <Button icon="add" onClick={startNew}>
            New case <kbd>N</kbd>
          </Button>
          <CaseMenu state={state} answered={answered()} />
          <Button icon="file" onClick={showSheet}>
            Sheet
          </Button>
        </>
      }
    >
      <Show when={state.open()} fallback={<NoCase onNew={startNew} state={state} />}>
        {(shown) => (
          <div class="purchase">
            <section class="purchase-case" aria-labelledby={headingId}>
              <h2 id={headingId} class="unseen">
                The case
              </h2>
              <CaseChoice state={state} />
              <CaseEditor state={state} purchaseCase={shown()} fields={fields} />
              <WorkFoot state={state} purchaseCase={shown()} working={working} onWork={work} />
            </section>
            <AnswerPanel purchaseCase={shown()} working={working} />
          </div>
        )}
      </Show>
      <CaseSheetDialog answered={sheet()} onClose={() => setSheet(null)} />
    </PageFrame>
  );
}

function countWords(count: number): string {
  if (count === 0) return "";
  return count === 1 ? "1 case" : `${count} cases`;
}

const MOST_NAME_CHARS = 60;

/** Which case is looked at. */
function CaseChoice(props: { readonly state: PurchaseState }): JSX.Element {
  const { shop } = useStores();
  return (
    <Select
      label="Case that is looked at"
      hideLabel
      choices={shop
        .shop()
        .cases.map(({ id, name }) => ({ value: id, label: shortText(name, MOST_NAME_CHARS) }))}
      value={props.state.open()?.id ?? ""}
      onChange={props.state.choose}
    />
  );
}

/** What can be done with the case as a whole. */
function CaseMenu(props: {
  readonly state: PurchaseState;
  readonly answered: CaseAnswered | null;
}): JSX.Element {
  const stores = useStores();
  const { shop, host, notes } = stores;
  const hasNone = (): boolean => props.state.open() === null;
  const copy = (): void => {
    const shown = props.state.open();
    if (shown) props.state.add(copyOfCase(shown, shop.shop()), "copy of a case");
  };
  const giveOut = (): void => {
    const shown = props.state.open();
    if (shown) void giveOutCase(stores, shown);
  };
  const giveOutCash = (): void => {
    const answered = props.answered;
    if (!answered) return notes.alarm("There is no answer to give out yet: press Work it out first.");
    const { purchaseCase, found } = answered;
    const text = cashCsv({ purchaseCase, ...found });
    const fileName = `${fileStem(purchaseCase.id)}-cash.csv`;
    void saveExport(host, notes, fileName, new TextEncoder().encode(text), "text/csv");
  };
  return (
    <Menu
      label="Case"
      entries={[
        { label: "Duplicate", disabled: hasNone(), onSelect: copy },
        { label: "Delete", disabled: hasNone(), onSelect: props.state.remove },
        {
          label: "Take in a case file",
          startsGroup: true,
          onSelect: () => void takeInCase(stores, props.state),
        },
        { label: "Give out this case as a file", disabled: hasNone(), onSelect: giveOut },
        { label: "Give out cash by year as CSV", disabled: hasNone(), onSelect: giveOutCash },
      ]}
    />
  );
}

function NoCase(props: { readonly onNew: () => void; readonly state: PurchaseState }): JSX.Element {
  const stores = useStores();
  return (
    <EmptyState
      title="No case yet"
      actions={
        <>
          <Button look="main" icon="add" onClick={() => props.onNew()}>
            New case
          </Button>
          <Button icon="take" onClick={() => void takeInCase(stores, props.state)}>
            Take in a case file
          </Button>
        </>
      }
    >
      A case asks whether a machine, a shift or buying parts elsewhere is worth its money: candidates against
      a demand, planned week by week without and with each of them.
    </EmptyState>
  );
}
