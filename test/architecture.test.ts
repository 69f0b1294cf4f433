import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";

/** The one direction of core: a file imports its own folder and those before it. */
const CORE_ORDER = [
  "units",
  "geometry",
  "shop",
  "estimate",
  "cost",
  "plan",
  "quote",
  "purchase",
  "progress",
  "report",
];

/** Packages that core may use, all of them pure; an engine is imported by its adapter alone. */
const CORE_PACKAGES: Readonly<Record<string, string>> = {
  zod: "core/",
  "date-fns": "core/",
  "@date-fns/tz": "core/",
  fflate: "core/geometry/",
  saxes: "core/geometry/",
  "glpk.js": "core/plan/engines/",
  highs: "core/plan/engines/",
};

/** What each outer room may import of the project's other rooms. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  core: ["core"],
  electron: ["core", "electron"],
  renderer: ["core", "renderer"],
};

/** Files that another room may import, and why. A name that ends in "/" is a folder. */
const SHARED: readonly { readonly file: string; readonly by: string; readonly why: string }[] = [
  { file: "electron/contract.ts", by: "renderer", why: "both sides of the door must mean the same calls" },
  { file: "electron/contract/", by: "renderer", why: "the messages of those calls: pure data and schemas" },
];

/** Why a call is not allowed in core. */
const IMPURE: Readonly<Record<string, string>> = {
  "Date.now": "the time is an argument",
  "new Date": "the system's time zone is not the works': use core/shop/instants.ts",
  "Math.random": "use seededRandom of core/units/random.ts, the seed is an argument",
  globalThis: "core sees nothing of the outside",
  console: "core returns findings, it prints nothing",
  performance: "the time is an argument",
  process: "core runs in a browser too",
  fetch: "core has no network",
};

const MOST_LINES = 300;
const ROOT = fileURLToPath(new URL("..", import.meta.url));

const files = Object.keys(ROOMS).flatMap((room) => sourceFiles(room));
const coreFiles = files.filter((file) => file.startsWith("core/"));

function sourceFiles(folder: string): string[] {
  if (!existsSync(join(ROOT, folder))) return [];
  return readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|js|mjs)$/.test(entry.name))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)));
}

function textOf(file: string): string {
  return readFileSync(join(ROOT, file), "utf8");
}

function importsOf(file: string): string[] {
  return ts.preProcessFile(textOf(file), true, true).importedFiles.map(({ fileName }) => fileName);
}

/** The imported file from the project's root, or null for a package. */
function targetOf(file: string, specifier: string): string | null {
  return specifier.startsWith(".") ? normalize(join(dirname(file), specifier)) : null;
}

/** Imports that break the direction, as sentences. */
function wrongImports(file: string): string[] {
  const [room = "", folder = ""] = file.split("/");
  return importsOf(file).flatMap((specifier) => {
    const target = targetOf(file, specifier);
    if (target === null) return room === "core" ? wrongPackage(file, specifier) : [];
    const [targetRoom = "", targetFolder = ""] = target.split("/");
    if (!ROOMS[room]?.includes(targetRoom) && !isShared(room, target))
      return [`${file} may not import from ${targetRoom}/: ${specifier}`];
    if (!existsSync(join(ROOT, target))) return [`${file} imports what is not there: ${specifier}`];
    if (targetRoom !== "core" || room !== "core") return [];
    const isLater = CORE_ORDER.indexOf(targetFolder) > CORE_ORDER.indexOf(folder);
    return isLater
      ? [`${file} imports from ${targetFolder}/, which comes after ${folder}/: ${specifier}`]
      : [];
  });
}

function isShared(room: string, target: string): boolean {
  return SHARED.some(
    ({ file, by }) => by === room && (file.endsWith("/") ? target.startsWith(file) : target === file),
  );
}

function wrongPackage(file: string, specifier: string): string[] {
  const home = CORE_PACKAGES[packageOf(specifier)];
  if (home === undefined) return [`${file} imports a package that core does not use: ${specifier}`];
  return file.startsWith(home) ? [] : [`${file} imports ${specifier}, which belongs in ${home}`];
}

/** The package that a specifier names. Example: "glpk.js/node" gives "glpk.js". */
function packageOf(specifier: string): string {
  return specifier.split("/", specifier.startsWith("@") ? 2 : 1).join("/");
}

const SUSPECT = /Date|Math\.random|globalThis|console|performance|process|fetch/;

/** Impure things that a text of core uses, by name. */
function impureNames(text: string): string[] {
  if (!SUSPECT.test(text)) return [];
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNewExpression(node) && node.expression.getText() === "Date") found.push("new Date");
    if (ts.isCallExpression(node) && node.expression.getText() === "Date") found.push("new Date");
    if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
      const whole = node.getText();
      if (whole in IMPURE) found.push(whole);
      else if (GLOBALS.has(node.expression.text) && !isDeclared(text, node.expression.text)) {
        found.push(node.expression.text);
      }
    }
    if (ts.isIdentifier(node) && node.text === "globalThis") found.push("globalThis");
    if (ts.isCallExpression(node) && node.expression.getText() === "fetch") found.push("fetch");
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("file.ts", text, ts.ScriptTarget.ES2023, true));
  return found;
}

