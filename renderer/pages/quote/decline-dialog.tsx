import { createMemo, createSignal, For, type JSX, Show } from "solid-js";
import { quoteRecord } from "../../../core/quote/hit-rate.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { Field } from "../../components/field.tsx";
import { useStores } from "../../store/stores.ts";

interface DeclineDialogProps {
  readonly quoteId: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onDecline: (reason: string) => void;
}

const MOST_REASONS = 6;
const MOST_CHARS = 60;

/** Asks why a quote did not become an order; earlier reasons are offered. */
export function DeclineDialog(props: DeclineDialogProps): JSX.Element {
  const { shop } = useStores();
  const [reason, setReason] = createSignal("");
  const known = createMemo(() =>
    quoteRecord(shop.shop().quotes, shop.shop().currency)
      .reasons.flatMap((one) => (one.reason === "" ? [] : [shortText(one.reason, MOST_CHARS)]))
      .slice(0, MOST_REASONS),
  );
  let field: HTMLInputElement | undefined;
  const decline = (): void => {
    props.onDecline(reason());
    setReason("");
    props.onClose();
  };
  return (
    <Dialog
      title={`Decline ${props.quoteId}`}
      isOpen={props.isOpen}
      firstField={() => field}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Not now</Button>
          <Button look="main" onClick={decline}>
            Declined
          </Button>
        </>
      }
    >
      <Field
        label="Why it did not become an order"
        hint="Price, date, another supplier: equal words are counted together."
        ref={(element: HTMLInputElement) => (field = element)}
        dir="auto"
        autocomplete="off"
        value={reason()}
        onInput={(event) => setReason(event.currentTarget.value)}
        onKeyDown={(event) => event.key === "Enter" && decline()}
      />
      <Show when={known().length > 0}>
        <p class="reason-choices">
          <span class="quiet">Said before:</span>
          <For each={known()}>
            {(one) => (
              <Button look="plain" onClick={() => (setReason(one), field?.focus())}>
                <bdi>{one}</bdi>
              </Button>
            )}
          </For>
        </p>
      </Show>
    </Dialog>
  );
}
