import { createMemo, createSignal, type JSX, Show } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { weekSheet } from "../../../core/report/html-sheet.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { useStores } from "../../store/stores.ts";

interface SheetDialogProps {
  /** null: closed */
  readonly kind: "week" | "tasks" | null;
  readonly plan: PlanDocument | null;
  readonly onClose: () => void;
}

const TITLES = { week: "Week sheet", tasks: "Operators' list" } as const;

/** A sheet as it will be printed, to be printed or kept as PDF. The sheet is shown without scripts. */
export function SheetDialog(props: SheetDialogProps): JSX.Element {
  const { host, notes, shop } = useStores();
  let frame: HTMLIFrameElement | undefined;
  const [isThere, setThere] = createSignal(false);
  const sheet = createMemo(() =>
    props.kind && props.plan ? weekSheet(shop.shop(), props.plan, props.kind) : null,
  );
  const print = (): void => frame?.contentWindow?.print();
  const keep = async (): Promise<void> => {
    const [html, kind, plan] = [sheet(), props.kind, props.plan];
    if (html === null || kind === null || plan === null) return;
    const fileName = `${kind}-${plan.plannedFrom.slice(0, 10)}.pdf`;
    const answer = await host.call("printPdf", { fileName, html, landscape: true });
    if (!answer.ok) return notes.alarm(answer.trouble.sentence);
    if (answer.value.status === "failed") return notes.alarm(answer.value.sentence);
    if (answer.value.status === "written")
      notes.tell(`Written: ${answer.value.fileName} in ${answer.value.folder}.`);
    if (answer.value.status !== "not-here") return;
    notes.tell("Choose PDF as the printer in the browser's print dialog.");
    print();
  };
  return (
    <Dialog
      title={props.kind ? TITLES[props.kind] : ""}
      size="wide"
      isOpen={props.kind !== null}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Close</Button>
          <Button onClick={() => void keep()}>Keep as PDF</Button>
          <Button look="main" onClick={print}>
            Print
          </Button>
        </>
      }
    >
      <Show when={sheet()}>
        {(html) => (
          <iframe
            ref={(element) => (frame = element)}
            class="week-sheet"
            title="Preview of the sheet"
            // Whoever looks for what Tab may reach looks into frames, and this one is empty until it has loaded.
            tabindex={isThere() ? 0 : -1}
            onLoad={() => setThere(true)}
            sandbox="allow-same-origin allow-modals"
            srcdoc={html()}
          />
        )}
      </Show>
    </Dialog>
  );
}
