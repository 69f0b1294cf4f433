import type { JSX } from "solid-js";

/** Strokes of one 20 x 20 square each, drawn for this program. */
const PATHS = {
  undo: "M4 9h8.5a4 4 0 0 1 0 8H9M7 5.5 3.5 9 7 12.5",
  redo: "M16 9H7.5a4 4 0 0 0 0 8H11M13 5.5 16.5 9 13 12.5",
  add: "M10 4v12M4 10h12",
  copy: "M7 7h9v9H7zM4 13V4h9",
  remove: "M5 6h10M8 6V4h4v2M6.2 6l.8 10h6l.8-10",
  take: "M10 3v9M6.5 8.5 10 12l3.5-3.5M4 16h12",
  give: "M10 12V3M6.5 6.5 10 3l3.5 3.5M4 16h12",
  sift: "M3.5 4.5h13L11.5 11v5l-3-1.8V11z",
  close: "M5 5l10 10M15 5 5 15",
  help: "M7.3 7.4A2.8 2.8 0 1 1 11 10c-.8.4-1 .9-1 1.8M10 15.2v.1",
  sun: "M10 6.5a3.5 3.5 0 1 0 0 7a3.5 3.5 0 1 0 0-7M10 2v1.6M10 16.4V18M2 10h1.6M16.4 10H18M4.4 4.4l1.1 1.1M14.5 14.5l1.1 1.1M4.4 15.6l1.1-1.1M14.5 5.5l1.1-1.1",
  moon: "M16 11.8A6.6 6.6 0 0 1 8.2 4a6.6 6.6 0 1 0 7.8 7.8z",
  half: "M10 3.5a6.5 6.5 0 1 0 0 13zM10 3.5a6.5 6.5 0 0 1 0 13",
  rule: "M3 7.5h14v5H3zM6 7.5v2M9 7.5v3M12 7.5v2M15 7.5v3",
  start: "M6.5 4.5v11l9-5.5z",
  stop: "M5.5 5.5h9v9h-9z",
  down: "M5.5 8 10 12.5 14.5 8",
  tick: "M4.5 10.5 8.5 14.5 15.5 6",
  file: "M5 3h6l4 4v10H5zM11 3v4h4",
} as const;

export type IconName = keyof typeof PATHS;

/** A sign beside words; it says nothing to assistive technology. */
export function Icon(props: { readonly name: IconName }): JSX.Element {
  return (
    <svg class="icon" viewBox="0 0 20 20" aria-hidden="true">
      <path d={PATHS[props.name]} />
    </svg>
  );
}
