import { createSignal, type JSX } from "solid-js";
import { DATE_ORDER_KEY } from "../../store/live-format.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";
import { KeyValues } from "../key-values.tsx";
import { Select } from "../select.tsx";

const THEMES = [
  { value: "system", label: "as the system" },
  { value: "light", label: "light" },
  { value: "dark", label: "dark" },
] as const;
const UNITS = [
  { value: "shop", label: "as the shop file says" },
  { value: "metric", label: "mm and kg" },
  { value: "inch", label: "in and lb" },
] as const;
const LANGUAGES = [
  { value: "", label: "as the system" },
  { value: "en-GB", label: "1,234.5" },
  { value: "de-DE", label: "1.234,5" },
  { value: "fr-FR", label: "1 234,5" },
  { value: "de-CH", label: "1’234.5" },
  { value: "en-IN", label: "1,23,456.7" },
];
const ORDERS = [
  { value: "dmy", label: "day / month / year" },
  { value: "mdy", label: "month / day / year" },
  { value: "ymd", label: "year / month / day" },
];

/** Light or dark, units, and how numbers and dates are written: each switch changes the whole screen at once. */
export function LookMenu(): JSX.Element {
  const { format, prefs } = useStores();
  const [isOpen, setOpen] = createSignal(false);
  return (
    <>
      <Button look="plain" icon="rule" title="Units and look" onClick={() => setOpen(true)}>
        <span class="unseen">Units and look: </span>
        {format().length}, {format().mass}
      </Button>
      <Dialog title="Units and look" isOpen={isOpen()} onClose={() => setOpen(false)}>
        <Select
          label="Units"
          choices={UNITS}
          value={prefs.prefs().units}
          onChange={(value) => prefs.set({ units: pick(UNITS, value) ?? "shop" })}
        />
        <Select
          label="Light or dark"
          choices={THEMES}
          value={prefs.prefs().theme}
          onChange={(value) => prefs.set({ theme: pick(THEMES, value) ?? "system" })}
        />
        <Select
          label="Numbers"
          choices={LANGUAGES}
          value={prefs.prefs().locale ?? ""}
          onChange={(value) => prefs.set({ locale: value === "" ? null : value })}
        />
        <Select
          label="Dates typed with slashes"
          choices={ORDERS}
          value={format().dateOrder}
          onChange={(value) => prefs.remember(DATE_ORDER_KEY, value)}
        />
        <KeyValues
          pairs={[
            { name: "A length", value: format().lengthText(1234.5) },
            { name: "A mass", value: format().massText(12.5) },
            { name: "An amount", value: format().money(1234.5) },
          ]}
        />
      </Dialog>
    </>
  );
}

/** The value where it is one of the choices. */
function pick<Value extends string>(
  choices: readonly { readonly value: Value }[],
  value: string,
): Value | undefined {
  return choices.find((choice) => choice.value === value)?.value;
}
