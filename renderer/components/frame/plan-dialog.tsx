import { createEffect, createSignal, type JSX } from "solid-js";
import { usualStart } from "../../store/usual-start.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";
import { Field } from "../field.tsx";

const MOST_DAYS = 183;
const MOST_SECONDS = 3600;

/** Asks what to plan: from when, how many days, how long to search. */
export function PlanDialog(props: { readonly isOpen: boolean; readonly onClose: () => void }): JSX.Element {
  const { format } = useStores();
  const asked = createPlanQuestion(() => props.isOpen);
  const begin = (): void => {
    if (asked.begin()) props.onClose();
  };
  return (
    <Dialog
      title="Plan"
      isOpen={props.isOpen}
      onClose={() => props.onClose()}
      foot={
        <>
          <Button onClick={() => props.onClose()}>Not now</Button>
          <Button look="main" icon="start" onClick={begin}>
            Start planning
          </Button>
        </>
      }
    >
      <Field
        label="Plan from"
        hint={`Time at the works (${format().timeZone})`}
        value={asked.from()}
        fault={asked.start() === null ? "This is no date: write it like 2026-11-30 06:00." : null}
        onInput={(event) => asked.setFrom(event.currentTarget.value)}
      />
      <Field
        label="Days"
        inputmode="numeric"
        value={asked.days()}
        fault={asked.dayCount() === null ? `Write a whole number from 1 to ${MOST_DAYS}.` : null}
        onInput={(event) => asked.setDays(event.currentTarget.value)}
      />
      <Field
        label="Search for"
        unit="s"
        inputmode="numeric"
        hint="Longer may find a cheaper plan. You can stop at any time and keep the best plan found."
        value={asked.seconds()}
        fault={asked.searchS() === null ? `Write a whole number from 1 to ${MOST_SECONDS}.` : null}
        onInput={(event) => asked.setSeconds(event.currentTarget.value)}
      />
    </Dialog>
  );
}

/** The answers as typed and as read; null where they cannot be read. */
function createPlanQuestion(isOpen: () => boolean) {
  const { shop, plan, format, prefs } = useStores();
  const [from, setFrom] = createSignal("");
  const [days, setDays] = createSignal(prefs.remembered("plan days") ?? "7");
  const [seconds, setSeconds] = createSignal(prefs.remembered("plan seconds") ?? "10");
  createEffect(() => {
    if (!isOpen()) return;
    const usual = plan.plan()?.plannedFrom ?? usualStart(shop.shop(), shop.opened.isDemo, Date.now());
    setFrom(format().editedDateTime(usual));
  });
  const wholeIn = (text: string, most: number): number | null => {
    const value = format().readNumber(text);
    return value !== null && Number.isInteger(value) && value >= 1 && value <= most ? value : null;
  };
  const start = (): string | null => format().readInstant(from(), "00:00");
  const dayCount = (): number | null => wholeIn(days(), MOST_DAYS);
  const searchS = (): number | null => wholeIn(seconds(), MOST_SECONDS);
  /** True where planning has begun. */
  const begin = (): boolean => {
    const [at, dayNumber, searchTimeS] = [start(), dayCount(), searchS()];
    if (at === null || dayNumber === null || searchTimeS === null) return false;
    prefs.remember("plan days", days());
    prefs.remember("plan seconds", seconds());
    void plan.start({ from: at, days: dayNumber, seconds: searchTimeS, gapPct: 0, seed: 1 });
    return true;
  };
  return { from, setFrom, days, setDays, seconds, setSeconds, start, dayCount, searchS, begin };
}
