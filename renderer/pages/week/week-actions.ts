import { useStores } from "../../store/stores.ts";
import type { Build } from "../../../core/shop/build.ts";
import { keepsItsPlace } from "../../../core/shop/build-copies.ts";
import {
  commitChanges,
  letGoChanges,
  type Pin,
  pinChanges,
  pinOf,
  plannedBefore,
  putBuild,
} from "./week-edits.ts";
import type { WeekBuild } from "./week-picture.ts";
import type { WeekState } from "./week-state.ts";

/** What a person decides about a build. Every decision is one step of undo. */
export interface WeekActions {
  readonly commitOrLetGo: (entry: WeekBuild) => void;
  readonly pin: (entry: WeekBuild, pin: Pin) => void;
  /** commits a build and every planned one before it on its machine */
  readonly commitUpTo: (entry: WeekBuild) => void;
  /** pins to its machine, or takes that pin off */
  readonly pinMachine: (entry: WeekBuild) => void;
  readonly put: (build: Build) => void;
}

export function createWeekActions(week: WeekState): WeekActions {
  const { shop, notes, format } = useStores();
  const canEdit = (): boolean => {
    if (!week.canEdit())
      notes.tell("This is the new plan: accept it or keep the old one before you change anything.");
    return week.canEdit();
  };
  function pin(entry: WeekBuild, to: Pin): void {
    if (!canEdit()) return;
    const orders = entry.build.items.map(({ orderId }) => orderId).join(", ");
    const words = [to.machineId, to.feedstockId].filter((id) => id !== undefined).join(" and ");
    shop.apply(words ? `pin of ${orders}` : `pin of ${orders} taken off`, pinChanges(shop.shop(), entry, to));
    notes.tell(
      words
        ? `${orders}: pinned to ${words}. The next plan keeps to it.`
        : `${orders}: free again. The next plan chooses machine and feedstock.`,
    );
  }
  return {
    pin,
    pinMachine: (entry) => {
      const { machineId, ...rest } = pinOf(shop.shop(), entry);
      pin(entry, machineId === undefined ? { ...rest, machineId: entry.build.machineId } : rest);
    },
    put: (build) => {
      shop.apply(`move of ${build.id}`, [putBuild(build)]);
      notes.tell(
        `${build.id} stands on ${build.machineId} from ${format().dateTime(build.setUpStart)} and is committed. Costs follow with the next plan.`,
      );
    },
    commitOrLetGo: (entry) => {
      if (!canEdit()) return;
      const { id, state } = entry.build;
      if (state === "running") return notes.tell(`${id} is running: it keeps its place.`);
      if (keepsItsPlace(entry.build)) {
        shop.apply(`${id} let go`, letGoChanges(entry));
        return notes.tell(`${id} is let go: the next plan may move it.`);
      }
      shop.apply(`${id} committed`, commitChanges([entry]));
      const before = plannedBefore(week.picture(), entry).length;
      const warning =
        before === 0
          ? ""
          : ` The next plan uses ${entry.build.machineId} only behind it, so ${before} planned before it would move: commit up to here to keep them.`;
      notes.tell(`${id} is committed: every new plan leaves it where it is.${warning}`);
    },
    commitUpTo: (entry) => {
      if (!canEdit()) return;
      const before = plannedBefore(week.picture(), entry);
      const all = entry.build.state === "planned" ? [...before, entry] : before;
      const { id, machineId } = entry.build;
      if (all.length === 0) return notes.tell(`Everything up to ${id} is committed already.`);
      shop.apply(`${machineId} committed up to ${id}`, commitChanges(all));
      notes.tell(
        `${all.length} ${all.length === 1 ? "build is" : "builds are"} committed on ${machineId}, up to ${id}.`,
      );
    },
  };
}
