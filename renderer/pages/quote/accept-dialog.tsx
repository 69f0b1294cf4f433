import { createEffect, createSignal, For, type JSX, on } from "solid-js";
import { quoteValue } from "../../../core/quote/quote-value.ts";
import type { Quote, QuoteLine } from "../../../core/shop/quote.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { Check } from "../../components/field.tsx";
import { useStores } from "../../store/stores.ts";

interface AcceptDialogProps {
  /** null: closed */
  readonly quote: Quote | null;
  readonly onClose: () => void;
  readonly onAccept: (mustHold: ReadonlySet<string>) => void;
}

/** Asks which promises must hold, before the lines of a quote become orders. */
export function AcceptDialog(props: AcceptDialogProps): JSX.Element {
  const { format } = useStores();
  const [mustHold, setMustHold] = createSignal<ReadonlySet<string>>(new Set());
  createEffect(
    on(
      () => props.quote,
      (quote) =>
        setMustHold(new Set(quote?.lines.flatMap(({ id, allowLate }) => (allowLate ? [] : [id])) ?? [])),
    ),
  );
  const toggle = (id: string, isOn: boolean): void => {
    setMustHold((before) => new Set(isOn ? [...before, id] : [...before].filter((one) => one !== id)));
  };
  const total = (): string => {
    const value = props.quote ? quoteValue(props.quote, format().currency).total : null;
    return value === null ? "" : format().money(value);
  };
  const accept = (): void => {
    props.onAccept(mustHold());
    props.onClose();
  };
  return (
    <Dialog
      title={`Accept ${props.quote?.id ?? ""}`}
      isOpen={props.quote !== null}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Not now</Button>
          <Button look="main" icon="tick" onClick={accept}>
            Make orders of it
          </Button>
        </>
      }
    >
      <p>
        Its lines become orders at the agreed prices, {total()} in all, each due when it is promised. Undo
        takes them back.
      </p>
      <For each={props.quote?.lines}>
        {(line) => (
          <div class="accept-line">
            <LineWords line={line} />
            <Check
              label="This promise must hold"
              checked={mustHold().has(line.id)}
              onChange={(isOn) => toggle(line.id, isOn)}
            />
          </div>
        )}
      </For>
      <p class="quiet">
        A promise that must hold is never broken by a plan: where it cannot be kept, the order is left
        unplanned and told. Others may be late at their price.
      </p>
    </Dialog>
  );
}

function LineWords(props: { readonly line: QuoteLine }): JSX.Element {
  const { shop, format } = useStores();
  const name = (): string =>
    shop.shop().parts.find(({ id }) => id === props.line.partId)?.name ?? props.line.partId;
  return (
    <p>
      <b>
        {format().number(props.line.quantity, 0)} × <bdi>{shortText(name(), 80)}</bdi>
      </b>
      <br />
      {props.line.pricePerPiece === null ? "no price" : `${format().money(props.line.pricePerPiece)} each`},{" "}
      {props.line.promisedAt === null ? "no date" : format().dateTime(props.line.promisedAt)}
    </p>
  );
}
