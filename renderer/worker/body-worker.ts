import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { bodyFindings } from "../../core/geometry/body-findings.ts";
import { standUp } from "../../core/geometry/direction.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import { readBody } from "../../core/geometry/read-body.ts";
import type { BodyAnswer, BodyQuestion, MeasuredFile, StoodShape } from "./body-messages.ts";
import { partWays } from "./part-ways.ts";

/** Reads and measures bodies and finds ways to make parts, off the window's thread. */
self.addEventListener("message", ({ data }: MessageEvent<{ run: number; question: BodyQuestion }>) => {
  const { run, question } = data;
  try {
    const answer = answerTo(question);
    const kept = answer.kind === "shape" && answer.cornersMm ? [answer.cornersMm.buffer] : [];
    self.postMessage({ run, answer }, { transfer: kept as ArrayBuffer[] });
  } catch (fault) {
    self.postMessage({ run, fault: `This is a fault of the program: ${String(fault)}` });
  }
});

function answerTo(question: BodyQuestion): BodyAnswer {
  if (question.kind === "measure") return measure(question);
  if (question.kind === "shape") return shape(question);
  return { kind: "ways", ways: partWays(question.shop, question.partId, question.wanted) };
}

function measure({
  bytes,
  fileName,
  unit,
  buildDirections,
}: Extract<BodyQuestion, { kind: "measure" }>): MeasuredFile {
  const reading = readBody(bytes, { fileName, unit });
  if (reading.mesh === null) {
    const none = { unit: unit ?? "millimeter", unitIsGuess: false } as const;
    return { kind: "measure", measures: null, ...none, findings: reading.findings };
  }
  const body = measureBody(reading.mesh);
  const findings = [...reading.findings, ...bodyFindings(body, fileName)];
  const isUsable = !findings.some(({ severity }) => severity === "error");
  const measures = isUsable ? measuresOfBody(reading.mesh, { body, buildDirections }) : null;
  return { kind: "measure", measures, unit: reading.unit, unitIsGuess: reading.unitIsGuess, findings };
}

function shape({ bytes, fileName, unit, up }: Extract<BodyQuestion, { kind: "shape" }>): StoodShape {
  const reading = readBody(bytes, { fileName, unit });
  if (reading.mesh === null) return { kind: "shape", cornersMm: null, findings: reading.findings };
  const { mesh, box } = standUp(reading.mesh, up);
  const shift = [-(box.min.x + box.max.x) / 2, -(box.min.y + box.max.y) / 2, -box.min.z];
  const cornersMm = new Float32Array(mesh.triangles.length * 3);
  for (const [place, corner] of mesh.triangles.entries()) {
    for (let axis = 0; axis < 3; axis += 1)
      cornersMm[place * 3 + axis] = (mesh.cornersMm[corner * 3 + axis] ?? 0) + (shift[axis] ?? 0);
  }
  return { kind: "shape", cornersMm, findings: reading.findings };
}