const GLOBALS = new Set(["console", "performance", "process"]);

/** A name of the trade such as `process` (filament or pellet) may be a variable of the file's own. */
function isDeclared(text: string, name: string): boolean {
  return new RegExp(`(const|let|[{(,]) *\\{?[^=;\\n]*\\b${name}\\b *[,:})=]`).test(text);
}

test("there are files to judge in every room that exists", () => {
  expect(coreFiles.length).toBeGreaterThan(50);
  expect(files.filter((file) => file.startsWith("electron/")).length).toBeGreaterThan(0);
  for (const folder of ["units", "shop", "estimate", "cost", "plan", "report"]) {
    expect(coreFiles.filter((file) => file.startsWith(`core/${folder}/`)).length, folder).toBeGreaterThan(0);
  }
});

describe("imports", () => {
  test("of core go only to the own folder, to those before it, and to a few pure packages", () => {
    expect(coreFiles.flatMap(wrongImports)).toEqual([]);
  });

  test("of the outside go to core, never from one room of the outside to another", () => {
    expect(files.filter((file) => !file.startsWith("core/")).flatMap(wrongImports)).toEqual([]);
  });

  test("go to the file that has it: there are no barrels", () => {
    expect(files.filter((file) => /(^|\/)index\.tsx?$/.test(file))).toEqual([]);
    expect(coreFiles.filter((file) => /^export (type )?(\*|\{[^}]*\}) from /m.test(textOf(file)))).toEqual(
      [],
    );
  });
});

test("what both sides of the door share imports zod and core alone", () => {
  const shared = files.filter((file) => isShared("renderer", file));
  expect(shared.length).toBeGreaterThan(1);
  const outside = shared.flatMap((file) =>
    importsOf(file)
      .map((specifier) => targetOf(file, specifier) ?? specifier)
      .filter((target) => target !== "zod" && !target.startsWith("core/") && !isShared("renderer", target))
      .map((target) => `${file} imports ${target}`),
  );
  expect(outside).toEqual([]);
});

describe("core", () => {
  test("has only the folders of the list", () => {
    const folders = new Set(coreFiles.map((file) => file.split("/")[1]));
    expect([...folders].filter((folder) => !CORE_ORDER.includes(folder ?? ""))).toEqual([]);
  });

  test("is pure: no clock, no chance, no outside", () => {
    const impure = coreFiles.flatMap((file) =>
      impureNames(textOf(file)).map((name) => `${file} uses ${name}: ${IMPURE[name]}`),
    );
    expect(impure).toEqual([]);
  });

  test(`has no file of more than ${MOST_LINES} lines`, () => {
    const long = coreFiles.filter((file) => textOf(file).split("\n").length - 1 > MOST_LINES);
    expect(long).toEqual([]);
  });

  test("has a table of contents with one line for each file, and for nothing else", () => {
    const listed = [...textOf("core/README.md").matchAll(/^\| `([\w/.-]+\.ts)` \| (\S.*) \|$/gm)].map(
      ([, file]) => `core/${file}`,
    );
    expect(
      coreFiles.filter((file) => !listed.includes(file)),
      "not in core/README.md",
    ).toEqual([]);
    expect(
      listed.filter((file) => !coreFiles.includes(file)),
      "in core/README.md but not there",
    ).toEqual([]);
    expect(
      listed.filter((file, place) => listed.indexOf(file) !== place),
      "listed twice",
    ).toEqual([]);
  });
});

test("the guards themselves see what they are to see", () => {
  expect(impureNames("const a = Date.now() + Math.random();")).toEqual(["Date.now", "Math.random"]);
  expect(impureNames("const a = new Date(2026, 1), b = Date();")).toEqual(["new Date", "new Date"]);
  expect(impureNames("console.log(process.env, performance.now());")).toEqual([
    "console",
    "process",
    "performance",
  ]);
  expect(impureNames("globalThis.x = 1; fetch('x');")).toEqual(["globalThis", "fetch"]);
  expect(impureNames("const { process } = machine; process.trim(); // new Date() in words")).toEqual([]);
  expect(wrongPackage("core/shop/a.ts", "node:fs")).toHaveLength(1);
  expect(wrongPackage("core/shop/a.ts", "highs")).toHaveLength(1);
  expect(wrongPackage("core/plan/engines/highs.ts", "highs")).toEqual([]);
  expect(wrongPackage("core/shop/a.ts", "@date-fns/tz")).toEqual([]);
  expect(wrongPackage("core/shop/a.ts", "@date-fns/utc")).toHaveLength(1);
});
