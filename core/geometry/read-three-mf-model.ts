import type { SaxesTagNS } from "saxes";
import { warnWithoutArea } from "./bad-triangles.ts";
import { type Reading, ReadStop, tooManyTriangles } from "./body-reading.ts";
import { CORE_NAMESPACE, ForeignElements, PRODUCTION_NAMESPACE, refuseRequired } from "./extensions.ts";
import { type LengthUnit, LENGTH_UNITS, lengthUnit } from "./length-unit.ts";
import { MeshGatherer } from "./mesh-gatherer.ts";
import { MOST_ENTRIES, type ModelObject, type Placement, type ThreeMfModel } from "./three-mf-model.ts";
import { readTransform, UNMOVED } from "./transform.ts";
import type { XmlListener } from "./xml-pieces.ts";

/** An object while its elements come. */
interface OpenObject {
  readonly id: string;
  readonly name: string;
  readonly type: string;
  readonly components: Placement[];
  gatherer: MeshGatherer | null;
}

/** Elements that may stand in each core element; others, and what is in them, say nothing about the body. */
const WITHIN: Readonly<Record<string, readonly string[]>> = {
  "": ["model"],
  model: ["resources", "build"],
  resources: ["object"],
  object: ["mesh", "components"],
  mesh: ["vertices", "triangles"],
  vertices: ["vertex"],
  triangles: ["triangle"],
  components: ["component"],
  build: ["item"],
};

/**
 * Makes a model of the elements of a 3MF model part as they come (3MF core specification 1.x, sections on models, objects,
 * meshes, components and the build). Nothing is kept but numbers.
 */
export class ThreeMfModelReader implements XmlListener {
  readonly #reading: Reading;
  readonly #foreign: ForeignElements;
  readonly #objects = new Map<string, ModelObject>();
  readonly #items: Placement[] = [];
  #unit: LengthUnit = "millimeter";
  /** core elements that are open, outermost first */
  readonly #path: string[] = [];
  /** how many elements are open of which nothing is read */
  #skipped = 0;
  #object: OpenObject | null = null;
  #entries = 0;
  #triangles = 0;
  #withoutArea = 0;

  constructor(reading: Reading) {
    this.#reading = reading;
    this.#foreign = new ForeignElements(reading);
  }

  readonly open = (tag: SaxesTagNS): void => {
    const parent = this.#path.at(-1) ?? "";
    if (this.#skipped > 0 || tag.uri !== CORE_NAMESPACE || !WITHIN[parent]?.includes(tag.local)) {
      this.#skip(tag, parent);
      return;
    }
    this.#path.push(tag.local);
    this.#begin(tag);
  };

  readonly close = (): void => {
    if (this.#skipped > 0) this.#skipped--;
    else if (this.#path.pop() === "object") this.#endObject();
  };

  /** The whole model, once all its elements have come. */
  taken(): ThreeMfModel {
    warnWithoutArea(this.#withoutArea, this.#reading);
    return { unit: this.#unit, objects: this.#objects, items: this.#items };
  }

  #skip({ uri, local }: SaxesTagNS, parent: string): void {
    if (parent === "") {
      throw new ReadStop(
        "not-3mf",
        `its model begins with <${local.slice(0, 30)}> (${uri.slice(0, 200)}), which is no 3MF core model`,
      );
    }
    if (this.#skipped++ === 0 && uri !== CORE_NAMESPACE && parent !== "model" && parent !== "resources") {
      this.#foreign.meet(uri);
    }
  }

  #begin(tag: SaxesTagNS): void {
    const { attributes } = tag;
    const gatherer = this.#object?.gatherer;
    switch (tag.local) {
      case "vertex":
        gatherer?.vertex(attributes.x?.value, attributes.y?.value, attributes.z?.value);
        break;
      case "triangle":
        if (this.#triangles++ >= this.#reading.limits.maxTriangles) tooManyTriangles(this.#reading);
        gatherer?.triangle(attributes.v1?.value, attributes.v2?.value, attributes.v3?.value);
        break;
      default:
        this.#beginRare(tag);
    }
  }

  #beginRare(tag: SaxesTagNS): void {
    switch (tag.local) {
      case "model":
        refuseRequired(tag);
        this.#unit = unitOf(tag);
        break;
      case "object":
        this.#beginObject(tag);
        break;
      case "mesh":
        if (this.#object) this.#object.gatherer = new MeshGatherer(`object ${this.#object.id}`);
        break;
      case "triangles":
        this.#object?.gatherer?.refuseMoreThan(this.#reading);
        break;
      case "component":
        this.#object?.components.push(this.#placement(tag, `a component of object ${this.#object.id}`));
        break;
      case "item":
        this.#items.push(this.#placement(tag, `item ${this.#items.length + 1} of the build`));
        break;
    }
  }

  #beginObject({ attributes }: SaxesTagNS): void {
    this.#countEntry();
    const id = attributes.id?.value.trim() ?? "";
    if (id === "") throw new ReadStop("object-without-id", "one of its objects has no id; save it again");
    if (this.#objects.has(id)) {
      throw new ReadStop("object-id-twice", `two of its objects have the id ${id}; save it again`);
    }
    const name = (attributes.name?.value || attributes.partnumber?.value || "").trim();
    const type = attributes.type?.value ?? "model";
    this.#object = { id, name, type, components: [], gatherer: null };
  }

  #endObject(): void {
    if (!this.#object) return;
    const { gatherer, ...object } = this.#object;
    this.#withoutArea += gatherer?.withoutArea ?? 0;
    this.#objects.set(object.id, { ...object, mesh: gatherer?.taken() ?? null });
    this.#object = null;
  }

  #placement(tag: SaxesTagNS, where: string): Placement {
    this.#countEntry();
    refuseOtherPart(tag, where);
    const { objectid, transform } = tag.attributes;
    const matrix = transform ? readTransform(transform.value) : UNMOVED;
    if (!matrix) {
      throw new ReadStop("transform", `${where} has a transform that is not twelve numbers; save it again`);
    }
    return { objectId: objectid?.value.trim() ?? "", transform: matrix };
  }

  #countEntry(): void {
    if (++this.#entries <= MOST_ENTRIES) return;
    throw new ReadStop(
      "too-many-objects",
      `it has more than ${MOST_ENTRIES} objects, components and items, the most that are read; save it with fewer`,
    );
  }
}

/** The production extension may put an object in another part of the package. */
function refuseOtherPart({ attributes }: SaxesTagNS, where: string): void {
  const path = Object.values(attributes).find(
    ({ uri, local }) => uri === PRODUCTION_NAMESPACE && local === "path",
  );
  if (!path) return;
  throw new ReadStop(
    "required-extension",
    `${where} lies in another part of the package, ${path.value.slice(0, 100)} (3MF extension "production"), which is ` +
      "not read here; save it as plain 3MF (core specification) or STL",
  );
}

function unitOf({ attributes }: SaxesTagNS): LengthUnit {
  const word = attributes.unit?.value ?? "millimeter";
  const unit = lengthUnit(word);
  if (unit) return unit;
  throw new ReadStop(
    "unknown-unit",
    `its unit is "${word.slice(0, 30)}"; 3MF knows ${LENGTH_UNITS.join(", ")}: save it again in one of them`,
  );
}
