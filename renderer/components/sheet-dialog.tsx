import { createSignal, type JSX, Show } from "solid-js";
import { useStores } from "../store/stores.ts";
import { Button } from "./button.tsx";
import { Dialog } from "./dialog.tsx";

interface SheetDialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** the whole page; null: it is still being made */
  readonly html: string | null;
  /** said while it is being made */
  readonly waiting?: string;
  /** of the PDF, without its ending */
  readonly fileStem: string;
  readonly landscape?: boolean;
}

/** A sheet as it will be printed, to be printed or kept as PDF. The sheet is shown without scripts. */
export function SheetDialog(props: SheetDialogProps): JSX.Element {
  const { host, notes } = useStores();
  let frame: HTMLIFrameElement | undefined;
  const [isThere, setThere] = createSignal(false);
  const print = (): void => frame?.contentWindow?.print();
  const keep = async (): Promise<void> => {
    const { html, landscape = false } = props;
    if (html === null) return;
    const answer = await host.call("printPdf", { fileName: `${props.fileStem}.pdf`, html, landscape });
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
      title={props.title}
      size="wide"
      isOpen={props.isOpen}
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
      <Show when={props.html} fallback={<p class="quiet">{props.waiting}</p>}>
        {(html) => (
          <iframe
            ref={(element) => (frame = element)}
            class="sheet-preview"
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
