import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { html } from "../../../core/report/html-escape.ts";
import { weekSheet } from "../../../core/report/html-sheet.ts";
import { planSchema } from "../../../core/plan/plan-document.ts";
import { shopSchema } from "../../../core/shop/shop.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { hostileWorks } from "../../fixtures/hostile-names.ts";

const shop = aWorks();
const plan = aPlan(shop);
const sheet = weekSheet(shop, plan);
const hostile = weekSheet(hostileWorks(), aPlan(hostileWorks()));

const VOID_TAGS = new Set(["meta", "br"]);

/** Tags that are opened and not closed in order; an independent, simple reading of the markup. */
function unbalanced(document: string): string[] {
  const open: string[] = [];
  for (const [, slash, name = "", rest = ""] of document.matchAll(
    /<(\/?)([a-zA-Z][\w-]*)((?:"[^"]*"|[^>"])*)>/g,
  )) {
    if (VOID_TAGS.has(name) || rest.endsWith("/")) continue;
    if (slash === "") open.push(name);
    else if (open.pop() !== name) return [`</${name}>`];
  }
  return open;
}

function tagNames(document: string): Set<string> {
  return new Set([...document.matchAll(/<([a-zA-Z][\w-]*)/g)].map(([, name = ""]) => name));
}

describe("the fixture", () => {
  it("is a valid shop and a valid plan", () => {
    expect(shopSchema.parse(shop)).toEqual(shop);
    expect(planSchema.parse(plan)).toEqual(plan);
  });
});

