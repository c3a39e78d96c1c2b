// The states of all answers, why those are shut that are, and what goes with the others: the same bytes natively and
// in WebAssembly, whatever is kept.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { question, sample, same, today, wasm } from "./twin.mjs";

const range = readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8");
const nothing = () => "";

/** Answers that are kept, of bays that are there. */
function pins({ bays }, at) {
  const rows = ["width height", "depth bays bay-1 hole-2", "shares finish width device-2", "bay-3 hole-1 corners back"];
  const there = (pin) => Number(pin.match(/-(\d)/)?.[1] ?? 1) <= bays.length;
  return rows[at % rows.length].split(" ").filter(there).join(" ");
}

/** Beside a wall that is as wide, under a screen that is a little narrower. */
function placed(choice) {
  const tenths = Math.floor((choice.width_mm * Math.sqrt(337)) / 16 / 2.54) - 1;
  return { ...choice, place: { ...choice.place, wall_mm: choice.width_mm, screen_tenth_inch: tenths } };
}

/** Exactly what the unit costs, and the very day on which it arrives. */
function visit(choice) {
  const { price, promise } = JSON.parse(wasm.derived(range, JSON.stringify(choice), today)).built;
  return `budget=${price.total_minor} by=${promise.arrives} today=${today}`;
}

/** All answers but sizes. */
function listed({ bay_counts, bays, backs, finishes, corners, plinths }) {
  const ofBays = bays.flatMap(({ fills, holes, devices }) => [...fills, ...holes, ...devices]);
  return [...bay_counts, ...ofBays, ...backs, ...finishes, ...corners, ...plinths];
}

/** Adds up what of each kind was compared. */
function count(answers) {
  const seen = { open: 0, shifts: 0, shut: 0, unfound: 0, runs: 0, reasons: 0, releases: 0, unknown: 0, bytes: 0 };
  for (const bytes of answers) {
    const all = JSON.parse(bytes);
    seen.bytes += bytes.length;
    if (!all) {
      seen.unknown += 1;
      continue;
    }
    for (const { state } of listed(all.answers)) seen[typeof state === "string" ? state : Object.keys(state)[0]] += 1;
    const told = all.reasons.filter(({ why }) => why);
    assert.ok(told.every(({ sentence }) => sentence.length > 20), "a reason has a sentence");
    assert.ok(told.every(({ why, release }) => Boolean(why.release) === Boolean(release)), "so has what to let go");
    seen.runs += all.sizes.flat().length;
    seen.reasons += told.length;
    seen.releases += told.filter(({ release }) => release).length;
  }
  return seen;
}

const itself = (choice) => choice;

for (const [what, number, wish, kept, change, least] of [
  ["nothing kept", 60, ["--seed", "31"], nothing, itself, { open: 2000, shifts: 400, shut: 100, reasons: 100 }],
  // Where more questions can mend a choice fewer answers are shut.
  ["any choices", 360, ["--any", "--seed", "32"], nothing, itself, { shifts: 2000, shut: 2000, reasons: 2000, unknown: 1 }],
  ["answers kept", 40, ["--seed", "33"], pins, itself, { open: 1000, shifts: 200, shut: 150, reasons: 150, releases: 100 }],
  ["a wall and a screen", 30, ["--seed", "34"], nothing, placed, { open: 1000, shifts: 200, shut: 50, releases: 50 }],
  ["a budget and a day", 12, ["--seed", "35"], visit, itself, { open: 400, shifts: 20, unfound: 1 }],
]) {
  test(`all states have the same bytes: ${what}`, (t) => {
    const questions = sample(number, ...wish).map((text, at) => {
      const choice = change(JSON.parse(text));
      return question("options", JSON.stringify(choice), kept(choice, at));
    });
    const seen = count(same(questions));
    t.diagnostic(`${number} choices: ${JSON.stringify(seen)}`);
    for (const [kind, few] of Object.entries(least)) assert.ok(seen[kind] >= few, `${seen[kind]} ${kind}, ${few} at least`);
  });
}
