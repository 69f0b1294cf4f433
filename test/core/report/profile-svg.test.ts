import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { profileSvg } from "../../../core/report/profile-svg.ts";
import { timesOf } from "../../fixtures/layer-times.ts";

const WINDOW = { shortestLayerS: 30, longestLayerS: 120 };
const PLOT = { left: 64, right: 576, top: 62, bottom: 338 };

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Every element of the drawing, which must be well-formed XML. */
function elementsOf(svg: string): Element[] {
  const elements: Element[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => elements.push({ name, attributes }));
  parser.write(svg).close();
  return elements;
}

function draw(busyS: readonly number[], window = {}, title = "Clip: 1 copy on Bench 1") {
  const svg = profileSvg({ title, subtitle: "PLA, nozzle 0.4", times: timesOf(busyS, window) });
  const elements = elementsOf(svg);
  const of = (look: string) =>
    elements.filter(({ name, attributes }) => attributes["class"] === look && /^(path|rect)$/.test(name));
  return { svg, of, elements };
}

/** Absolute coordinates across and up of a path of M, H, V and L commands. */
function numbersOf(path: string | undefined, commands: string): number[] {
  return [...(path ?? "").matchAll(/([MHV])([\d.]+)(?: ([\d.]+))?/g)].flatMap(([, command = "", a, b]) => {
    if (command === "M") return [Number(commands === "V" ? b : a)];
    return command === commands ? [Number(a)] : [];
  });
}

describe("the drawing of layer times", () => {
  test("is well-formed, 600 px wide, and says in words what it shows", () => {
    const { svg, elements } = draw([20, 60], WINDOW);
    expect(elements[0]?.attributes).toMatchObject({
      width: "600",
      role: "img",
      "aria-labelledby": "title facts",
    });
    expect(svg).toContain('<title id="title">Clip: 1 copy on Bench 1</title>');
    expect(svg).toContain(
      "A layer takes 30.0 s to 60.0 s. 1 layer waits for the one below to cool (layer 1)",
    );
    expect(svg).toContain(">layer time, s (logarithmic)<");
    expect(svg).toContain(">height, mm<");
  });

  test("has the height upwards and the time across, all within the plot", () => {
    const path = draw([40, 80], WINDOW).of("time")[0]?.attributes["d"];
    const across = numbersOf(path, "H");
    const up = numbersOf(path, "V");
    expect([up[0], up.at(-1)]).toEqual([PLOT.bottom, PLOT.top]);
    expect(across.at(-1)).toBeGreaterThan(across[0] ?? Infinity);
    for (const x of across) expect(x >= PLOT.left && x <= PLOT.right).toBe(true);
  });

  test("has a time twice as long equally far to the right, wherever it is", () => {
    const across = numbersOf(draw([25, 50, 100], { longestLayerS: 120 }).of("time")[0]?.attributes["d"], "H");
    const [a = 0, b = 0, c = 0] = [...new Set(across)];
    expect(Math.abs(b - a - (c - b))).toBeLessThan(0.3);
  });

  test("shades the window between its ends", () => {
    const { svg, of } = draw([40, 80], WINDOW);
    const [shade] = of("window");
    const from = Number(shade?.attributes["x"]);
    expect(from).toBeGreaterThan(PLOT.left);
    expect(from + Number(shade?.attributes["width"])).toBeLessThan(PLOT.right);
    expect(of("limit")).toHaveLength(2);
    expect(svg).toContain(">window 30.0 s to 120 s<");
  });

  test("shades to the edge of the plot where a window has no end", () => {
    const { svg, of } = draw([40, 80]);
    const [shade] = of("window");
    expect([shade?.attributes["x"], shade?.attributes["width"]]).toEqual(["64", "512"]);
    expect(of("limit")).toEqual([]);
    expect(svg).toContain(">window no limit<");
  });

  test("hatches waiting, and only that", () => {
    expect(
      draw([20, 60], WINDOW)
        .of("waiting")
        .filter(({ name }) => name === "path"),
    ).toHaveLength(1);
    const without = draw([40, 60], WINDOW);
    expect(without.of("waiting")).toEqual([]);
    expect(without.svg).not.toContain("waiting for the layer below");
  });

  test("marks layers that last too long by a triangle, at the limit none", () => {
    expect(draw([40, 120], WINDOW).of("slow")).toEqual([]);
    const { svg, of } = draw([40, 120.1], WINDOW);
    expect(of("slow")[0]?.attributes["d"]).toMatch(/^M[\d.]+ [\d.]+l9-5v10z$/);
    expect(svg).toContain(">too slow<");
    expect(svg).toContain("1 layer lasts too long to bond: layer 2.");
  });

  test("follows light and dark and has no colour of its own outside its style", () => {
    const { svg } = draw([20, 200], WINDOW);
    expect(svg).toContain("@media (prefers-color-scheme: dark)");
    expect(svg.replace(/<style>[^]*<\/style>/, "")).not.toMatch(/#[0-9a-f]{6}|rgb\(/i);
  });

  test("of ten thousand layers stays small", () => {
    const busyS = Array.from({ length: 10_000 }, (_, at) => 40 + 20 * Math.sin(at));
    expect(draw(busyS, WINDOW).svg.length).toBeLessThan(30_000);
  });

  test("of one layer, of an empty one, and of a name with markup", () => {
    expect(draw([40], WINDOW).of("time")).not.toEqual([]);
    expect(draw([0, 40]).of("time")).not.toEqual([]);
    const { svg } = draw([40], WINDOW, "<script>\u202e&");
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;script&gt;&lt;U+202E&gt;&amp;");
  });

  test("of nothing is a fault", () => {
    expect(() => draw([])).toThrow(RangeError);
  });
});
