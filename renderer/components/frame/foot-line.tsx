import { createMemo, createSignal, type JSX, Show } from "solid-js";
import { type Finding, stepsOf } from "../../../core/shop/finding.ts";
import type { SavedState } from "../../store/saving.ts";
import { PAGES } from "../../pages/page-list.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";
import { FindingList } from "../finding-list.tsx";
import { NameText } from "../name-text.tsx";

/** The line below every page: what is wrong with the data, where the shop lies, whether it is saved. */
export function FootLine(): JSX.Element {
  const { shop } = useStores();
  const [isOpen, setOpen] = createSignal(false);
  const errors = createMemo(() => shop.findings().filter(({ severity }) => severity === "error").length);
  const words = (): string => {
    const warnings = shop.findings().length - errors();
    const parts = [
      ...(errors() > 0 ? [count(errors(), "error")] : []),
      ...(warnings > 0 ? [count(warnings, "warning")] : []),
    ];
    return parts.join(", ");
  };
  return (
    <footer class="foot">
      <Show when={shop.findings().length > 0} fallback={<span>Nothing to correct</span>}>
        <Button look="plain" onClick={() => setOpen(true)} class={errors() > 0 ? "bad" : ""}>
          {words()}
        </Button>
      </Show>
      <NameText text={`${shop.opened.fileName} in ${shop.opened.folder}`} />
      <Saved state={shop.saving.state()} />
      <Dialog title="To correct" isOpen={isOpen()} onClose={() => setOpen(false)} size="wide">
        <FindingList findings={shop.findings()} onOpen={createOpener(() => setOpen(false))} />
      </Dialog>
    </footer>
  );
}

/** Opens the page of what a finding is about and chooses it there. */
function createOpener(close: () => void): (finding: Finding) => void {
  const { route, selection } = useStores();
  return ({ where }) => {
    const [list = "", id = null] = stepsOf(where);
    const keyOf: Readonly<Record<string, string>> = {
      orders: "orderId",
      parts: "partId",
      machines: "machineId",
      calendars: "calendarId",
      feedstocks: "feedstockId",
      builds: "buildId",
    };
    const page = PAGES.find((entry) => entry.id === PAGE_OF_LIST[list]);
    close();
    if (page) route.go(page.id);
    if (keyOf[list]) selection.choose({ [keyOf[list]]: id });
  };
}

const PAGE_OF_LIST: Readonly<Record<string, string>> = {
  orders: "orders",
  parts: "parts",
  machines: "machines",
  calendars: "machines",
  feedstocks: "feedstock",
  builds: "week",
};

function Saved(props: { readonly state: SavedState }): JSX.Element {
  const words = (): string => {
    if (props.state.kind === "saved") return "All edits are saved";
    return props.state.kind === "writing" ? "Saving" : props.state.sentence;
  };
  return (
    <span class="saved" data-state={props.state.kind} role="status">
      {words()}
    </span>
  );
}

function count(number: number, one: string): string {
  return `${number} ${one}${number === 1 ? "" : "s"}`;
}
