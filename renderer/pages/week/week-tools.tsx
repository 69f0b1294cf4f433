import { createSignal, type JSX } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { Button } from "../../components/button.tsx";
import { Menu } from "../../components/menu.tsx";
import { useStores } from "../../store/stores.ts";
import { WeekSheetDialog } from "./sheet-dialog.tsx";
import { createWeekExports } from "./week-exports.ts";
import type { WeekView } from "./week-view.ts";

/** Tools of the page: how close to look, and the reports. */
export function WeekTools(props: {
  readonly view: WeekView;
  readonly plan: PlanDocument | null;
}): JSX.Element {
  const { host, notes, shop } = useStores();
  const [sheet, setSheet] = createSignal<"week" | "tasks" | null>(null);
  const exports = createWeekExports({ host, notes, shop: shop.shop, plan: () => props.plan });
  const isEmpty = (): boolean => props.plan === null;
  return (
    <>
      <Button aria-label="Look from farther off" onClick={() => props.view.zoom(-1)}>
        −
      </Button>
      <Button aria-label="Look closer" onClick={() => props.view.zoom(1)}>
        +
      </Button>
      <Button onClick={() => props.view.fit()}>Whole week</Button>
      <Menu
        label="Give out"
        icon="give"
        entries={[
          { label: "Week sheet to print", onSelect: () => setSheet("week"), disabled: isEmpty() },
          { label: "Operators' list to print", onSelect: () => setSheet("tasks"), disabled: isEmpty() },
          {
            label: "Tables as CSV",
            onSelect: () => void exports.csv(),
            disabled: isEmpty(),
            startsGroup: true,
          },
          { label: "Builds as iCalendar", onSelect: () => void exports.calendar(), disabled: isEmpty() },
        ]}
      />
      <WeekSheetDialog kind={sheet()} plan={props.plan} onClose={() => setSheet(null)} />
    </>
  );
}
