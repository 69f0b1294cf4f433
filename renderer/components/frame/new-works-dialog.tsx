import { createSignal, type JSX } from "solid-js";
import { isTimeZone } from "../../../core/shop/instants.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";
import { Field } from "../field.tsx";
import { Select } from "../select.tsx";

/** Asks what a new works needs before anything can be entered: name, time zone, currency, units. */
export function NewWorksDialog(props: { readonly onClose: () => void }): JSX.Element {
  const { file, shop } = useStores();
  const [name, setName] = createSignal("");
  const [timeZone, setTimeZone] = createSignal(
    Intl.DateTimeFormat().resolvedOptions().timeZone || shop.shop().timeZone,
  );
  const [currency, setCurrency] = createSignal(shop.shop().currency);
  const [units, setUnits] = createSignal("metric");
  const faults = () => ({
    name: name().trim() === "" ? "Give the works a name." : null,
    timeZone: isTimeZone(timeZone()) ? null : "There is no such time zone: write it like Europe/Berlin.",
    currency: /^[A-Z]{3}$/.test(currency()) ? null : "Write three capital letters, such as EUR.",
  });
  const make = (): void => {
    if (Object.values(faults()).some((fault) => fault !== null)) return;
    const display =
      units() === "metric"
        ? ({ length: "mm", mass: "kg" } as const)
        : ({ length: "in", mass: "lb" } as const);
    props.onClose();
    void file.newShop({ name: name().trim(), timeZone: timeZone(), currency: currency(), display });
  };
  return (
    <Dialog
      title="New works"
      isOpen
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Cancel</Button>
          <Button look="main" onClick={make}>
            Make it
          </Button>
        </>
      }
    >
      <Field
        label="Name"
        value={name()}
        fault={faults().name}
        onInput={(event) => setName(event.currentTarget.value)}
      />
      <Field
        label="Time zone"
        value={timeZone()}
        fault={faults().timeZone}
        onInput={(event) => setTimeZone(event.currentTarget.value)}
      />
      <Field
        label="Currency"
        value={currency()}
        fault={faults().currency}
        onInput={(event) => setCurrency(event.currentTarget.value.toUpperCase())}
      />
      <Select
        label="Units"
        value={units()}
        onChange={setUnits}
        choices={[
          { value: "metric", label: "mm and kg" },
          { value: "inch", label: "in and lb" },
        ]}
      />
    </Dialog>
  );
}
