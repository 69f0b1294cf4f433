import { createMemo, createResource, createSignal, type JSX, Show } from "solid-js";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { quoteContext } from "../../../core/report/quote-facts.ts";
import { type QuoteReader, quoteSheet } from "../../../core/report/quote-sheet.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { useStores } from "../../store/stores.ts";
import { bodiesOf } from "./bodies-of.ts";

/** A quote to be shown, and for whom. */
export interface ShownSheet {
  readonly quote: Quote;
  /** null: only the quote itself is known */
  readonly answer: QuoteAnswer | null;
  readonly reader: QuoteReader;
}

interface SheetDialogProps {
  /** null: closed */
  readonly sheet: ShownSheet | null;
  readonly onClose: () => void;
}

const TITLES: Readonly<Record<QuoteReader, string>> = {
  customer: "For the customer",
  inside: "For us: cost, floor and likelihoods",
};

/** A quote as it will be printed, to be printed or kept as PDF. The sheet is shown without scripts. */
export function SheetDialog(props: SheetDialogProps): JSX.Element {
  const stores = useStores();
  const { host, notes, shop } = stores;
  let frame: HTMLIFrameElement | undefined;
  const [isThere, setThere] = createSignal(false);
  const [bodies] = createResource(
    () => props.sheet?.quote,
    (quote) => bodiesOf(quote, stores),
  );
  const html = createMemo(() => {
    const shown = props.sheet;
    if (!shown || bodies.loading) return null;
    return quoteSheet(
      quoteContext(shop.shop(), shown.quote, shown.answer),
      shown.reader,
      bodies() ?? new Map(),
    );
  });
  const print = (): void => frame?.contentWindow?.print();
  const keep = async (): Promise<void> => {
    const [text, shown] = [html(), props.sheet];
    if (text === null || shown === null) return;
    const fileName = `${shown.quote.id.replace(/[^\w-]+/g, "-")}${shown.reader === "inside" ? "-inside" : ""}.pdf`;
    const answer = await host.call("printPdf", { fileName, html: text, landscape: false });
    if (!answer.ok) return notes.alarm(answer.trouble.sentence);
    if (answer.value.status === "failed") return notes.alarm(answer.value.sentence);
    if (answer.value.status === "written")
      notes.tell(`Written: ${answer.value.fileName} in ${answer.value.folder}.`);
    if (answer.value.status !== "not-here") return;
    notes.tell("Choose PDF as the printer in the browser's print dialog.");
    print();
  };
  return (
    <Dialog
      title={props.sheet ? TITLES[props.sheet.reader] : ""}
      size="wide"
      isOpen={props.sheet !== null}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Close</Button>
          <Button onClick={() => void keep()}>Keep as PDF</Button>
          <Button look="main" onClick={print}>
            Print
          </Button>
        </>
      }
    >
      <Show when={html()} fallback={<p class="quiet">The parts are being drawn.</p>}>
        {(text) => (
          <iframe
            ref={(element) => (frame = element)}
            class="quote-sheet"
            title="Preview of the sheet"
            // Whoever looks for what Tab may reach looks into frames, and this one is empty until it has loaded.
            tabindex={isThere() ? 0 : -1}
            onLoad={() => setThere(true)}
            sandbox="allow-same-origin allow-modals"
            srcdoc={text()}
          />
        )}
      </Show>
    </Dialog>
  );
}
