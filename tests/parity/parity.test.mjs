// The same bytes natively and in WebAssembly: seeded choices, absurd ones too, derived by the tool and by the module.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { sample, today, tool, wasm } from "./twin.mjs";

const range = readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8");

function native(choice) {
  const { status, stdout } = spawnSync(tool, ["derive", "--choice", "-", "--today", today], { input: choice, encoding: "utf8", maxBuffer: 8_000_000 });
  assert.ok(status === 0 || status === 1, `the tool ended with ${status}`);
  return { text: stdout.trimEnd(), orderable: status === 0 };
}

for (const [what, wish, count, least] of [
  ["valid", ["--seed", "21"], 150, 150],
  ["any", ["--any", "--seed", "22"], 240, 20],
]) {
  test(`${what} choices derive to the same bytes`, (t) => {
    const choices = sample(count, ...wish);
    let orderable = 0;
    let bytes = 0;
    for (const choice of choices) {
      const expected = native(choice);
      orderable += expected.orderable ? 1 : 0;
      bytes += expected.text.length;
      assert.equal(wasm.derived(range, choice, today), expected.text, choice);
    }
    t.diagnostic(`${choices.length} choices, ${orderable} can be ordered, ${bytes} bytes`);
    assert.ok(orderable >= least, `${orderable} of them can be ordered`);
    assert.ok(what === "valid" || orderable < choices.length, "some of them cannot");
  });
}
