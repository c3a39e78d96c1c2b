// Documents on paper have the same bytes natively and in WebAssembly.
import assert from "node:assert/strict";
import { test } from "node:test";
import { question, same } from "./twin.mjs";

test("documents on paper are the same bytes", (t) => {
  const names = ["pack-a4", "pack-letter", "long-letter", "labels-a4-3-by-8", "labels-letter-3-by-10", "label-62-by-29"];
  const files = same(names.map((name) => question("paper", "", name)));
  for (const file of files) assert.equal(file.subarray(0, 8).toString(), "%PDF-1.7");
  t.diagnostic(`${files.length} documents, ${files.reduce((sum, file) => sum + file.length, 0)} bytes`);
});
