import { instantFindings } from "./check-instant.ts";
import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import type { Machine, Nozzle } from "./machine.ts";
import { plausibilityFindings } from "./plausible.ts";
import { minuteOrNull, type ShopIndex } from "./shop-index.ts";
import { MACHINE_RANGES, NOZZLE_RANGES } from "./usual-ranges.ts";
import { longestStaffedMin } from "./week-of-shifts.ts";

/** Findings about machines: references, nozzles, numbers, times out of service, running with nobody there. */
export function checkMachines(index: ShopIndex): Finding[] {
  const own = index.shop.machines.flatMap((machine) => {
    const say = about("machines", machine.id);
    return [
      ...calendarFindings(say, machine, index),
      ...loadedFindings(say, machine, index),
      ...platformFindings(say, machine),
      ...machine.nozzles.flatMap((nozzle) => nozzleFindings(say, nozzle)),
      ...nozzleIdFindings(say, machine),
      ...rateFindings(say, machine),
      ...plausibilityFindings(say, machine, MACHINE_RANGES),
      ...machine.outOfService.flatMap((time) => outOfServiceFindings(say, time, index.timeZone)),
    ];
  });
  return [...own, ...unattendedFindings(index.shop.machines)];
}

function calendarFindings(say: EntryFindings, machine: Machine, { calendars }: ShopIndex): Finding[] {
  const calendar = calendars.get(machine.calendarId);
  if (!calendar) {
    return [
      say.error(
        "calendarId",
        "unknown-calendar",
        `there is no calendar ${machine.calendarId}; name one that exists`,
      ),
    ];
  }
  const longestMin = longestStaffedMin(calendar);
  const work = [
    { field: "setUpMin", words: "setting up", min: machine.setUpMin },
    { field: "unloadMin", words: "unloading", min: machine.unloadMin },
  ];
  return work
    .filter(({ min }) => longestMin > 0 && min > longestMin)
    .map(({ field, words, min }) =>
      say.warning(
        field,
        "no-shift-long-enough",
        `${words} takes ${min} min, but calendar ${calendar.id} is never staffed for more than ${longestMin} min in one go; nothing can be planned on it`,
      ),
    );
}

function loadedFindings(say: EntryFindings, machine: Machine, { feedstocks }: ShopIndex): Finding[] {
  if (machine.loaded === null) return [];
  const { feedstockId, nozzleId } = machine.loaded;
  const feedstock = feedstocks.get(feedstockId);
  const asIf = "planned as if nothing were loaded; correct it";
  if (!feedstock)
    return [say.warning("loaded", "unknown-feedstock", `there is no feedstock ${feedstockId}: ${asIf}`)];
  if (feedstock.form !== machine.process) {
    return [
      say.warning(
        "loaded",
        "wrong-form",
        `${feedstockId} comes as ${feedstock.form}, the machine takes ${machine.process}; correct what is loaded`,
      ),
    ];
  }
  if (machine.nozzles.some((nozzle) => nozzle.id === nozzleId)) return [];
  return [say.warning("loaded", "unknown-nozzle", `it has no nozzle ${nozzleId}: ${asIf}`)];
}

function platformFindings(say: EntryFindings, { envelopeMm, edgeMarginMm }: Machine): Finding[] {
  const leftMm = Math.min(envelopeMm.x, envelopeMm.y) - 2 * edgeMarginMm;
  if (leftMm > 0) return [];
  return [
    say.error(
      "edgeMarginMm",
      "no-platform-left",
      `an edge margin of ${edgeMarginMm} mm leaves nothing of the platform; make it smaller`,
    ),
  ];
}

function nozzleIdFindings(say: EntryFindings, machine: Machine): Finding[] {
  const ids = machine.nozzles.map((nozzle) => nozzle.id);
  const doubled = [...new Set(ids.filter((id, place) => ids.indexOf(id) !== place))];
  return doubled.map((id) =>
    say.error("nozzles", "duplicate-nozzle", `two nozzles have the id ${id}; give each its own`),
  );
}

