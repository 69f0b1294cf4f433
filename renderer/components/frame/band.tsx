import { For, type JSX } from "solid-js";
import { PAGES } from "../../pages/page-list.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { NameText } from "../name-text.tsx";
import { FileMenu } from "./file-menu.tsx";
import { LookMenu } from "./look-menu.tsx";
import { PlanLine } from "./plan-line.tsx";

/** The band above every page: whose works it is, the pages, the plan, and what holds everywhere. */
export function Band(props: { readonly onHelp: () => void; readonly onPlan: () => void }): JSX.Element {
  const { shop } = useStores();
  return (
    <div class="band">
      <div class="band-works">
        <Sign />
        <NameText text={shop.shop().name} />
        <FileMenu />
      </div>
      <Rooms />
      <div class="band-end">
        <PlanLine onPlan={() => props.onPlan()} />
        <Button
          look="plain"
          icon="undo"
          disabled={shop.undoLabel() === null}
          aria-label={shop.undoLabel() === null ? "Undo" : `Undo: ${shop.undoLabel()}`}
          onClick={() => shop.undo()}
        />
        <Button
          look="plain"
          icon="redo"
          disabled={shop.redoLabel() === null}
          aria-label={shop.redoLabel() === null ? "Redo" : `Redo: ${shop.redoLabel()}`}
          onClick={() => shop.redo()}
        />
        <LookMenu />
        <Button look="plain" icon="help" aria-label="Keys and help" onClick={() => props.onHelp()} />
      </div>
    </div>
  );
}

function Rooms(): JSX.Element {
  const { route } = useStores();
  const open = (): string => PAGES.find(({ id }) => id === route.page())?.id ?? PAGES[0]?.id ?? "";
  return (
    <nav aria-label="Pages">
      <ul class="rooms">
        <For each={PAGES}>
          {(page) => (
            <li>
              <a
                href={`#${page.id}`}
                title={page.question}
                aria-current={open() === page.id ? "page" : undefined}
              >
                {page.title}
              </a>
            </li>
          )}
        </For>
      </ul>
    </nav>
  );
}

/** The sign of the program: a hopper above, a spool below. */
function Sign(): JSX.Element {
  return (
    <svg width="26" height="26" viewBox="0 0 28 28" role="img" aria-label="Hopper & Spool">
      <path class="mark-hopper" d="M4 3h20l-6.5 8.5v3h-7v-3Z" />
      <circle class="mark-spool" cx="14" cy="20" r="6" />
      <circle class="mark-hole" cx="14" cy="20" r="2" />
    </svg>
  );
}
