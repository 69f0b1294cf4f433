/** Stands for Node's "module", which the engines' loaders name but never use in a browser. */
export function createRequire(): never {
  throw new Error("there is no require in a browser");
}
