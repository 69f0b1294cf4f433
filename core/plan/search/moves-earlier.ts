import type { Walk } from "./walk.ts";

/**
 * Lets a build go that waits for the place an earlier plan had for it, so that it may start as early as it can; or holds one
 * again that was let go. Everything else of it stays as it is.
 */
export function holdOrLoosen(walk: Walk): boolean {
  const build = walk.anyBuild();
  if (build < 0) return false;
  const { state, trial, edits } = walk;
  const items = state.itemsOf(build);
  const kind = state.data.earlier.kindOf(items);
  if (kind < 0) return false;
  const made = state.kindOf[build]! < 0 ? trial.addMixed(items) : trial.addLoose(items);
  if (made < 0) return false;
  trial.drop(build);
  edits.replace(build, made);
  edits.apply(trial);
  return true;
}
