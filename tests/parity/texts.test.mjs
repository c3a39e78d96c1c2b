// The compact text of a choice and the unit as glTF: the same bytes natively and in WebAssembly.
import assert from "node:assert/strict";
import { test } from "node:test";
import { question, sample, same, today } from "./twin.mjs";

test("compact texts are the same, and are read again", (t) => {
  const choices = [...sample(200, "--seed", "41"), ...sample(400, "--any", "--seed", "42")];
  const answers = same(choices.map((choice) => question("compact", choice)));
  let bytes = 0;
  answers.forEach((answer, at) => {
    const { text, read } = JSON.parse(answer);
    assert.deepEqual(read, JSON.parse(choices[at]), text);
    bytes += Buffer.byteLength(text);
  });
  t.diagnostic(`${answers.length} texts, ${bytes} bytes`);
  assert.ok(bytes > 100_000, `${bytes} bytes of text`);
});

test("the unit as glTF is the same", (t) => {
  const choices = sample(48, "--seed", "43");
  const files = same(choices.map((choice) => question("solid", choice, `today=${today}`)));
  let parts = 0;
  for (const file of files) {
    // Source: glTF 2.0 Specification, «GLB File Format»: magic, version, length, then the chunk of JSON.
    assert.deepEqual([file.toString("latin1", 0, 4), file.readUInt32LE(4), file.readUInt32LE(8)], ["glTF", 2, file.length]);
    parts += JSON.parse(file.toString("utf8", 20, 20 + file.readUInt32LE(12))).meshes.length;
  }
  const bytes = files.reduce((sum, file) => sum + file.length, 0);
  t.diagnostic(`${files.length} files, ${parts} parts, ${bytes} bytes`);
  assert.ok(parts > files.length * 5 && bytes > 1_000_000, `${parts} parts, ${bytes} bytes`);
});
