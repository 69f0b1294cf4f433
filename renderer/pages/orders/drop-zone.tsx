import { createSignal, type JSX, onCleanup, onMount, Show } from "solid-js";
import { addBodyFiles, isBodyFile } from "../../store/body-files.ts";
import { useStores } from "../../store/stores.ts";

interface DropZoneProps {
  readonly onTables: (file: File) => void;
  /** what becomes of bodies; left out: parts of the shop */
  readonly onBodies?: (files: readonly File[]) => void;
  /** what is said while something is held over the page */
  readonly words?: string;
  readonly children: JSX.Element;
}

/** Takes files that are dropped anywhere on the page: bodies become parts, tables become orders. */
export function DropZone(props: DropZoneProps): JSX.Element {
  const stores = useStores();
  const [isOver, setOver] = createSignal(false);
  const takeBodies = (files: readonly File[]): void =>
    props.onBodies ? props.onBodies(files) : void addBodyFiles(files, stores);
  const over = (event: DragEvent): void => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    setOver(true);
  };
  const leave = (event: DragEvent): void => {
    if (event.relatedTarget === null) setOver(false);
  };
  const drop = (event: DragEvent): void => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    setOver(false);
    const files = [...(event.dataTransfer?.files ?? [])];
    const bodies = files.filter(isBodyFile);
    const tables = files.filter(({ name }) => /\.(csv|tsv|txt|xlsx)$/i.test(name));
    if (bodies.length > 0) takeBodies(bodies);
    if (tables[0]) props.onTables(tables[0]);
    const unknown = files.length - bodies.length - tables.length;
    if (unknown > 0) stores.notes.alarm("Only STL, 3MF, CSV and XLSX files can be dropped here.");
  };
  onMount(() => {
    document.addEventListener("dragover", over);
    document.addEventListener("dragleave", leave);
    document.addEventListener("drop", drop);
  });
  onCleanup(() => {
    document.removeEventListener("dragover", over);
    document.removeEventListener("dragleave", leave);
    document.removeEventListener("drop", drop);
  });
  return (
    <>
      {props.children}
      <Show when={isOver()}>
        <div class="drop-veil">{props.words ?? "Let go: bodies become parts, tables become orders"}</div>
      </Show>
    </>
  );
}

function hasFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes("Files") ?? false;
}
