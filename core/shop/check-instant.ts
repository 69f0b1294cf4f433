import type { EntryFindings, Finding } from "./finding.ts";
import { instantOf, isInstant, localReading, minuteOf } from "./instants.ts";

/**
 * What is to be said about one instant: an error where there is no such date or time, a warning with how it is read where
 * the clocks skip the local time or show it twice.
 * Example: "2026-03-29T02:30" in Europe/Berlin: "is skipped when the clocks change: read as 2026-03-29T03:30:00+02:00".
 */
export function instantFindings(
  say: EntryFindings,
  field: string,
  instant: string | undefined,
  timeZone: string,
): Finding[] {
  if (instant === undefined) return [];
  if (!isInstant(instant)) {
    return [
      say.error(field, "no-such-date", `${field} ${instant} is no date and time that exists; correct it`),
    ];
  }
  const reading = localReading(instant, timeZone);
  if (reading === "once") return [];
  const readAs = instantOf(minuteOf(instant, timeZone), timeZone);
  const why =
    reading === "skipped"
      ? `is skipped when the clocks go forward: read as ${readAs}`
      : `comes twice when the clocks go back: the first is meant, ${readAs}`;
  return [
    say.warning(
      field,
      `local-time-${reading}`,
      `${field} ${instant} ${why}; write it with its offset to be sure`,
    ),
  ];
}
