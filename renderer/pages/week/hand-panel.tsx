import { createSignal, type JSX, Show } from "solid-js";
import { Button } from "../../components/button.tsx";
import { Field } from "../../components/field.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { MoveHand } from "./move-hand.ts";
import { verdictSentence } from "./verdict-words.ts";

/** A build in hand: the machine and time that it would go to, what would become of it there, and the decision. */
export function HandPanel(props: { readonly hand: MoveHand; readonly onDone: () => void }): JSX.Element {
  const { shop, format } = useStores();
  const [isUnread, setUnread] = createSignal(false);
  return (
    <Show when={props.hand.carried()}>
      {(now) => (
        <section class="week-hand" aria-label="Move this build">
          <h3>Move {now().entry.build.id}</h3>
          <Select
            label="To machine"
            choices={shop
              .shop()
              .machines.map(({ id, name }) => ({ value: String(id), label: `${id} ${name}` }))}
            value={shop.shop().machines[now().row]?.id ?? ""}
            onChange={(machineId) => {
              const row = shop.shop().machines.findIndex(({ id }) => id === machineId);
              props.hand.carry(row, now().setUpMin);
              props.hand.showPlace();
            }}
          />
          <Field
            label="Set-up from"
            hint={`Time at the works (${format().timeZone}). Alt and arrow keys in the list move it too.`}
            value={format().editedDateTime(props.hand.instant())}
            fault={isUnread() ? "This is no date: write it like 2026-11-30 06:00." : null}
            onChange={(event) => {
              const instant = format().readInstant(event.currentTarget.value, "06:00");
              setUnread(instant === null);
              if (instant === null) return;
              props.hand.carry(now().row, minuteOf(instant, format().timeZone));
              props.hand.showPlace();
            }}
          />
          <p role="status" classList={{ bad: now().refusals.length > 0 }}>
            {verdictSentence(now(), format())}
          </p>
          <Show when={(now().verdict?.plannedBefore.length ?? 0) > 0 && now().refusals.length === 0}>
            <p class="quiet">
              A build put somewhere by hand is committed there. The next plan uses this machine only behind
              it: {now().verdict?.plannedBefore.length} planned{" "}
              {now().verdict?.plannedBefore.length === 1 ? "build" : "builds"} before it would move, unless
              you commit up to here afterwards.
            </p>
          </Show>
          <div class="week-decisions">
            <Button
              onClick={() => {
                props.hand.letGo();
                props.onDone();
              }}
            >
              Leave it
            </Button>
            <Button
              look="main"
              icon="tick"
              disabled={now().refusals.length > 0 || now().verdict === null}
              onClick={() => {
                props.hand.drop();
                props.onDone();
              }}
            >
              Commit it there
            </Button>
          </div>
        </section>
      )}
    </Show>
  );
}
