import { strToU8, zipSync } from "fflate";
import type { Solid } from "./kit.ts";

/** What a 3MF file of the core specification (3MF Consortium) holds here: one mesh, and how often it is built. */
export interface ModelFile {
  readonly solid: Solid;
  readonly unit: "millimeter" | "inch";
  /** a second build item: a component of the same mesh, moved by twelve numbers as the file has them */
  readonly secondTransform?: string;
}

const MM_PER_UNIT = { millimeter: 1, inch: 25.4 } as const;
/** Files of the same bodies are the same bytes: the date in the archive is fixed. */
const WRITTEN = "2026-11-25T12:00:00";

const TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;

const RELATIONSHIPS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/body.model" Id="r1" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** The file as bytes. */
export function threeMfBytes(file: ModelFile): Uint8Array {
  const parts = {
    "[Content_Types].xml": strToU8(TYPES),
    "_rels/.rels": strToU8(RELATIONSHIPS),
    "3D/body.model": strToU8(modelXml(file)),
  };
  return zipSync(parts, { level: 9, mtime: WRITTEN });
}

function modelXml({ solid, unit, secondTransform }: ModelFile): string {
  const second = secondTransform
    ? `<object id="2" type="model"><components><component objectid="1" transform="${secondTransform}"/></components></object>`
    : "";
  const items = secondTransform ? ["1", "2"] : ["1"];
  return `<?xml version="1.0" encoding="UTF-8"?>
<model unit="${unit}" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<metadata name="Title">Demo body (invented)</metadata>
<resources><object id="1" type="model">${meshXml(solid, MM_PER_UNIT[unit])}</object>${second}</resources>
<build>${items.map((id) => `<item objectid="${id}"/>`).join("")}</build>
</model>
`;
}

function meshXml(solid: Solid, mmPerUnit: number): string {
  const { numVert, numTri, triVerts, vertProperties, numProp } = solid.getMesh();
  const number = (mm: number): string => String(Number((mm / mmPerUnit).toFixed(6)));
  const vertices = Array.from({ length: numVert }, (_, index) => {
    const [x = 0, y = 0, z = 0] = vertProperties.subarray(index * numProp, index * numProp + 3);
    return `<vertex x="${number(x)}" y="${number(y)}" z="${number(z)}"/>`;
  });
  const triangles = Array.from({ length: numTri }, (_, index) => {
    const [a, b, c] = triVerts.subarray(3 * index, 3 * index + 3);
    return `<triangle v1="${a}" v2="${b}" v3="${c}"/>`;
  });
  return `<mesh><vertices>${vertices.join("")}</vertices><triangles>${triangles.join("")}</triangles></mesh>`;
}
