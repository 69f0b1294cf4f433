import { For, type JSX, Show } from "solid-js";
import { shortText } from "../../core/report/plain-text.ts";
import type { Finding } from "../../core/shop/finding.ts";

interface FindingListProps {
  readonly findings: readonly Finding[];
  /** goes to what a finding is about; without it the sentences are plain text */
  readonly onOpen?: ((finding: Finding) => void) | undefined;
}

const MOST_CHARS = 400;
/** More than anybody reads; the rest is counted. */
const MOST_SHOWN = 200;

/** Findings, each with a sign for error (✕) or warning (!) and its sentence. */
export function FindingList(props: FindingListProps): JSX.Element {
  const hidden = (): number => Math.max(0, props.findings.length - MOST_SHOWN);
  return (
    <ul class="findings">
      <For each={props.findings.slice(0, MOST_SHOWN)}>
        {(finding) => (
          <li class="finding" data-severity={finding.severity}>
            <span role="img" aria-label={finding.severity === "error" ? "Error" : "Warning"}>
              {finding.severity === "error" ? "✕" : "!"}
            </span>
            <Show when={props.onOpen} fallback={<bdi>{shortText(finding.sentence, MOST_CHARS)}</bdi>}>
              {(open) => (
                <button type="button" onClick={() => open()(finding)}>
                  <bdi>{shortText(finding.sentence, MOST_CHARS)}</bdi>
                </button>
              )}
            </Show>
          </li>
        )}
      </For>
      <Show when={hidden() > 0}>
        <li class="quiet">and {hidden()} more</li>
      </Show>
    </ul>
  );
}
