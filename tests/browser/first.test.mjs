// What stands in the page before its program: in the places of the live page, without a figure.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Elements that keep their places; figures of the strip make its columns as wide as they are. */
const KEPT = [
  "header", ".workshop", ".range", ".tools", ".stage", ".tops", ".scene", ".cameras", ".apart", ".fields", ".choices.row",
  ".size .stepped", ".size .slider", ".tally", ".tally .main",
];

/** Opens the page and holds its program back until `go` is called. */
async function held(size, address = "") {
  const context = await chrome.newContext({ viewport: size, serviceWorkers: "block", reducedMotion: "reduce" });
  const page = await context.newPage();
  let go;
  const free = new Promise((resolve) => { go = resolve; });
  await page.route("**/page_bg.wasm", async (route) => { await free; await route.continue(); });
  await page.addInitScript(() => {
    globalThis.shifts = [];
    new PerformanceObserver((list) => globalThis.shifts.push(...list.getEntries().map(({ value }) => value)))
      .observe({ type: "layout-shift", buffered: true });
  });
  await page.goto(process.env.SLOTWRIGHT_URL + address);
  await page.evaluate(() => document.fonts.ready);
  return { page, go };
}

async function places(page) {
  return page.evaluate((kept) => kept.map((selector) => {
    const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
    return [selector, x, y, width, height].join(" ");
  }), KEPT);
}

for (const [width, height] of [[360, 740], [768, 1024], [1440, 900]]) {
  test(`at ${width} pixels nothing moves when the live page takes its place`, async () => {
    const { page, go } = await held({ width, height });
    const before = await places(page);
    assert.equal(await page.locator("#first-drawing svg").isVisible(), true);
    go();
    await page.locator("#page").waitFor();
    assert.deepEqual(await places(page), before);
    await page.waitForFunction(() => document.querySelector(".notice"));
    await page.waitForFunction(() => !document.getElementById("first-drawing"));
    const shift = await page.evaluate(() => globalThis.shifts.reduce((sum, shift) => sum + shift, 0));
    assert.ok(shift < 0.02, `${shift}`);
    await page.context().close();
  });
}

test("nobody can press what does nothing yet", async () => {
  const { page } = await held({ width: 1440, height: 900 });
  const pressed = await page.locator("#shell :is(button, input, select)").evaluateAll(
    (all) => all.filter((control) => !control.closest("[inert]")).map((control) => control.outerHTML));
  assert.deepEqual(pressed, []);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement.tagName), "BODY", "after the way to the questions there is nothing");
  await page.context().close();
});

test("who stands on the way to the questions stands there in the live page too", async () => {
  const { page, go } = await held({ width: 1440, height: 900 });
  await page.keyboard.press("Tab");
  go();
  await page.locator("#page #question-looks").waitFor();
  assert.deepEqual(await page.evaluate(() => [document.activeElement.textContent, Boolean(document.activeElement.closest("#page"))]),
    [await page.locator(".skip").first().textContent(), true]);
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => Boolean(document.activeElement.closest("#questions"))), true);
  await page.context().close();
});

test("where a link says another unit, the drawing keeps its room and is not shown", async () => {
  const { page, go } = await held({ width: 1440, height: 900 }, "#1/teasel/1640x420x340/25/birch-9/chalk/2o,2o,2o");
  const drawing = page.locator("#first-drawing svg");
  assert.equal(await drawing.isVisible(), false);
  assert.ok((await drawing.boundingBox()).width > 300);
  go();
  await page.locator("#page").waitFor();
  await page.context().close();
});
