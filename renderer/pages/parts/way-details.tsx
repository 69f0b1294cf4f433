import { For, type JSX, Show } from "solid-js";
import { sideUp } from "../../../core/shop/direction.ts";
import { FieldGroup } from "../../components/entry/entry-fields.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import type { ChosenWay } from "./ways-table.tsx";

interface WayDetailsProps {
  readonly chosen: ChosenWay;
  readonly onChoose: (chosen: ChosenWay) => void;
}

/** The chosen way: its bead and layers, which side is up, and what a copy costs by copies in a build. */
export function WayDetails(props: WayDetailsProps): JSX.Element {
  const { shop, format } = useStores();
  const route = () => props.chosen.route.route;
  const title = (): string => {
    const { machineIds, feedstockId } = props.chosen.way;
    const machine = shop.shop().machines.find(({ id }) => id === machineIds[0])?.name ?? machineIds[0];
    const grade = shop.shop().feedstocks.find(({ id }) => id === feedstockId)?.name ?? feedstockId;
    return `${machine}, ${grade}`;
  };
  const directions = () =>
    props.chosen.way.routes.map((one) => ({
      value: one.route.orientation,
      label: `${sideUp(one.route.orientation)}, ${format().money(one.costPerCopy)} each`,
    }));
  const choose = (orientation: string): void => {
    const found = props.chosen.way.routes.find((one) => one.route.orientation === orientation);
    if (found) props.onChoose({ way: props.chosen.way, route: found });
  };
  return (
    <FieldGroup title={`Chosen: ${title().slice(0, 90)}`}>
      <Select label="Stands with" choices={directions()} value={route().orientation} onChange={choose} />
      <p>
        Nozzle {route().nozzleId}, layer {format().lengthText(route().layerHeightMm)}, bead{" "}
        {format().lengthText(route().beadWidthMm)}, {format().lengthText(route().heightMm)} high,{" "}
        {format().massText(route().massKgPerCopy)} a copy
        <Show when={route().supportKgPerCopy > 0}>
          , of it {format().massText(route().supportKgPerCopy)} support
        </Show>
        .
      </p>
      <table class="table">
        <caption class="unseen">What a copy costs by copies in a build</caption>
        <thead>
          <tr>
            <th scope="col" class="num">
              Copies in a build
            </th>
            <th scope="col" class="num">
              Build takes
            </th>
            <th scope="col" class="num">
              Each, {format().currency}
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={props.chosen.route.builds}>
            {(build) => (
              <tr>
                <th scope="row" class="num">
                  {format().number(build.copies, 0)}
                </th>
                <td class="num">{format().duration(build.runMin)}</td>
                <td class="num">
                  {Number.isFinite(build.costPerCopy) ? format().amount(build.costPerCopy) : "never succeeds"}
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={route().cautions.length > 0}>
        <ul class="made-list">
          <For each={route().cautions}>{(caution) => <li>{caution}</li>}</For>
        </ul>
      </Show>
    </FieldGroup>
  );
}
