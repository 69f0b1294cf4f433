import { createMemo, type JSX } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { weekSheet } from "../../../core/report/html-sheet.ts";
import { SheetDialog } from "../../components/sheet-dialog.tsx";
import { useStores } from "../../store/stores.ts";

interface WeekSheetDialogProps {
  /** null: closed */
  readonly kind: "week" | "tasks" | null;
  readonly plan: PlanDocument | null;
  readonly onClose: () => void;
}

const TITLES = { week: "Week sheet", tasks: "Operators' list" } as const;

/** The week, or the operators' list, as it will be printed. */
export function WeekSheetDialog(props: WeekSheetDialogProps): JSX.Element {
  const { shop } = useStores();
  const html = createMemo(() =>
    props.kind && props.plan ? weekSheet(shop.shop(), props.plan, props.kind) : null,
  );
  return (
    <SheetDialog
      title={props.kind ? TITLES[props.kind] : ""}
      isOpen={props.kind !== null}
      onClose={() => props.onClose()}
      html={html()}
      fileStem={`${props.kind ?? ""}-${props.plan?.plannedFrom.slice(0, 10) ?? ""}`}
      landscape
    />
  );
}
