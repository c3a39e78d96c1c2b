// Steps outlive a reload.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";
import { able, finish, is, steps } from "./stepped.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

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
