import { createMemo } from "solid-js";
import { machineHourRate } from "../../../core/cost/machine-hour-rate.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import { type ColumnGroup, valueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice, GridColumn } from "../../components/grid/grid-column.ts";
import { useStores } from "../../store/stores.ts";
import { heatFields, identityFields, paceFields, roomFields, timeFields } from "./machine-fields.ts";

/** Columns of machines: those of the grid, and those that stand in the panel in groups. */
export interface MachineColumns {
  readonly grid: readonly GridColumn<Machine>[];
  readonly groups: readonly ColumnGroup<Machine>[];
}

export function createMachineColumns(): MachineColumns {
  const { shop, format } = useStores();
  const make = valueColumns<Machine>(format);
  const calendars = createMemo((): CellChoice[] =>
    shop.shop().calendars.map(({ id, name }) => ({ value: id, label: name })),
  );
  const is = identityFields(make, calendars);
  const room = roomFields(make);
  const heat = heatFields(make);
  const time = timeFields(make);
  const rate = (machine: Machine): number => machineHourRate(machine, shop.shop().costing).perH;
  const loadedWords = ({ loaded }: Machine): string => {
    if (!loaded) return "nothing";
    const grade = shop.shop().feedstocks.find((feedstock) => feedstock.id === loaded.feedstockId);
    return `${grade?.name ?? loaded.feedstockId}, nozzle ${loaded.nozzleId}`;
  };
  const hourRate: GridColumn<Machine> = {
    id: "rate",
    title: "Hour rate",
    widthPx: 104,
    align: "end",
    unit: () => format().currency,
    text: (row) => format().amount(rate(row)),
    amount: rate,
  };
  return {
    grid: [
      is.id,
      is.name,
      is.process,
      room.x,
      room.y,
      room.z,
      is.calendar,
      hourRate,
      { ...readOnlyText("loaded", "Loaded now", loadedWords), widthPx: 170 },
      time.setUp,
      time.unload,
      heat.nozzle,
      heat.chamber,
      is.hardened,
      readOnlyText("unattended", "May run alone", aloneWords),
      readOnlyText("nozzles", "Nozzles", ({ nozzles }) => nozzles.map((nozzle) => nozzle.id).join(", ")),
    ],
    groups: [
      { title: "What it is", columns: Object.values(is) },
      { title: "Room", columns: Object.values(room) },
      { title: "Heat", columns: Object.values(heat) },
      { title: "Times of a build", columns: [time.setUp, time.unload, ...time.others] },
      { title: "Pace and limits", columns: paceFields(make, () => format().length) },
    ],
  };
}

function aloneWords({ unattended, unattendedMaxH }: Machine): string {
  if (!unattended) return "no";
  return unattendedMaxH === undefined ? "approved" : `approved, ${unattendedMaxH} h`;
}

function readOnlyText(id: string, title: string, text: (row: Machine) => string): GridColumn<Machine> {
  return { id, title, widthPx: 110, text };
}

/** Column of the grid in which a finding about a field is shown. */
export function machineColumnOf(field: string): string {
  const [first = ""] = field.split("/");
  if (first === "hourRate") return "rate";
  if (first === "unattendedMaxH") return "unattended";
  if (first === "envelopeMm") return field.includes("/") ? field : "envelopeMm/x";
  return IN_GRID.has(first) ? first : "id";
}

const IN_GRID = new Set([
  "id",
  "name",
  "process",
  "calendarId",
  "loaded",
  "setUpMin",
  "unloadMin",
  "maxNozzleC",
  "chamberC",
  "hardened",
  "unattended",
  "nozzles",
]);
