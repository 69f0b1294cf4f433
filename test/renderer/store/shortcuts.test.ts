import { expect, test } from "vitest";
import { keysOf } from "../../../renderer/store/shortcuts.ts";

test("keys are parted at the plus signs between them; a plus sign at the end is a key itself", () => {
  expect(keysOf("Ctrl+Shift+Z")).toEqual(["Ctrl", "Shift", "Z"]);
  expect(keysOf("+")).toEqual(["+"]);
  expect(keysOf("Ctrl++")).toEqual(["Ctrl", "+"]);
});
