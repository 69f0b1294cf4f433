import { writeFile } from "node:fs/promises";
import { type LayerTimes, layerTimes } from "../core/estimate/layer-times.ts";
import { layerProfile } from "../core/geometry/layer-profile.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import { displayOf } from "../core/report/display.ts";
import { shortText } from "../core/report/plain-text.ts";
import { profileSvg } from "../core/report/profile-svg.ts";
import { profileText } from "../core/report/profile-text.ts";
import { sideUp, vectorUp } from "../core/shop/direction.ts";
import { measuredStanding } from "../core/shop/directions-up.ts";
import type { Machine } from "../core/shop/machine.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import { UsageError } from "./exit-status.ts";
import type { RankedRoute } from "./part-routes.ts";
import { feedstockName } from "./route-lines.ts";
import { troubleOf } from "./store/file-trouble.ts";

/** The build whose layers are shown. */
export interface ProfileAsked {
  readonly shop: Shop;
  readonly part: Part;
  /** the part's mesh where it is at hand; its layers are cut anew then */
  readonly mesh: Mesh | null;
  readonly machine: Machine;
  readonly best: RankedRoute;
}

const NAME_CHARS = 34;

/** Prints layer time over the height for a terminal, and draws it into an SVG file where one is named. */
export async function showProfile(asked: ProfileAsked, svgPath: string | null): Promise<void> {
  const times = timesOf(asked);
  const title = titleOf(asked);
  const subtitle = subtitleOf(asked);
  console.log(["", title, subtitle, ...profileText(times)].join("\n"));
  if (svgPath === null) return;
  try {
    await writeFile(svgPath, profileSvg({ title, subtitle, times }));
  } catch (error) {
    throw new UsageError(`${svgPath} could not be written: ${troubleOf(error).words}`);
  }
  console.log(`Drawn in ${svgPath}`);
}

function timesOf({ shop, part, mesh, machine, best }: ProfileAsked): LayerTimes {
  const { route } = best.way;
  const feedstock = shop.feedstocks.find(({ id }) => id === route.feedstockId);
  if (!feedstock) throw new RangeError(`no feedstock ${route.feedstockId}`);
  const standing = measuredStanding(part, route.orientation);
  const up = standing && vectorUp(standing);
  const exact = mesh && up ? { exact: layerProfile(mesh, up, route.layerHeightMm) } : {};
  return layerTimes({ part, machine, feedstock, route, ...exact }, best.copies);
}

function titleOf({ part, machine, best }: ProfileAsked): string {
  const copies = best.copies === 1 ? "1 copy" : `${best.copies} copies`;
  return `${shortText(part.name, NAME_CHARS)}: ${copies} on ${shortText(machine.name, NAME_CHARS)}`;
}

function subtitleOf({ shop, best }: ProfileAsked): string {
  const { route } = best.way;
  const { length } = displayOf(shop);
  return `${feedstockName(shop, route.feedstockId)}, nozzle ${route.nozzleId}, layer ${length(route.layerHeightMm)}, bead ${length(route.beadWidthMm)}, ${sideUp(route.orientation)}`;
}
