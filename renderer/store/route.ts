import { type Accessor, createSignal, onCleanup } from "solid-js";

/** Which page is open. It stands in the address, so that "back" works: #orders. */
export interface Route {
  readonly page: Accessor<string>;
  readonly go: (page: string) => void;
}

/** The route; an address without a page opens `first`. */
export function createRoute(first: string): Route {
  const read = (): string => decodeURIComponent(location.hash.slice(1)) || first;
  const [page, setPage] = createSignal(read());
  const onHash = (): void => void setPage(read());
  window.addEventListener("hashchange", onHash);
  onCleanup(() => window.removeEventListener("hashchange", onHash));
  return { page, go: (next) => void (location.hash = encodeURIComponent(next)) };
}
