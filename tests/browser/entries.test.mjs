// The browser's entries where steps, links and reloads meet: none leads away, none has another unit's link.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Waits for the unit's width and height in the address. */
const link = (bench, width, height) =>
  bench.page.waitForFunction(([width, height]) => location.hash.includes(`/${width}x${height}x`), [width, height]);

/** Three steps: the width, then the height twice. */
async function steps(bench) {
  for (const [field, value] of [["Width", "1700"], ["Height", "600"], ["Height", "560"]]) {
    await bench.type(field, value);
    await bench.rest();
  }
  await link(bench, 1700, 560);
}

/** The browser has time to go where it is sent. */
const settle = (bench) => bench.pause(700);

async function press(bench, ...names) {
  for (const name of names) {
    await bench.header(name).click();
    await settle(bench);
  }
}

/** Goes to a place of the page by its address. */
async function skip(bench) {
  await bench.page.evaluate(() => { location.hash = "questions"; });
  await bench.page.waitForURL(/#questions$/);
}

test("undo never leaves the page, though a link within it cut off what could be done again", async () => {
  const bench = await Bench.open(chrome);
  await steps(bench);
  await press(bench, "Undo", "Undo", "Undo");
  await link(bench, 1640, 520);
  await skip(bench);
  await press(bench, "Redo", "Redo", "Redo");
  await link(bench, 1700, 560);
  await press(bench, "Undo", "Undo", "Undo");
  await link(bench, 1640, 520);
  await bench.page.goForward();
  await link(bench, 1700, 520);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an answer after a link within the page is one step, and undo takes it alone", async () => {
  const bench = await Bench.open(chrome);
  await steps(bench);
  await press(bench, "Undo");
  await skip(bench);
  await press(bench, "Redo");
  await bench.type("Width", "1800");
  await bench.rest();
  await link(bench, 1800, 560);
  await press(bench, "Undo");
  await link(bench, 1700, 560);
  await press(bench, "Undo");
  await link(bench, 1700, 600);
  await bench.page.goForward();
  await link(bench, 1700, 560);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("entries of an earlier load lead to its steps, each with its own link", async () => {
  const bench = await Bench.open(chrome);
  await steps(bench);
  await press(bench, "Undo");
  await bench.page.reload();
  await bench.live();
  for (const [go, height] of [["goBack", 520], ["goForward", 600], ["goForward", 560]]) {
    await bench.page[go]();
    await settle(bench);
    await link(bench, 1700, height);
  }
  await bench.saved();
  await bench.page.reload();
  await bench.live();
  assert.match(await bench.drawing(), /560 high/);
  assert.equal(await bench.page.getByText("opened from a link").count(), 0);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what a slider shows is saved when the page is left while it is held", async () => {
  const bench = await Bench.open(chrome);
  const slider = bench.page.getByRole("slider", { name: "Width" });
  await slider.focus();
  await bench.page.keyboard.down("ArrowRight");
  // Longer than a change takes to be saved where nothing is held.
  await bench.page.waitForTimeout(400);
  const shown = await bench.drawing();
  await bench.page.reload();
  await bench.live();
  assert.equal(await bench.drawing(), shown);
  await bench.page.keyboard.up("ArrowRight");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
