import { createRoot, createSignal } from "solid-js";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { Along } from "../../../renderer/store/history.ts";
import { createPlanStore, type PlanStore } from "../../../renderer/store/plan-store.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { fakeHost, type FakeHost } from "../fake-host.ts";

const SHOP = aWorks();
const FIRST = aPlan(SHOP);
const SECOND: PlanDocument = { ...FIRST, cost: { ...FIRST.cost, total: FIRST.cost.total - 1 } };
const OPTIONS = { from: "2026-11-30T00:00", days: 7, seconds: 1, gapPct: 0, seed: 1 };

let fake: FakeHost;
let store: PlanStore;
let dispose: () => void;
let steps: { readonly label: string; readonly along: Along }[];
let asked: Shop[];
let made: PlanDocument[];
let told: string[];

beforeEach(() => {
  fake = fakeHost(SHOP);
  [steps, asked, told, made] = [[], [], [], [FIRST, SECOND]];
  createRoot((end) => {
    dispose = end;
    const [shop] = createSignal(SHOP);
    store = createPlanStore({
      host: fake.host,
      handle: "h1",
      shop,
      start: (given) => {
        asked.push(given);
        return { result: Promise.resolve(made.shift()!), stop: () => undefined };
      },
      remember: (label, along) => {
        steps.push({ label, along });
        along.again();
      },
      tell: (sentence) => told.push(sentence),
      alarm: (sentence) => told.push(sentence),
    });
  });
});

afterEach(() => dispose());

const kept = () =>
  fake.calls
    .filter(({ name }) => name === "keepPlan")
    .map(({ input }) => (input as { plan: PlanDocument | null }).plan?.cost.total ?? null);

describe("an accepted plan", () => {
  test("is a step of undo: back brings the earlier one, and before the first there is none", async () => {
    await store.start(OPTIONS);
    await store.start(OPTIONS);
    await store.accept();
    expect(steps.map(({ label }) => label)).toEqual(["the first plan", "the new plan"]);
    expect(store.plan()).toBe(SECOND);
    steps[1]?.along.back();
    expect(store.plan()).toBe(FIRST);
    steps[0]?.along.back();
    expect(store.plan()).toBeNull();
    steps[0]?.along.again();
    expect(store.plan()).toBe(FIRST);
    const [first, second] = [FIRST.cost.total, SECOND.cost.total];
    await vi.waitFor(() => expect(kept()).toEqual([first, second, first, null, first]));
  });

  test("goes with the next planning as planned builds, and the first planning has none", async () => {
    await store.start(OPTIONS);
    await store.start(OPTIONS);
    expect(asked[0]).toBe(SHOP);
    const planned = FIRST.builds.filter(({ state }) => state === "planned").map(({ id }) => id);
    expect(planned.length).toBeGreaterThan(3);
    const given = asked[1]?.builds.filter(({ state }) => state === "planned").map(({ id }) => id);
    expect(given).toEqual(planned);
  });

  test("of another window is taken before planning, and accepting over it is not done silently", async () => {
    await store.start(OPTIONS);
    await store.start(OPTIONS);
    const theirs = { ...FIRST, cost: { ...FIRST.cost, total: 7 } };
    fake.answerNext("readPlan", { ok: true, value: { plan: theirs } });
    await store.accept();
    expect(store.plan()?.cost.total).toBe(7);
    expect(store.proposal()).toBe(SECOND);
    expect(told.at(-1)).toContain("Another window has accepted another plan");
    await store.accept();
    expect(store.plan()).toBe(SECOND);
  });
});
