import { createSignal, type JSX } from "solid-js";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";
import { Field } from "../field.tsx";

const FILE_END = ".shop.json";

/** Asks under which name the shop goes on. */
export function SaveAsDialog(props: { readonly onClose: () => void }): JSX.Element {
  const { file, shop } = useStores();
  const [name, setName] = createSignal(shop.opened.fileName.replace(FILE_END, " copy"));
  const fault = (): string | null =>
    /^[^/\\]{1,180}$/.test(name()) ? null : "Write a name without / or \\.";
  const save = (): void => {
    if (fault() !== null) return;
    props.onClose();
    void file.saveAs(name().endsWith(FILE_END) ? name() : `${name()}${FILE_END}`);
  };
  return (
    <Dialog
      title="Save as"
      isOpen
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Cancel</Button>
          <Button look="main" onClick={save}>
            Save
          </Button>
        </>
      }
    >
      <Field
        label="Name of the file"
        value={name()}
        fault={fault()}
        onInput={(event) => setName(event.currentTarget.value)}
      />
    </Dialog>
  );
}
