// A cut pack has the same bytes natively and in WebAssembly: the manifest has the digest of every file, and the nests follow
// from their effort.
import assert from "node:assert/strict";
import { test } from "node:test";
import { question, same, sample, today } from "./twin.mjs";

test("packs are the same bytes", (t) => {
  const choices = sample(6, "--seed", "23");
  const batches = [[choices.slice(0, 1), 0], [choices.slice(1, 3), 20000], [choices, 5000]];
  const asked = batches.map(([batch, effort]) => question("pack", `[${batch.join(",")}]`, `today=${today} effort=${effort}`));
  const manifests = same(asked).map((bytes) => JSON.parse(bytes.toString()));
  for (const [at, { format, orders, files }] of manifests.entries()) {
    assert.equal(format, "slotwright-pack");
    assert.equal(orders.length, batches[at][0].length);
    assert.ok(files.length > 20);
  }
  t.diagnostic(`${manifests.length} packs, ${manifests.reduce((sum, { files }) => sum + files.length, 0)} files`);
});
