// Every start that fails says so, and has a way on.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** A fresh visit, prepared by `prepare`; the program is not waited for. */
async function visit(prepare, options = {}) {
  const context = await chrome.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: "block", ...options });
  const page = await context.newPage();
  await prepare?.(page);
  await page.goto(process.env.SLOTWRIGHT_URL);
  return new Bench(page);
}

const told = (bench) => bench.page.locator("#trouble");
const again = (bench) => told(bench).getByRole("link", { name: "Try again" });

/** That the trouble is told, the models are shown, and nothing waits for ever below. */
async function assertTold(bench, pattern) {
  await told(bench).waitFor();
  assert.match(await told(bench).innerText(), pattern);
  assert.equal(await told(bench).locator(".models li svg").count(), 3);
  assert.match(await told(bench).innerText(), /Sedge\s+low media unit\s+Teasel\s+sideboard\s+Bulrush\s+tall open shelf/);
  assert.equal(await bench.page.locator("#shell main").isVisible(), false);
  assert.equal(await bench.page.getByRole("heading", { name: "Odd Lintel Workshop" }).isVisible(), true);
}

/** That the page works after all. */
async function assertWorks(bench) {
  await bench.page.getByText("Can be made", { exact: true }).waitFor();
  assert.equal(await told(bench).isVisible(), false);
}

test("without scripts the page says what it needs and shows the models", async () => {
  const bench = await visit(undefined, { javaScriptEnabled: false });
  await assertTold(bench, /for that it needs scripts/);
  await bench.close();
});

for (const [what, take] of [
  ["without WebAssembly", () => { delete globalThis.WebAssembly; }],
  ["with too old a WebAssembly", () => {
    WebAssembly.validate = () => false;
    WebAssembly.instantiateStreaming = () => Promise.reject(new WebAssembly.CompileError("no such instruction"));
  }],
]) {
  test(`${what} the page says that the browser cannot run it`, async () => {
    const bench = await visit((page) => page.addInitScript(take));
    await assertTold(bench, /This browser cannot run the page/);
    assert.equal(await bench.page.evaluate(() => document.activeElement.id), "trouble");
    await bench.close();
  });
}

const cut = async (route) => {
  const response = await route.fetch();
  const body = await response.body();
  const headers = response.headers();
  delete headers["content-length"];
  delete headers["content-encoding"];
  await route.fulfill({ response, headers, body: body.subarray(0, body.length / 2) });
};
const absent = (route) => route.fulfill({ status: 404, body: "<p>Not here</p>", contentType: "text/html" });

for (const [what, file, fail] of [
  ["a program that is not there", "**/page_bg.wasm", absent],
  ["a line that breaks", "**/page_bg.wasm", (route) => route.abort()],
  ["a program that is cut short", "**/page_bg.wasm", cut],
  ["a program of another build", "**/page_bg.wasm", (route) => route.fulfill({
    contentType: "application/wasm", body: Buffer.from([0, 97, 115, 109, 1, 0, 0, 0]) })],
  ["a script that is not there", "**/page.js", absent],
  ["a script that is cut short", "**/page.js", cut],
  ["no script that starts it", "**/start.js", absent],
]) {
  test(`${what} is told, and it is tried again`, async () => {
    let broken = true;
    const bench = await visit((page) => page.route(file, (route) => (broken ? fail(route) : route.continue())));
    await assertTold(bench, /A part of the page did not arrive/);
    broken = false;
    await again(bench).click();
    await assertWorks(bench);
    await bench.close();
  });
}

