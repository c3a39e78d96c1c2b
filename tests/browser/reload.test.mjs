// Steps outlive a reload.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Width, height, depth and finish, as the drawing says them. */
async function unit(bench) {
  const words = (await bench.drawing()).replaceAll(/[\u202f\u00a0]/g, "");
  const [, width, height, depth] = words.match(/(\d+) ?mm wide, (\d+)[ m]* high, (\d+)[ m]* deep/);
  return [Number(width), Number(height), Number(depth), words.match(/Finish (\w+)/)[1]].join(" ");
}

/** Waits until the unit is that one. */
async function is(bench, wanted) {
  for (let tries = 0; tries < 40 && (await unit(bench)) !== wanted; tries += 1) await bench.page.waitForTimeout(50);
  assert.equal(await unit(bench), wanted);
}

const finish = (bench, name) => bench.question("Finish").getByRole("radio", { name }).click();

async function steps(bench) {
  await bench.type("Width", "1700");
  await bench.rest();
  await bench.type("Height", "600");
  await bench.rest();
  await finish(bench, "Brick");
  await bench.rest();
  const [, , depth] = (await unit(bench)).split(" ");
  return ["1640 520 Clear", "1700 520 Clear", "1700 600 Clear", "1700 600 Brick"].map((unit) => unit.replace(/ (?=[A-Z])/, ` ${depth} `));
}

const able = async (bench) => Promise.all(
  ["Undo", "Redo"].map(async (name) => (await bench.header(name).getAttribute("aria-disabled")) === "false"));

test("a reload leaves all steps, by the page's buttons and by the browser's", async () => {
  const bench = await Bench.open(chrome);
  const states = await steps(bench);
  await bench.header("Undo").click();
  await bench.saved();
  await bench.rest();
  await bench.page.reload();
  await bench.live();
  await is(bench, states[2]);
  assert.deepEqual(await able(bench), [true, true]);
  await bench.header("Redo").click();
  await is(bench, states[3]);
  for (const state of states.slice(0, 3).reverse()) {
    await bench.header("Undo").click();
    await is(bench, state);
  }
  assert.deepEqual(await able(bench), [false, true]);
  await bench.rest();
  // Where the page went the browser went as well.
  await bench.page.reload();
  await bench.live();
  await bench.page.goForward();
  await is(bench, states[1]);
  await bench.page.goForward();
  await is(bench, states[2]);
  await bench.page.goBack();
  await is(bench, states[1]);
  // A new answer cuts what was undone, and comes behind what the load before did.
  await finish(bench, "Soot");
  await bench.rest();
  assert.deepEqual(await able(bench), [true, false]);
  await bench.page.goBack();
  await is(bench, states[1]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
