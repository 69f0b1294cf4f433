import type { JSX } from "solid-js";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";

interface NewDialogProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onSave: () => void;
  readonly onDrop: () => void;
}

/** Asks what becomes of a new request that was typed and not saved, before another takes its place. */
export function NewDialog(props: NewDialogProps): JSX.Element {
  return (
    <Dialog
      title="The request typed before is not saved"
      isOpen={props.isOpen}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Go on with it</Button>
          <Button onClick={() => props.onDrop()}>Drop it</Button>
          <Button look="main" onClick={() => props.onSave()}>
            Save it as a draft
          </Button>
        </>
      }
    >
      <p>Another one takes its place. What is dropped does not come back with undo.</p>
    </Dialog>
  );
}
