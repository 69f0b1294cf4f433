import { createMemo, createSignal, For, type JSX, onCleanup, Show } from "solid-js";
import { layerTimes } from "../../../core/estimate/layer-times.ts";
import { profileFacts } from "../../../core/report/profile-facts.ts";
import { profileSvg } from "../../../core/report/profile-svg.ts";
import { sideUp } from "../../../core/shop/direction.ts";
import type { Part } from "../../../core/shop/part.ts";
import { FieldGroup } from "../../components/entry/entry-fields.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import type { ChosenWay } from "./ways-table.tsx";

/** Layer times of the chosen way over the height against the times between which layers come out right. */
export function LayerPlot(props: { readonly part: Part; readonly chosen: ChosenWay }): JSX.Element {
  const { shop, format, prefs } = useStores();
  const [asked, setAsked] = createSignal<number | null>(null);
  const route = () => props.chosen.route.route;
  const copies = (): number => {
    const counts = props.chosen.route.builds.map((build) => build.copies);
    const wanted = asked();
    return wanted !== null && counts.includes(wanted) ? wanted : props.chosen.route.copies;
  };
  const times = createMemo(() => {
    const machine = shop.shop().machines.find(({ id }) => id === route().machineId);
    const feedstock = shop.shop().feedstocks.find(({ id }) => id === route().feedstockId);
    // A way that was found before the last edit may not be one any more: it is found anew right after.
    if (!machine || !feedstock || route().partId !== props.part.id) return null;
    try {
      return layerTimes({ part: props.part, machine, feedstock, route: route() }, copies());
    } catch {
      return null;
    }
  });
  const address = createMemo(() => {
    const found = times();
    if (!found) return null;
    const machine = shop.shop().machines.find(({ id }) => id === route().machineId)?.name ?? "";
    const grade = shop.shop().feedstocks.find(({ id }) => id === route().feedstockId)?.name ?? "";
    const drawn = profileSvg({
      title: `${props.part.name}: ${copies()} in a build on ${machine}`,
      subtitle: `${grade}, nozzle ${route().nozzleId}, layer ${format().lengthText(route().layerHeightMm)}, ${sideUp(route().orientation)}`,
      times: found,
    });
    const url = URL.createObjectURL(
      new Blob([themed(drawn, prefs.prefs().theme)], { type: "image/svg+xml" }),
    );
    onCleanup(() => URL.revokeObjectURL(url));
    return url;
  });
  return (
    <FieldGroup title="Layer times">
      <Select
        label="Copies in a build"
        choices={props.chosen.route.builds.map((build) => ({
          value: String(build.copies),
          label: format().number(build.copies, 0),
        }))}
        value={String(copies())}
        onChange={(value) => setAsked(Number(value))}
      />
      <Show when={address()} fallback={<p class="quiet">Not known for this way.</p>}>
        {(url) => (
          <img
            class="layer-plot"
            src={url()}
            width="600"
            height="440"
            alt={`Layer time over the height. ${profileFacts(times()!).join(" ")}`}
          />
        )}
      </Show>
      <Show when={times()}>
        {(found) => (
          <ul class="made-list">
            <For each={profileFacts(found())}>{(fact) => <li>{fact}</li>}</For>
          </ul>
        )}
      </Show>
    </FieldGroup>
  );
}

/** The drawing follows the system's light or dark; where somebody chose one for the window, that one. */
function themed(svg: string, theme: "system" | "light" | "dark"): string {
  if (theme === "system") return svg;
  return svg.replace(
    "@media (prefers-color-scheme: dark)",
    theme === "dark" ? "@media all" : "@media not all",
  );
}
