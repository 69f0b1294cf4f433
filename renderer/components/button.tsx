import { type JSX, splitProps } from "solid-js";
import { Icon, type IconName } from "./icon.tsx";

interface ButtonProps extends JSX.ButtonHTMLAttributes<HTMLButtonElement> {
  /** main: the one thing to do here; plain: no frame until it is pointed at */
  readonly look?: "main" | "plain" | undefined;
  readonly icon?: IconName;
}

/** A button with words, a sign, or both. One with a sign alone needs an aria-label. */
export function Button(props: ButtonProps): JSX.Element {
  const [own, rest] = splitProps(props, ["look", "icon", "children", "class"]);
  return (
    <button
      type="button"
      class={`button ${own.class ?? ""}`}
      data-look={own.look}
      title={rest["aria-label"]}
      {...rest}
    >
      {own.icon && <Icon name={own.icon} />}
      {own.children}
    </button>
  );
}
