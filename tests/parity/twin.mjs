// The same questions to the native program and to the WebAssembly module.
//
// SLOTWRIGHT_BIN is the native tool, SLOTWRIGHT_NATIVE the native program of slotwright_tests::parity,
// SLOTWRIGHT_PARITY the module of the same functions, made by wasm-bindgen for Node.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";

export const tool = process.env.SLOTWRIGHT_BIN;
export const today = "2026-11-25";

/** The module in WebAssembly. */
export const wasm = createRequire(import.meta.url)(process.env.SLOTWRIGHT_PARITY);

/** Seeded choices of the demo range, as canonical JSON. */
export function sample(count, ...wish) {
  const lines = execFileSync(tool, ["sample", "--count", String(count), ...wish], { encoding: "utf8" });
  const choices = lines.trimEnd().split("\n");
  assert.equal(choices.length, count);
  return choices;
}

/** A question: what is asked, of which choice, with what kept. */
export const question = (what, choice, kept = "") => [what, choice, kept].join("\t");

/** What the native program says to each question. */
function native(questions) {
  const said = execFileSync(process.env.SLOTWRIGHT_NATIVE, { input: questions.join("\n"), maxBuffer: 2 ** 30 });
  const answers = [];
  for (let at = 0; at < said.length;) {
    const begin = said.indexOf("\n", at) + 1;
    const end = begin + Number(said.subarray(at, begin));
    answers.push(said.subarray(begin, end));
    at = end;
  }
  return answers;
}

/** Both answers to each question have the same bytes; gives them. */
export function same(questions) {
  const expected = native(questions);
  assert.equal(expected.length, questions.length, "an answer to each question");
  return questions.map((asked, at) => {
    const bytes = Buffer.from(wasm.answer(asked));
    if (!bytes.equals(expected[at])) assert.fail(`${asked}\n${difference(expected[at], bytes)}`);
    return bytes;
  });
}

/** What stands where two answers begin to differ. */
function difference(expected, found) {
  let at = 0;
  while (at < expected.length && expected[at] === found[at]) at += 1;
  const around = (bytes) => JSON.stringify(bytes.subarray(Math.max(0, at - 120), at + 80).toString());
  return `from byte ${at} of ${expected.length} and ${found.length}\nnative ${around(expected)}\nwasm   ${around(found)}`;
}