test("the way on keeps the link of the unit", async () => {
  let broken = true;
  const bench = await visit(async (page) => {
    await page.route("**/page_bg.wasm", (route) => (broken ? route.abort() : route.continue()));
    await page.addInitScript(() => { if (!location.hash) history.replaceState(null, "", "#1/sedge/1640x600x420/25/birch-9/clear/2o,2s1,2o"); });
  });
  await told(bench).waitFor();
  broken = false;
  await again(bench).click();
  await bench.page.locator("#page").waitFor();
  assert.match(bench.page.url(), /#1\/sedge\/1640x600x420/);
  await bench.close();
});

test("a part that never comes leaves the first view, which says that it takes long", async () => {
  let silent = true;
  const bench = await visit((page) => page.route("**/page_bg.wasm", (route) => (silent ? undefined : route.continue())));
  const slow = bench.page.getByText("This takes long");
  await slow.waitFor({ state: "attached" });
  assert.equal(await slow.isVisible(), false, "not at once");
  await bench.page.evaluate(() => document.querySelector(".slow").getAnimations().forEach((animation) => animation.finish()));
  assert.equal(await slow.isVisible(), true);
  assert.equal(await bench.page.getByRole("heading", { name: "How big" }).isVisible(), true);
  silent = false;
  await bench.page.getByRole("link", { name: "Try again" }).click();
  await assertWorks(bench);
  await bench.close();
});

test("a range that never answers is waited for, then the built-in one takes its place and orders nothing", async () => {
  const bench = await visit(async (page) => {
    await page.clock.install();
    await page.route("**/ranges/fenland.toml", () => undefined);
  });
  await bench.page.waitForRequest("**/ranges/fenland.toml");
  const why = bench.page.getByText("Nothing can be ordered now. The workshop’s range does not come");
  for (let tries = 0; tries < 100 && !(await why.isVisible()); tries += 1) await bench.page.clock.runFor(500);
  await why.waitFor();
  for (let tries = 0; tries < 20 && !/No range file/.test(await bench.tally()); tries += 1) await bench.page.clock.runFor(200);
  assert.match(await bench.tally(), /Cannot be ordered now\s+No range file/);
  await bench.close();
});

test("a broken range is told in words for a customer, and what is wrong with it a step deeper", async () => {
  const bench = await visit((page) => page.route("**/ranges/fenland.toml", (route) => route.fulfill({ body: "format = 1\n[build]\n" })));
  const banner = bench.page.locator("#no-range");
  await banner.getByText("Nothing can be ordered now. The workshop’s range cannot be read").waitFor();
  const deeper = banner.getByText("What is wrong with it, for the workshop");
  await deeper.waitFor();
  const wrong = banner.getByText(/\sand \d+ more/);
  assert.equal(await wrong.isVisible(), false);
  await deeper.click();
  await wrong.waitFor();
  assert.match(await bench.tally(), /Cannot be ordered now/);
  await bench.close();
});

test("without workers the page says once that there is no advice, and everything else holds", async () => {
  const bench = await visit((page) => page.addInitScript(() => { delete globalThis.Worker; }));
  const said = bench.page.getByText(/Advice cannot be given now/);
  await said.waitFor();
  await assertWorks(bench);
  await bench.page.waitForFunction(() => document.querySelectorAll(".dims text").length > 0);
  await bench.page.locator(".banner", { hasText: /Advice cannot be given now/ }).getByRole("button", { name: "Close" }).click();
  await bench.type("Height", "600");
  assert.match(await bench.tally(), /Can be made/);
  assert.equal(await said.count(), 0);
  await bench.address();
  await bench.save();
  await bench.dialog.getByText("The order desk could not be loaded.").waitFor();
  await bench.close();
});

for (const [what, take] of [
  ["no canvas for workers", (page) => page.addInitScript(() => { delete HTMLCanvasElement.prototype.transferControlToOffscreen; })],
  ["no workers", (page) => page.addInitScript(() => { delete globalThis.Worker; })],
  // A worker that knows the canvas and no WebGL: the page's own script is the worker's as well.
  ["no WebGL in workers", (page) => page.route("**/start.js", async (route) => {
    const response = await route.fetch();
    const blind = "if (globalThis.name === 'scene') OffscreenCanvas.prototype.getContext = () => null;\n";
    await route.fulfill({ response, body: blind + await response.text() });
  })],
]) {
  test(`with ${what} the page draws the solid unit itself, and it answers`, async () => {
    const bench = await visit(take);
    const { page } = bench;
    await page.waitForFunction(() => document.querySelectorAll(".dims text:not(.name)").length > 0);
    assert.equal(await bench.button("Solid").getAttribute("aria-pressed"), "true");
    assert.equal(await page.getByText("This browser draws no solid unit here").count(), 0);
    const size = (width) => page.waitForFunction((width) =>
      [...document.querySelectorAll(".dims text")].some((text) => text.textContent.replace(/\D/g, "") === width), width);
    await size("1640");
    await bench.type("Width", "1700");
    await size("1700");
    await bench.button("Apart").or(bench.button("Person, 1.70 m")).filter({ visible: true }).first().click();
    await page.waitForFunction(() => document.querySelector(".views.poses [aria-pressed=true], .quick [aria-pressed=true]"));
    // The canvas has colours of the unit: more than one.
    const colours = await page.locator("canvas").screenshot().then((picture) => new Set(picture).size);
    assert.ok(colours > 32, `${colours}`);
    await bench.close();
  });
}

for (const [what, take] of [
  ["no WebGL at all", () => {
    delete HTMLCanvasElement.prototype.transferControlToOffscreen;
    HTMLCanvasElement.prototype.getContext = () => null;
  }],
  ["no workers and no WebGL", () => {
    delete globalThis.Worker;
    HTMLCanvasElement.prototype.getContext = () => null;
  }],
]) {
  test(`with ${what} the drawing takes the place of the solid unit, and the reason stands at the switch`, async () => {
    const bench = await visit((page) => page.addInitScript(take));
    const reason = bench.page.getByText("This browser draws no solid unit here");
    await reason.waitFor();
    assert.equal(await bench.page.locator(".paper svg.drawing").isVisible(), true);
    const solid = bench.button("Solid");
    assert.equal(await solid.getAttribute("aria-disabled"), "true");
    const described = await solid.getAttribute("aria-describedby");
    assert.equal(await bench.page.locator(`#${described}`).innerText(), await reason.innerText());
    await bench.close();
  });
}

for (const day of ["1970-01-02T12:00:00", "2150-06-01T12:00:00", "9999-12-31T12:00:00"]) {
  test(`a clock that says ${day.slice(0, 10)} is told, and nothing is ordered until it is right`, async () => {
    const bench = await visit((page) => page.clock.setFixedTime(new Date(day)));
    await bench.page.getByText(`Nothing can be ordered now. This device says that it is ${day.slice(0, 10)}`).waitFor();
    assert.match(await bench.tally(), /With you by\s+–[\s\S]*Cannot be ordered now\s+The date is wrong/);
    await bench.button("Order").click({ force: true });
    assert.equal(await bench.dialog.isVisible(), false);
    await bench.page.clock.setFixedTime(new Date("2026-11-30T12:00:00"));
    await bench.page.locator("#wrong-clock").getByRole("button", { name: "Try again" }).click();
    await bench.page.getByText("Can be made", { exact: true }).waitFor();
    assert.doesNotMatch(await bench.tally(), /With you by\s+–/);
    await bench.close();
  });
}

test("a page that stops by a fault of its own says so; what was chosen is there when it is loaded again", async () => {
  const bench = await visit();
  await bench.page.locator("#page").waitFor();
  await bench.type("Height", "600");
  await bench.rest();
  await bench.page.evaluate(() => setTimeout(() => { throw new WebAssembly.RuntimeError("unreachable"); }));
  await told(bench).waitFor();
  assert.match(await told(bench).innerText(), /The page has stopped by a fault of its own/);
  await again(bench).click();
  await assertWorks(bench);
  assert.match(await bench.drawing(), /600 high/);
  await bench.close();
});
