import { type Accessor, createMemo, createSignal } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { MIN_PER_DAY, MS_PER_MIN } from "../../../core/units/conversions.ts";
import { useStores } from "../../store/stores.ts";
import { usualStart } from "../../store/usual-start.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { type Ground, groundsOf } from "./shades.ts";
import { type WeekBuild, weekPicture, type WeekPicture } from "./week-picture.ts";

/** What the parts of the week page share. */
export interface WeekState {
  /** the plan that is shown: the accepted one, or the new one that waits */
  readonly plan: Accessor<PlanDocument | null>;
  readonly isNew: Accessor<boolean>;
  readonly showNew: (isNew: boolean) => void;
  readonly picture: Accessor<WeekPicture>;
  readonly grounds: Accessor<ReadonlyMap<string, Ground>>;
  readonly chosen: Accessor<WeekBuild | null>;
  /** false: the new plan is shown, which must be accepted before anything of it is edited */
  readonly canEdit: Accessor<boolean>;
  readonly choose: (build: WeekBuild) => void;
  readonly chooseMachine: (machineId: string) => void;
}

const ROOM_MIN = 30 * MIN_PER_DAY;

/** The state of one open week page. */
export function createWeekState(): WeekState {
  const { shop, plan, selection } = useStores();
  const [wantsNew, setWantsNew] = createSignal(true);
  const isNew = createMemo(() => plan.proposal() !== null && wantsNew());
  const shown = createMemo(() => (isNew() ? plan.proposal() : plan.plan()));
  const startMin = minuteOf(usualStart(shop.shop(), shop.opened.isDemo, Date.now()), shop.shop().timeZone);
  const picture = createMemo(() => weekPicture(shop.shop(), shown(), startMin));
  const bounds = createMemo(() => picture().bounds, undefined, {
    equals: (a, b) => a.startMin === b.startMin && a.endMin === b.endMin,
  });
  const calendars = createMemo(() => shop.shop().calendars);
  const machines = createMemo(() => shop.shop().machines);
  const grounds = createMemo(() => {
    const { startMin: from, endMin: to } = bounds();
    const { timeZone } = shop.shop();
    return groundsOf(
      { calendars: calendars(), machines: machines(), timeZone },
      { startMin: Math.floor(from - ROOM_MIN), endMin: Math.ceil(to + ROOM_MIN) },
    );
  });
  const chosen = createMemo(() => picture().byId.get(selection.chosen().buildId ?? "") ?? null);
  return {
    plan: shown,
    isNew,
    showNew: setWantsNew,
    picture,
    grounds,
    chosen,
    canEdit: () => !isNew(),
    choose: ({ build }) => {
      const orderId = build.items[0]?.orderId ?? null;
      const partId = shop.shop().orders.find(({ id }) => id === orderId)?.partId ?? null;
      const { id: buildId, machineId, feedstockId } = build;
      selection.choose({ buildId, machineId, feedstockId, orderId, partId });
    },
    chooseMachine: (machineId) => selection.choose({ machineId, buildId: null }),
  };
}

/** This minute, as an epoch minute. */
export function thisMinute(): number {
  return Date.now() / MS_PER_MIN;
}
