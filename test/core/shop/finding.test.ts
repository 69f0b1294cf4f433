import { expect, test } from "vitest";
import { about, errorsFirst, listed, stepsOf, whereOf } from "../../../core/shop/finding.ts";

const make = (severity: "error" | "warning", code: string) => ({ severity, code, where: "", sentence: "" });

test("a finding says what it is about, where it is and what to do", () => {
  expect(about("orders", "O-17").error("dueAt", "late", "it is late; hurry")).toEqual({
    severity: "error",
    code: "late",
    where: "orders/O-17/dueAt",
    sentence: "Order O-17: it is late; hurry.",
  });
  expect(about("machines", "F1").warning("", "odd", "x").where).toBe("machines/F1");
});

test("a place gives back its steps, whatever signs an id has", () => {
  for (const id of ["A/1", "~", "~1", "~0/", "#2", "a b"]) {
    expect(stepsOf(whereOf("orders", id, "dueAt"))).toEqual(["orders", id, "dueAt"]);
  }
});

test("errors come first and otherwise the order stays", () => {
  const mixed = [make("warning", "a"), make("error", "b"), make("warning", "c"), make("error", "d")];
  expect(errorsFirst(mixed).map(({ code }) => code)).toEqual(["b", "d", "a", "c"]);
});

test("names are listed in words, six at most", () => {
  expect(listed([])).toBe("");
  expect(listed(["a"])).toBe("a");
  expect(listed(["a", "b"])).toBe("a and b");
  expect(listed(["a", "b", "c", "d", "e", "f"])).toBe("a, b, c, d, e and f");
  expect(listed(["a", "b", "c", "d", "e", "f", "g", "h"])).toBe("a, b, c, d, e, f and 2 more");
});
