import { strToU8, zipSync } from "fflate";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { csvFiles } from "../../../core/report/csv.ts";
import { weekCalendar } from "../../../core/report/icalendar.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { MS_PER_MIN } from "../../../core/units/conversions.ts";
import type { Host } from "../../../electron/contract.ts";
import type { Notes } from "../../store/notes.ts";
import { saveExport } from "../../store/save-export.ts";

interface ExportSource {
  readonly host: Host;
  readonly notes: Notes;
  readonly shop: () => Shop;
  readonly plan: () => PlanDocument | null;
}

/** Reports as files: all tables of the plan in one archive, and the builds as a calendar. */
export function createWeekExports({ host, notes, shop, plan }: ExportSource) {
  return {
    csv: async (): Promise<void> => {
      const made = plan();
      if (!made) return;
      const files = csvFiles(shop(), made).map(({ name, text }) => [name, strToU8(`\uFEFF${text}`)] as const);
      const bytes = new Uint8Array(zipSync(Object.fromEntries(files)));
      await saveExport(host, notes, fileName(made, "zip"), bytes, "application/zip");
    },
    calendar: async (): Promise<void> => {
      const made = plan();
      if (!made) return;
      if (made.builds.length === 0)
        return notes.tell("The plan has no builds, so there is no calendar to give out.");
      const text = weekCalendar(shop(), made, Math.floor(Date.now() / MS_PER_MIN));
      await saveExport(
        host,
        notes,
        fileName(made, "ics"),
        new Uint8Array(new TextEncoder().encode(text)),
        "text/calendar",
      );
    },
  };
}

function fileName({ plannedFrom }: PlanDocument, ending: string): string {
  return `week-${plannedFrom.slice(0, 10)}.${ending}`;
}
