import { createEffect, createMemo, createSignal, For, type JSX, lazy, Show, Suspense } from "solid-js";
import { Dynamic } from "solid-js/web";
import { type PageEntry, PAGES } from "../../pages/page-list.ts";
import { useStores } from "../../store/stores.ts";
import { NotesCorner } from "../notes-corner.tsx";
import { UnitQuestion } from "../unit-question.tsx";
import { Band } from "./band.tsx";
import { ConflictNotice } from "./conflict-notice.tsx";
import { FootLine } from "./foot-line.tsx";
import { addFrameShortcuts } from "./frame-shortcuts.ts";
import { PlanDialog } from "./plan-dialog.tsx";
import { RecoveryDialog } from "./recovery-dialog.tsx";
import { ShortcutHelp } from "./shortcut-help.tsx";

const VIEWS = new Map(PAGES.map((page) => [page.id, lazy(page.load)]));

/** The frame round the pages: band above, the open page, a foot line below, and what may come over it. */
export function Frame(): JSX.Element {
  const { route, shop, notes } = useStores();
  const [hasHelp, setHelp] = createSignal(false);
  const [isAskingPlan, setAskingPlan] = createSignal(false);
  const page = createMemo(
    (): PageEntry | undefined => PAGES.find(({ id }) => id === route.page()) ?? PAGES[0],
  );
  addFrameShortcuts({ help: () => setHelp(true), plan: () => setAskingPlan(true) });
  createEffect(() => {
    document.title = `${page()?.title ?? ""} · ${shop.shop().name.slice(0, 80)} · Hopper & Spool`;
  });
  return (
    <div class="frame">
      <header>
        <Band onHelp={() => setHelp(true)} onPlan={() => setAskingPlan(true)} />
        <ConflictNotice />
        <For each={shop.opened.notes}>{(sentence) => <p class="notice">{sentence}</p>}</For>
      </header>
      <Suspense fallback={<main class="page" id="page" />}>
        <Show when={page()} keyed>
          {(open) => <Dynamic component={VIEWS.get(open.id)} page={open} />}
        </Show>
      </Suspense>
      <FootLine />
      <NotesCorner notes={notes} />
      <UnitQuestion />
      <ShortcutHelp isOpen={hasHelp()} onClose={() => setHelp(false)} />
      <PlanDialog isOpen={isAskingPlan()} onClose={() => setAskingPlan(false)} />
      <RecoveryDialog />
    </div>
  );
}
