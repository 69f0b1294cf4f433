import { createMemo, type JSX } from "solid-js";
import { caseSheet } from "../../../core/report/case-sheet.ts";
import { SheetDialog } from "../../components/sheet-dialog.tsx";
import { fileStem } from "./case-files.ts";
import type { CaseAnswered } from "./working.ts";

interface CaseSheetDialogProps {
  /** null: closed */
  readonly answered: CaseAnswered | null;
  readonly onClose: () => void;
}

/** The case as the one page that will be printed. */
export function CaseSheetDialog(props: CaseSheetDialogProps): JSX.Element {
  const html = createMemo(() => {
    const shown = props.answered;
    if (!shown) return null;
    const { shop, study, gap, findings } = shown.found;
    return caseSheet({ shop, purchaseCase: shown.purchaseCase, study, gap, findings });
  });
  return (
    <SheetDialog
      title="The case on one page"
      isOpen={props.answered !== null}
      onClose={() => props.onClose()}
      html={html()}
      fileStem={props.answered ? fileStem(props.answered.purchaseCase.id) : ""}
    />
  );
}
