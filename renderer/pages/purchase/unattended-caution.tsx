import type { JSX } from "solid-js";

/** Who decides about running with nobody there; reckoning it approves nothing. */
export function UnattendedCaution(): JSX.Element {
  return (
    <p class="caution">
      This only reckons what it would be worth: it approves nothing. Whether the machine may run with nobody
      there is decided by the person responsible, by the maker's instructions, local fire and building codes,
      the insurer's terms and the advice of qualified people. Count what they ask for, such as detection and
      extraction, into the price.
    </p>
  );
}
