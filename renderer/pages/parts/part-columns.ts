import type { Part } from "../../../core/shop/part.ts";
import { MM_PER_IN } from "../../../core/units/conversions.ts";
import { nameColumns } from "../../components/entry/shared-columns.ts";
import { type ColumnGroup, type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import type { GridColumn } from "../../components/grid/grid-column.ts";
import { useStores } from "../../store/stores.ts";
import {
  buildFields,
  buyOutFields,
  familiesField,
  finishingFields,
  measureFields,
  needFields,
  wallFields,
} from "./part-fields.ts";

/** Columns of parts: those of the grid, and those that stand in the panel in groups. */
export interface PartColumns {
  readonly grid: readonly GridColumn<Part>[];
  readonly groups: readonly ColumnGroup<Part>[];
  /** measures, for a part without a mesh */
  readonly measures: readonly ValueColumn<Part>[];
}

const CM3 = { word: "cm³", mm3: 1000 };
const IN3 = { word: "in³", mm3: MM_PER_IN ** 3 };

/** `ordered` gives the copies of a part that orders ask for. */
export function createPartColumns(ordered: (partId: string) => number): PartColumns {
  const { format } = useStores();
  const make = valueColumns<Part>(format);
  const names = nameColumns(make, { title: "Part", idPx: 120, namePx: 150 });
  const families = familiesField(make);
  const walls = wallFields(make);
  const volumeUnit = () => (format().length === "mm" ? CM3 : IN3);
  const size = (axis: "x" | "y" | "z"): GridColumn<Part> =>
    shown(
      `box/${axis}`,
      axis.toUpperCase(),
      (row) => row.geometry.measures.boxMm[axis],
      (value) => format().lengthNumber(value),
      () => format().length,
    );
  return {
    grid: [
      names.id,
      names.name,
      shown("ordered", "Ordered", ({ id }) => ordered(id), countWords),
      size("x"),
      size("y"),
      size("z"),
      shown(
        "volume",
        "Volume",
        ({ geometry }) => geometry.measures.volumeMm3 / volumeUnit().mm3,
        (value) => format().number(value, 2),
        () => volumeUnit().word,
      ),
      families,
      walls.feature,
      walls.layer,
      walls.infill,
    ],
    groups: [
      { title: "What it is", columns: Object.values(names) },
      { title: "What it must bear", columns: [families, ...needFields(make)] },
      { title: "How it is built", columns: [...Object.values(walls), ...buildFields(make)] },
      { title: "After the build, each copy", columns: finishingFields(make, () => format().currency) },
      { title: "Bought elsewhere", columns: buyOutFields(make) },
    ],
    measures: measureFields(make),
  };

  function countWords(copies: number): string {
    return copies > 0 ? format().number(copies, 0) : "";
  }
}

/** A number of the part that cannot be typed. */
function shown(
  id: string,
  title: string,
  amount: (row: Part) => number,
  text: (value: number) => string,
  unit?: () => string,
): GridColumn<Part> {
  return {
    id,
    title,
    widthPx: 78,
    align: "end",
    ...(unit ? { unit } : {}),
    text: (row) => text(amount(row)),
    amount,
  };
}

const IN_GRID = new Set(["name", "families", "smallestFeatureMm", "maxLayerHeightMm", "infillPct"]);

/** Column of the grid in which a finding about a field is shown. */
export function partColumnOf(field: string): string {
  return IN_GRID.has(field) ? field : "id";
}
