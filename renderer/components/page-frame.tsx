import type { JSX } from "solid-js";
import type { PageEntry } from "../pages/page-list.ts";

interface PageFrameProps {
  readonly page: PageEntry;
  /** behind the question in small letters: "120 lines, 3 late" */
  readonly facts?: JSX.Element;
  /** buttons at the right of the heading */
  readonly tools?: JSX.Element;
  /** true: the content fills the height and scrolls by itself */
  readonly fills?: boolean;
  readonly children: JSX.Element;
}

/** The frame of a page: the question it answers as heading, its tools, its content. */
export function PageFrame(props: PageFrameProps): JSX.Element {
  return (
    <main class="page" id="page">
      <div class="page-head">
        <h1>
          {props.page.question}
          <small>{props.facts}</small>
        </h1>
        <div class="page-tools" role="group" aria-label={`Tools of ${props.page.title}`}>
          {props.tools}
        </div>
      </div>
      <div class="page-body" classList={{ fills: props.fills ?? false }}>
        {props.children}
      </div>
    </main>
  );
}
