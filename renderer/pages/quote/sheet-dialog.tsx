import { createMemo, createResource, type JSX } from "solid-js";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { quoteContext } from "../../../core/report/quote-facts.ts";
import { type QuoteReader, quoteSheet } from "../../../core/report/quote-sheet.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { SheetDialog } from "../../components/sheet-dialog.tsx";
import { useStores } from "../../store/stores.ts";
import { bodiesOf } from "./bodies-of.ts";

/** A quote to be shown, and for whom. */
export interface ShownSheet {
  readonly quote: Quote;
  /** null: only the quote itself is known */
  readonly answer: QuoteAnswer | null;
  readonly reader: QuoteReader;
}

interface QuoteSheetDialogProps {
  /** null: closed */
  readonly sheet: ShownSheet | null;
  readonly onClose: () => void;
}

const TITLES: Readonly<Record<QuoteReader, string>> = {
  customer: "For the customer",
  inside: "For us: cost, floor and likelihoods",
};

/** A quote as it will be printed, with its parts drawn. */
export function QuoteSheetDialog(props: QuoteSheetDialogProps): JSX.Element {
  const stores = useStores();
  const [bodies] = createResource(
    () => props.sheet?.quote,
    (quote) => bodiesOf(quote, stores),
  );
  const html = createMemo(() => {
    const shown = props.sheet;
    if (!shown || bodies.loading) return null;
    return quoteSheet(
      quoteContext(stores.shop.shop(), shown.quote, shown.answer),
      shown.reader,
      bodies() ?? new Map(),
    );
  });
  const fileStem = (): string => {
    const { quote, reader } = props.sheet ?? {};
    return `${quote?.id.replace(/[^\w-]+/g, "-") ?? ""}${reader === "inside" ? "-inside" : ""}`;
  };
  return (
    <SheetDialog
      title={props.sheet ? TITLES[props.sheet.reader] : ""}
      isOpen={props.sheet !== null}
      onClose={() => props.onClose()}
      html={html()}
      waiting="The parts are being drawn."
      fileStem={fileStem()}
    />
  );
}
