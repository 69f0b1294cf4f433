import type { JSX } from "solid-js";

interface EmptyStateProps {
  readonly title: string;
  /** what belongs here and how it gets here */
  readonly children: JSX.Element;
  /** buttons, the likeliest first */
  readonly actions?: JSX.Element;
}

/** What stands where there is nothing yet. */
export function EmptyState(props: EmptyStateProps): JSX.Element {
  return (
    <div class="empty">
      <h2>{props.title}</h2>
      <p class="quiet">{props.children}</p>
      <div class="empty-actions">{props.actions}</div>
    </div>
  );
}
