import type { SaxesTagNS } from "saxes";
import { type Reading, ReadStop } from "./body-reading.ts";

export const CORE_NAMESPACE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
export const PRODUCTION_NAMESPACE = "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";

/** Extensions of 3MF by the steps of their namespaces, and whether they hold geometry outside of meshes (from memory). */
const EXTENSIONS: readonly {
  readonly step: string;
  readonly name: string;
  readonly holdsGeometry: boolean;
}[] = [
  { step: "/production/", name: "production", holdsGeometry: false },
  { step: "/material/", name: "materials", holdsGeometry: false },
  { step: "/trianglesets/", name: "triangle sets", holdsGeometry: false },
  { step: "/securecontent/", name: "secure content", holdsGeometry: false },
  { step: "/slice/", name: "slices", holdsGeometry: true },
  { step: "/beamlattice/", name: "beam lattice", holdsGeometry: true },
  { step: "/volumetric/", name: "volumetric", holdsGeometry: true },
  { step: "/implicit/", name: "implicit functions", holdsGeometry: true },
  { step: "/booleanoperations/", name: "boolean operations", holdsGeometry: true },
  { step: "/displacement/", name: "displacement", holdsGeometry: true },
];

/** Triangle sets only name triangles for other programs: nothing is lost without them. */
const HARMLESS_STEP = "/trianglesets/";

/** Of more unknown namespaces than this nothing is said. */
const MOST_TOLD = 20;

/** Stops the reading where the model needs an extension that is not read here, as the core specification demands. */
export function refuseRequired({ attributes, ns }: SaxesTagNS): void {
  const prefixes = attributes.requiredextensions?.value.trim().split(/\s+/) ?? [];
  for (const prefix of prefixes) {
    const namespace = ns[prefix];
    if (prefix === "" || namespace === CORE_NAMESPACE || namespace?.includes(HARMLESS_STEP)) continue;
    throw new ReadStop(
      "required-extension",
      `it requires the 3MF extension ${extensionWords(namespace ?? prefix)}, which is not read here; ` +
        "save it as plain 3MF (core specification) or STL",
    );
  }
}

/** Judges elements of other namespaces: those that hold geometry cannot be left out, of others one warning is given each. */
export class ForeignElements {
  readonly #told = new Set<string>();
  readonly #reading: Reading;

  constructor(reading: Reading) {
    this.#reading = reading;
  }

  /** An element within an object or the build: what it says about the body is not read. */
  meet(namespace: string): void {
    if (this.#told.has(namespace)) return;
    const extension = EXTENSIONS.find(({ step }) => namespace.includes(step));
    if (extension?.holdsGeometry) {
      throw new ReadStop(
        "extension-geometry",
        `part of its geometry is given by the 3MF extension ${extensionWords(namespace)}, which is not read here; ` +
          "save it as plain meshes",
      );
    }
    if (this.#told.size >= MOST_TOLD) return;
    this.#told.add(namespace);
    if (extension) return;
    this.#reading.warn(
      "unknown-extension",
      `it has data of an unknown 3MF extension (${namespace.slice(0, 200)}); they are not read`,
    );
  }
}

function extensionWords(namespace: string): string {
  const known = EXTENSIONS.find(({ step }) => namespace.includes(step));
  return known ? `"${known.name}" (${namespace})` : namespace.slice(0, 200);
}