function nozzleFindings(say: EntryFindings, nozzle: Nozzle): Finding[] {
  const { beadWidthMm: bead, layerHeightMm: layer, diameterMm } = nozzle;
  const findings = plausibilityFindings(say, nozzle, NOZZLE_RANGES);
  const name = `nozzle ${nozzle.id}`;
  if (bead.min > bead.max) {
    findings.push(
      say.error(
        "nozzles",
        "min-above-max",
        `${name}: narrowest bead ${bead.min} mm is wider than the widest, ${bead.max} mm; swap or correct them`,
      ),
    );
  }
  if (layer.min > layer.max) {
    findings.push(
      say.error(
        "nozzles",
        "min-above-max",
        `${name}: thinnest layer ${layer.min} mm is above the thickest, ${layer.max} mm; swap or correct them`,
      ),
    );
  } else if (layer.min > bead.max) {
    findings.push(
      say.error(
        "nozzles",
        "layer-above-bead",
        `${name}: the thinnest layer, ${layer.min} mm, is higher than the widest bead, ${bead.max} mm; a bead must be wider than high`,
      ),
    );
  } else if (layer.max > diameterMm) {
    findings.push(
      say.warning(
        "nozzles",
        "layer-above-bore",
        `${name}: layers up to ${layer.max} mm are higher than the bore, ${diameterMm} mm; check both`,
      ),
    );
  }
  return findings;
}

function rateFindings(say: EntryFindings, { hourRate, unattended, unattendedMaxH }: Machine): Finding[] {
  const findings: Finding[] = [];
  if (!unattended && unattendedMaxH !== undefined) {
    findings.push(
      say.warning(
        "unattendedMaxH",
        "no-effect",
        "a longest time with nobody there is given, but it is not approved for that; the limit has no effect",
      ),
    );
  }
  if (hourRate === 0) {
    findings.push(
      say.warning(
        "hourRate",
        "costs-nothing",
        "an hour of it costs nothing, so plans will prefer it; enter its rate",
      ),
    );
  }
  if (typeof hourRate === "number") return findings;
  if (hourRate.residualValue > hourRate.purchasePrice) {
    findings.push(
      say.warning(
        "hourRate",
        "residual-above-purchase",
        `it is worth more at the end (${hourRate.residualValue}) than it cost (${hourRate.purchasePrice}); check both`,
      ),
    );
  }
  if (hourRate.plannedHoursPerYear > HOURS_PER_LEAP_YEAR) {
    findings.push(
      say.error(
        "hourRate",
        "absurd",
        `${hourRate.plannedHoursPerYear} hours in use per year are more than a year has; enter at most ${HOURS_PER_LEAP_YEAR}`,
      ),
    );
  }
  return findings;
}

const HOURS_PER_LEAP_YEAR = 8784;

function outOfServiceFindings(
  say: EntryFindings,
  { from, to }: Machine["outOfService"][number],
  timeZone: string,
): Finding[] {
  const instants = [from, to].flatMap((instant) => instantFindings(say, "outOfService", instant, timeZone));
  const fromMin = minuteOrNull(from, timeZone);
  const toMin = minuteOrNull(to, timeZone);
  if (fromMin === null || toMin === null || fromMin < toMin) return instants;
  return [
    ...instants,
    say.error(
      "outOfService",
      "ends-before-start",
      `out of service from ${from} to ${to} takes no time or ends before it starts; correct one`,
    ),
  ];
}

/** One sentence for all machines that may run with nobody there: who decides, and what to look at. */
function unattendedFindings(machines: readonly Machine[]): Finding[] {
  const running = machines.filter((machine) => machine.unattended);
  if (running.length === 0) return [];
  const unlimited = running.filter((machine) => machine.unattendedMaxH === undefined);
  const limits =
    unlimited.length === 0 ? "" : ` No longest time is set for ${listed(unlimited.map(({ id }) => id))}.`;
  return [
    {
      severity: "warning",
      code: "unattended",
      where: "machines",
      sentence:
        `May run with nobody there: ${listed(running.map(({ id }) => id))}. Whether they may is for the person responsible to decide, ` +
        `by the makers' instructions, local fire and building codes, the insurer's terms and the advice of qualified people; this program does not judge it.${limits}`,
    },
  ];
}