describe("the sheet as a document", () => {
  it("closes every tag it opens, in order", () => {
    expect(unbalanced(sheet)).toEqual([]);
    expect(unbalanced("<p><b></p></b>")).not.toEqual([]);
  });

  it("needs nothing from outside and no script", () => {
    expect(tagNames(sheet)).not.toContain("script");
    expect(tagNames(sheet)).not.toContain("link");
    expect(sheet).not.toMatch(/\b(src|srcset|action|style|on\w+)=/);
    expect(sheet.match(/href="[^#]/g)).toBeNull();
    expect(sheet.match(/url\((?!#p-)/g)).toBeNull();
    expect(sheet).not.toMatch(/@import|https?:/);
  });

  it("admits its own style sheet by hash and nothing else", () => {
    const style = /<style>([\s\S]*)<\/style>/.exec(sheet)?.[1] ?? "";
    const hash = createHash("sha256").update(style).digest("base64");
    expect(sheet).toContain(
      `content="default-src &#39;none&#39;; style-src &#39;sha256-${hash}&#39;; base-uri &#39;none&#39;; form-action &#39;none&#39;"`,
    );
  });

  it("uses every id once and links only to ids that exist", () => {
    const ids = [...sheet.matchAll(/\bid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of sheet.matchAll(/(?:href="|aria-labelledby="|url\()#?([\w-]+)/g))
      expect(ids).toContain(target);
  });

  it("gives every table a caption and every heading level its place", () => {
    expect(sheet.match(/<table/g)?.length).toBe(sheet.match(/<caption/g)?.length);
    expect(sheet.match(/<h1/g)?.length).toBe(1);
    expect(sheet.match(/<th(?=[ >])(?![^>]*scope=)/g)).toBeNull();
  });

  it("is the same text for the same plan", () => {
    expect(weekSheet(aWorks(), aPlan())).toBe(sheet);
  });
});

describe("what the sheet says", () => {
  const text = sheet.replaceAll("\u202f", " ");

  it("answers first what the plan costs and how good it is proven to be", () => {
    expect(text.indexOf("10 066.52 EUR")).toBeLessThan(text.indexOf("Needs attention"));
    expect(text).toContain(
      "No plan of these can cost less than 9 645.03 EUR; this one is within 4.4 % of that.",
    );
  });

  it("shows every build, order and feedstock need, and every reason", () => {
    for (const build of plan.builds) expect(text).toContain(`>${build.id}<`);
    for (const order of plan.orders) expect(text).toContain(`>${order.orderId}<`);
    for (const entry of plan.unplanned)
      expect(text).toContain(html`${entry.reasons[0]?.sentence ?? ""}`.markup);
    expect(text).toContain("What would help");
  });

  it("draws each build once in the timeline, with set-up, print, waiting and unload", () => {
    expect(text.match(/<g class="build">/g)?.length).toBe(plan.builds.length);
    expect(text.match(/<rect class="change" x=/g)?.length).toBe(
      plan.builds.filter((build) => build.changeoverMin > 0).length,
    );
    expect(text.match(/<rect class="unload" x=/g)?.length).toBe(plan.builds.length);
    expect(text.match(/<svg class="late" x="[^"]+%"/g)?.length).toBe(1);
  });

  it("draws to scale: the running build starts at a quarter of the first of seven days", () => {
    expect(text).toContain('<rect class="set-up" x="3.571%" y="10" width="0.198%"');
  });

  it("explains the six costliest late orders at once and the others behind a fold", () => {
    const crowded = {
      ...plan,
      unplanned: [],
      orders: plan.orders.slice(0, 9).map((order, index) => ({
        ...order,
        lateMin: 60,
        lateCost: index,
        why: ["Full.", "Would help: more."],
      })),
    };
    const many = weekSheet(shop, crowded);
    const fold = many.indexOf("3 more late orders");
    expect(many.slice(0, fold).match(/class="card late-card"/g)?.length).toBe(6);
    expect(many.slice(fold).match(/class="card late-card"/g)?.length).toBe(3);
    expect(many).toContain("<li><bdi>More.</bdi></li>");
    expect(many).toContain("1 reason why<");
  });

  it("lists what is bought out", () => {
    expect(text).toMatch(/<b>Bought out<\/b>.*O-120.*320.*608\.00/s);
  });

  it("has a box to tick for every task", () => {
    expect(text.match(/class="tick"/g)?.length).toBe(plan.tasks.length);
  });

  it("opens one line down to its inputs and lists all of them", () => {
    expect(text).toContain("How a number is made");
    expect(text).toContain(
      `Every cost line: ${plan.builds.flatMap((build) => build.costLines).length + plan.costLines.length} lines`,
    );
  });

  it("names the dangers and never says that something is safe", () => {
    expect(text).toContain("Running with nobody there");
    expect(text).not.toMatch(/\bsafe(ly)?\b/i);
  });
});

describe("weeks", () => {
  it("of two are two tables", () => {
    const long = weekSheet(shop, { ...plan, horizonDays: 14 });
    expect(long.match(/<table class="timeline">/g)?.length).toBe(2);
  });

  it.each([
    [3, 1],
    [7, 1],
    [9, 1],
    [10, 2],
    [16, 2],
    [17, 3],
  ])("of %i days are %i pictures: two days more still go with the week before", (horizonDays, pictures) => {
    const drawn = weekSheet(shop, { ...plan, builds: [], horizonDays });
    expect(drawn.match(/<table class="timeline">/g)?.length).toBe(pictures);
    expect(drawn.match(/class="day-name"/g)?.length).toBe(horizonDays);
  });

  it("show builds that end after the days planned", () => {
    const short = weekSheet(shop, { ...plan, horizonDays: 2 });
    expect(short.match(/class="day-name"/g)?.length).toBe(6);
  });

  it("with a change of clocks say how long that day is and keep their hours in place", () => {
    const autumn = weekSheet(shop, { ...plan, plannedFrom: "2026-10-19T06:00", builds: [], horizonDays: 7 });
    expect(autumn).toContain("Sun 25 Oct (25 h)");
    // 144 h to Sunday's midnight, then 13 h to its noon, of 169 h.
    expect(autumn).toContain(`x="${Number(((100 * (144 + 13)) / 169).toFixed(3))}%" y="33">12<`);
  });

  it("of no builds and no machines still make a sheet", () => {
    const empty = weekSheet(
      { ...shop, machines: [], feedstocks: [] },
      { ...plan, builds: [], tasks: [], orders: [], unplanned: [], costLines: [], feedstockNeeds: [] },
    );
    expect(unbalanced(empty)).toEqual([]);
    expect(empty).toContain("Every order is planned and in time.");
  });
});

describe("names that are meant to do harm", () => {
  it("stay text: the sheet has the same kinds of tags and stays balanced", () => {
    expect([...tagNames(hostile)].toSorted()).toEqual([...tagNames(sheet)].toSorted());
    expect(unbalanced(hostile)).toEqual([]);
    expect(hostile.match(/<\/style>/g)?.length).toBe(1);
  });

  it("are shown in full, however long, and cut by style alone", () => {
    expect(hostile).toContain(`<bdi class="name" title="${"w".repeat(10_000)}">${"w".repeat(10_000)}</bdi>`);
  });

  it("are isolated and their turns of direction written out, so that no text turns its surroundings", () => {
    expect(hostile).toContain('<bdi class="name">&lt;U+202E&gt;gnitirw desrever</bdi>');
    expect(hostile).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    expect(html`<b title="${"a\u2067b"}"></b>`.markup).toBe('<b title="a&lt;U+2067&gt;b"></b>');
  });

  it("leave no character that HTML forbids", () => {
    // eslint-disable-next-line no-control-regex
    expect(hostile).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\p{Cs}]/u);
  });
});

describe("the plans of the rules of thumb", () => {
  it("say how many copies they leave without a place, and nothing where they leave none", () => {
    const [firstFit = "", cheapest = ""] = sheet.split("Earliest due date").slice(-2);
    expect(firstFit).not.toContain("without a place");
    expect(cheapest).toContain("</bdi>, 3 copies without a place</th>");
  });
});

describe("prices of hours", () => {
  it("are not said to be nothing where there was no time to find them", () => {
    const unpriced = weekSheet(shop, { ...plan, prices: { machineHour: [], operatorHour: [] } });
    expect(unpriced).toContain("or there was no time to price one");
    expect(sheet).not.toContain("or there was no time to price one");
  });
});
