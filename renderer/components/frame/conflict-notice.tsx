import { type JSX, Show } from "solid-js";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";

/** Says that the shop file is not as this window left it, and offers every way on; nothing is written over silently. */
export function ConflictNotice(): JSX.Element {
  const { file, shop } = useStores();
  const aside = (): string => shop.opened.fileName.replace(".shop.json", " mine.shop.json");
  return (
    <Show when={shop.saving.conflict()}>
      {(conflict) => (
        <div class="notice" data-tone="alarm" role="alert">
          <p>{conflict().sentence}</p>
          <Show when={conflict().reason === "changed"}>
            <Button onClick={() => void file.reload()}>Take the file as it is now</Button>
          </Show>
          <Button onClick={() => void file.saveAs(aside())}>Keep mine under another name</Button>
          <Button onClick={() => void file.overwrite()}>
            {conflict().reason === "changed" ? "Write mine over it (a copy is kept)" : "Write it again"}
          </Button>
        </div>
      )}
    </Show>
  );
}
