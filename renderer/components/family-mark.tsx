import { createMemo, createUniqueId, type JSX, Show } from "solid-js";
import { type FamilyMark as Mark, hatchPath, marksOfFamilies } from "../../core/report/family-marks.ts";
import { useStores } from "../store/stores.ts";
import { NameText } from "./name-text.tsx";

/** Marks of all families of the shop, by name: letter, colour of the Tol "bright" scheme, hatch. */
export function createFamilyMarks(): () => ReadonlyMap<string, Mark> {
  const { shop } = useStores();
  return createMemo(
    () =>
      new Map(
        marksOfFamilies(shop.shop().feedstocks.map(({ family }) => family)).map((mark) => [
          mark.family,
          mark,
        ]),
      ),
  );
}

/** The mark of a polymer family: its letter on a plate, and its colour with its hatch; the name behind it. */
export function FamilyMark(props: { readonly mark: Mark | undefined; readonly name?: string }): JSX.Element {
  const id = createUniqueId();
  return (
    <span class="family">
      <Show when={props.mark}>
        {(mark) => (
          <svg width="26" height="15" viewBox="0 0 26 15" role="img" aria-label={`Family ${mark().letter}`}>
            <defs>
              <pattern id={id} width="8" height="8" patternUnits="userSpaceOnUse">
                <rect width="8" height="8" fill={mark().colour} />
                <path class="hatch" d={hatchPath(mark())} />
              </pattern>
            </defs>
            <rect class="letter-plate" x="0.5" y="0.5" width="13" height="14" />
            <text class="letter" x="7" y="11.5">
              {mark().letter}
            </text>
            <rect x="13.5" y="0.5" width="12" height="14" fill={`url(#${id})`} />
            <rect class="swatch-edge" x="0.5" y="0.5" width="25" height="14" />
          </svg>
        )}
      </Show>
      <Show when={props.name}>{(name) => <NameText text={name()} />}</Show>
    </span>
  );
}
