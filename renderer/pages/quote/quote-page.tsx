import { createSignal, type JSX, Show } from "solid-js";
import type { Quote } from "../../../core/shop/quote.ts";
import { Button } from "../../components/button.tsx";
import { Menu } from "../../components/menu.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { addBodyFiles } from "../../store/body-files.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/quote.css";
import { DropZone } from "../orders/drop-zone.tsx";
import type { PageEntry } from "../page-list.ts";
import { AcceptDialog } from "./accept-dialog.tsx";
import { AnswerPanel } from "./answer-panel.tsx";
import { AsOffered } from "./as-offered.tsx";
import { createAsking } from "./asking.ts";
import { createDeciding } from "./deciding.ts";
import { DeclineDialog } from "./decline-dialog.tsx";
import { NewDialog } from "./new-dialog.tsx";
import { linesOfText } from "./lines-in.ts";
import { QuoteFoot } from "./quote-foot.tsx";
import { QuoteList } from "./quote-list.tsx";
import { createQuoteState, type QuoteState } from "./quote-state.ts";
import { emptyLine } from "./request.ts";
import { RequestForm } from "./request-form.tsx";
import { SellerDialog } from "./seller-dialog.tsx";
import { QuoteSheetDialog, type ShownSheet } from "./sheet-dialog.tsx";

/** What price, what date: a request, its answer while it is typed, and what became of earlier ones. */
export default function QuotePage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, notes, shortcuts } = useStores();
  const state = createQuoteState();
  const asking = createAsking(state);
  const deciding = createDeciding(state, asking);
  const [accepting, setAccepting] = createSignal<Quote | null>(null);
  const [isDeclining, setDeclining] = createSignal(false);
  const [isSelling, setSelling] = createSignal(false);
  const [sheet, setSheet] = createSignal<ShownSheet | null>(null);
  const files = createFiles(state);
  let first: HTMLInputElement | undefined;
  const goToRequest = (): void => first?.focus();
  /** the quote that a new one is to be like, while it is asked what becomes of the one typed before; null: nothing is asked */
  const [replacing, setReplacing] = createSignal<{ readonly like: Quote | null } | null>(null);
  const replaceNew = (like: Quote | null): void => {
    setReplacing(null);
    state.startNew(like);
    setTimeout(goToRequest, 0);
  };
  const startNew = (like: Quote | null = null): void => {
    const isReplacing = state.openId() === null || like !== null;
    if (isReplacing && state.hasNew()) return void setReplacing({ like });
    if (isReplacing) return replaceNew(like);
    state.showNew();
    setTimeout(goToRequest, 0);
  };
  const saveFirst = (): void => {
    const like = replacing()?.like ?? null;
    state.showNew();
    setReplacing(null);
    if (deciding.save()) replaceNew(like);
  };
  /** The quote as it is now; null where it cannot be decided, which is said. */
  const readyQuote = (): Quote | null => {
    const hindrance = deciding.hindrance();
    if (hindrance !== null) notes.alarm(hindrance);
    return hindrance === null ? deciding.asItIs() : null;
  };
  const show = (reader: ShownSheet["reader"]): void => {
    const quote = readyQuote();
    const answer = state.canEdit() && !asking.isBehind() ? asking.answer() : null;
    if (quote) setSheet({ quote, answer, reader });
  };
  shortcuts.add([
    { keys: "N", label: "New quote", group: "Quote", run: () => startNew() },
    {
      keys: "Ctrl+Shift+S",
      label: "Save the quote as a draft",
      group: "Quote",
      inFields: true,
      run: () => void deciding.save(),
    },
    {
      keys: "Arrow keys",
      label: "In the list: the quote before or after; Enter goes to its request",
      group: "Quote",
    },
    { keys: "Ctrl+V", label: "In a part: take in lines of a table", group: "Quote" },
  ]);
  const facts = (): string => {
    const open = shop.shop().quotes.filter(({ state: one }) => one === "draft" || one === "sent").length;
    return open === 0 ? "no quote is open" : `${open} ${open === 1 ? "quote is" : "quotes are"} open`;
  };
  return (
    <PageFrame
      page={props.page}
      fills
      facts={facts()}
      tools={
        <>
          <Button icon="add" onClick={() => startNew()}>
            New quote <kbd>N</kbd>
          </Button>
          <Menu
            label="Sheet"
            icon="file"
            entries={[
              { label: "For the customer", onSelect: () => show("customer") },
              { label: "For us, with cost and floor", onSelect: () => show("inside") },
            ]}
          />
          <Button onClick={() => setSelling(true)}>Who offers</Button>
        </>
      }
    >
      <DropZone
        words="Let go: bodies become parts and lines, tables become lines"
        onBodies={files.takeBodies}
        onTables={files.takeTable}
      >
        <div class="quote">
          <QuoteList state={state} onEnter={goToRequest} />
          <RequestForm
            state={state}
            first={(field) => (first = field)}
            foot={
              <QuoteFoot
                state={state}
                deciding={deciding}
                onAccept={() => setAccepting(readyQuote())}
                onDecline={() => readyQuote() && setDeclining(true)}
                onNewLike={startNew}
              />
            }
          />
          <Show
            when={state.canEdit() ? null : state.quote()}
            fallback={<AnswerPanel state={state} asking={asking} />}
          >
            {(quote) => <AsOffered quote={quote()} />}
          </Show>
        </div>
      </DropZone>
      <AcceptDialog quote={accepting()} onClose={() => setAccepting(null)} onAccept={deciding.accept} />
      <DeclineDialog
        quoteId={state.quoteId()}
        isOpen={isDeclining()}
        onClose={() => setDeclining(false)}
        onDecline={deciding.decline}
      />
      <NewDialog
        isOpen={replacing() !== null}
        onClose={() => setReplacing(null)}
        onSave={saveFirst}
        onDrop={() => replaceNew(replacing()?.like ?? null)}
      />
      <SellerDialog isOpen={isSelling()} onClose={() => setSelling(false)} />
      <QuoteSheetDialog sheet={sheet()} onClose={() => setSheet(null)} />
    </PageFrame>
  );
}

/** Files that are dropped on the page. */
function createFiles(state: QuoteState) {
  const stores = useStores();
  const { shop, notes } = stores;
  return {
    takeBodies: async (files: readonly File[]): Promise<void> => {
      const before = new Set(shop.shop().parts.map(({ id }) => id));
      await addBodyFiles(files, stores);
      const fresh = shop.shop().parts.filter(({ id }) => !before.has(id));
      if (fresh.length > 0)
        state.addLines(fresh.map(({ id }) => ({ ...emptyLine(), part: id, quantity: "1" })));
    },
    takeTable: async (file: File): Promise<void> => {
      if (/\.xlsx$/i.test(file.name))
        return notes.alarm("Save the table as CSV first: lines are taken from CSV here.");
      const { lines, faults } = linesOfText(await file.text());
      for (const sentence of faults.slice(0, 3)) notes.alarm(sentence);
      if (lines.length > 0) state.addLines(lines);
    },
  };
}
