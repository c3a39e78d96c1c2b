// The same bytes natively and in WebAssembly: seeded choices, absurd ones too, derived by both.
//
// SLOTWRIGHT_BIN is the native tool, SLOTWRIGHT_PARITY the module made by wasm-bindgen for Node.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { test } from "node:test";

const tool = process.env.SLOTWRIGHT_BIN;
const { derived } = createRequire(import.meta.url)(process.env.SLOTWRIGHT_PARITY);
const range = readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8");
const today = "2026-11-25";

function sample(...wish) {
  const lines = execFileSync(tool, ["sample", ...wish], { encoding: "utf8" });
  return lines.trimEnd().split("\n");
}

function native(choice) {
  const { status, stdout } = spawnSync(tool, ["derive", "--choice", "-", "--today", today], { input: choice, encoding: "utf8" });
  assert.ok(status === 0 || status === 1, `the tool ended with ${status}`);
  return { text: stdout.trimEnd(), orderable: status === 0 };
}

for (const [what, wish, count, least] of [
  ["valid", ["--seed", "21"], 150, 150],
  ["any", ["--any", "--seed", "22"], 240, 20],
]) {
  test(`${what} choices derive to the same bytes`, () => {
    const choices = sample(...wish, "--count", String(count));
    assert.equal(choices.length, count);
    let orderable = 0;
    for (const choice of choices) {
      const expected = native(choice);
      orderable += expected.orderable ? 1 : 0;
      assert.equal(derived(range, choice, today), expected.text, choice);
    }
    assert.ok(orderable >= least, `${orderable} of them can be ordered`);
    assert.ok(what === "valid" || orderable < choices.length, "some of them cannot");
  });
}
