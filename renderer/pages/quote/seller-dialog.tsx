import { createEffect, createSignal, type JSX } from "solid-js";
import { settingsOf } from "../../../core/shop/change.ts";
import type { Seller } from "../../../core/shop/seller.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { Field } from "../../components/field.tsx";
import { useStores } from "../../store/stores.ts";
import { TextLines } from "./text-lines.tsx";

const MOST_DAYS = 3650;
const USUAL: Seller = { name: "", address: "", contact: "", taxNumber: "", terms: "", validDays: 30 };

/** Who offers: what is printed at the head and foot of every quote. */
export function SellerDialog(props: { readonly isOpen: boolean; readonly onClose: () => void }): JSX.Element {
  const { shop, format } = useStores();
  const [seller, setSeller] = createSignal(USUAL);
  const [days, setDays] = createSignal("");
  createEffect(() => {
    if (!props.isOpen) return;
    const now = shop.shop().seller ?? { ...USUAL, name: shop.shop().name };
    setSeller(now);
    setDays(String(now.validDays));
  });
  const set = (part: Partial<Seller>): void => void setSeller((before) => ({ ...before, ...part }));
  const validDays = (): number | null => {
    const value = format().readNumber(days());
    return value !== null && Number.isInteger(value) && value >= 1 && value <= MOST_DAYS ? value : null;
  };
  const keep = (): void => {
    const [name, valid] = [seller().name.trim(), validDays()];
    if (name === "" || valid === null) return;
    const next = { ...settingsOf(shop.shop()), seller: { ...seller(), name, validDays: valid } };
    shop.apply("the seller's data", [{ kind: "settings", settings: next }]);
    props.onClose();
  };
  return (
    <Dialog
      title="Who offers"
      isOpen={props.isOpen}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Cancel</Button>
          <Button look="main" onClick={keep}>
            Keep
          </Button>
        </>
      }
    >
      <Field
        label="Name of the seller"
        dir="auto"
        value={seller().name}
        fault={seller().name.trim() === "" ? "A quote needs a name of who offers." : null}
        onInput={(event) => set({ name: event.currentTarget.value })}
      />
      <TextLines label="Address" value={seller().address} onInput={(address) => set({ address })} />
      <Field
        label="Contact"
        dir="auto"
        value={seller().contact}
        hint="Person, telephone, mail, as printed"
        onInput={(event) => set({ contact: event.currentTarget.value })}
      />
      <Field
        label="Number for tax"
        dir="auto"
        value={seller().taxNumber}
        onInput={(event) => set({ taxNumber: event.currentTarget.value })}
      />
      <TextLines
        label="Terms of payment and delivery"
        value={seller().terms}
        onInput={(terms) => set({ terms })}
      />
      <Field
        label="A new quote holds for"
        unit="days"
        inputMode="numeric"
        value={days()}
        fault={validDays() === null ? `Write a whole number from 1 to ${MOST_DAYS}.` : null}
        onInput={(event) => setDays(event.currentTarget.value)}
      />
    </Dialog>
  );
}
