import { Dialog as Root } from "@kobalte/core/dialog";
import { type JSX, Show } from "solid-js";
import { Button } from "./button.tsx";

interface DialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: JSX.Element;
  /** buttons, the main one last */
  readonly foot?: JSX.Element;
  readonly size?: "wide";
  /** true: a decision is needed; it closes only by a button */
  readonly mustDecide?: boolean;
  /** what has the focus when it opens; left out: its first button */
  readonly firstField?: () => HTMLElement | undefined;
}

/** A dialog over the page; Escape closes it and the focus goes back to where it came from. */
export function Dialog(props: DialogProps): JSX.Element {
  const focusFirst = (event: Event): void => {
    const field = props.firstField?.();
    if (!field) return;
    event.preventDefault();
    field.focus();
  };
  return (
    <Root open={props.isOpen} onOpenChange={(isOpen) => !isOpen && !props.mustDecide && props.onClose()}>
      <Root.Portal>
        <Root.Overlay class="veil" />
        <div class="dialog-place">
          <Root.Content class="dialog" data-size={props.size} onOpenAutoFocus={focusFirst}>
            <div class="dialog-head">
              <Root.Title as="h2">{props.title}</Root.Title>
              <Show when={!props.mustDecide}>
                <Button look="plain" icon="close" aria-label="Close" onClick={() => props.onClose()} />
              </Show>
            </div>
            <div class="dialog-body" tabindex="0" role="group" aria-label={props.title}>
              {props.children}
            </div>
            <div class="dialog-foot">{props.foot}</div>
          </Root.Content>
        </div>
      </Root.Portal>
    </Root>
  );
}
