import type { JSX } from "solid-js";
import { Menu } from "../../components/menu.tsx";
import { useStores } from "../../store/stores.ts";
import type { WeekActions } from "./week-actions.ts";
import { pinOf } from "./week-edits.ts";
import type { WeekBuild } from "./week-picture.ts";

interface PinChoiceProps {
  readonly entry: WeekBuild;
  readonly actions: WeekActions;
  readonly disabled: boolean;
}

/** Holds the orders of a build to its machine or its feedstock in every new plan, or frees them. */
export function PinChoice(props: PinChoiceProps): JSX.Element {
  const { shop } = useStores();
  const pin = () => pinOf(shop.shop(), props.entry);
  const isFree = (): boolean => pin().machineId === undefined && pin().feedstockId === undefined;
  const entries = () => {
    const { machineId, feedstockId } = props.entry.build;
    return [
      {
        label: `Pin to machine ${machineId}`,
        keys: "P",
        disabled: props.disabled || pin().machineId === machineId,
        onSelect: () => props.actions.pin(props.entry, { ...pin(), machineId }),
      },
      {
        label: `Pin to feedstock ${feedstockId}`,
        disabled: props.disabled || pin().feedstockId === feedstockId,
        onSelect: () => props.actions.pin(props.entry, { ...pin(), feedstockId }),
      },
      {
        label: "Take the pin off",
        startsGroup: true,
        disabled: props.disabled || isFree(),
        onSelect: () => props.actions.pin(props.entry, {}),
      },
    ];
  };
  return <Menu label={isFree() ? "Pin" : "Pinned"} entries={entries()} />;
}
