// Drafts in several tabs, for several persons, and in a page that comes back from the browser's cache.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { chromium } from "playwright-core";
import { ADA, Bench, browser } from "./page.mjs";
import { Drawer } from "./drawer.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const finish = (bench, name) => bench.question("Finish").getByRole("radio", { name }).click();

/** Another tab of the same person. */
async function tab(bench) {
  const other = new Bench(await bench.page.context().newPage());
  other.page.on("pageerror", (error) => other.errors.push(error.message));
  await other.visit();
  return other;
}

async function shows(bench, pattern) {
  for (let tries = 0; tries < 40 && !pattern.test(await bench.drawing()); tries += 1) await bench.page.waitForTimeout(50);
  assert.match(await bench.drawing(), pattern);
}

const units = async (bench) => Object.entries(await bench.kept()).filter(([name]) => name.startsWith("t")).map(([, text]) => text.split("\u001f")[3]);

test("a second tab shows what the first one has until something is answered there; then both are kept", async () => {
  const first = await Bench.open(chrome);
  await first.type("Width", "1700");
  await first.saved();
  const second = await tab(first);
  await shows(second, /1.700\smm wide/);
  await finish(first, "Brick");
  await first.saved();
  await shows(second, /1.700\smm wide.*Finish Brick/);
  assert.equal((await units(first)).length, 1, "one tab writes");
  assert.equal(await second.header("Undo").getAttribute("aria-disabled"), "true", "that was no step of this tab");
  await second.type("Height", "600");
  await second.page.getByText("this tab has a unit of its own").waitFor();
  await second.saved();
  await finish(first, "Mere");
  await first.saved();
  await shows(second, /600 high.*Finish Brick/);
  assert.deepEqual((await units(first)).map((link) => link.split("/")[5]).sort(), ["brick", "mere"]);
  const drawer = new Drawer(second);
  await drawer.open();
  await drawer.dialog.getByText("Open in another tab").waitFor();
  await drawer.close();
  await first.page.close();
  await drawer.open();
  await drawer.dialog.getByText("Left for another unit").waitFor();
  await drawer.close();
  // A tab that is loaded anew keeps to its own unit.
  const third = await tab(second);
  await finish(third, "Soot");
  await third.saved();
  await second.page.goto("about:blank");
  await second.visit();
  await shows(second, /600 high.*Finish Brick/);
  assert.deepEqual([first.errors, second.errors, third.errors], [[], [], []]);
  await second.close();
});

test("the list of drafts is the same in all tabs", async () => {
  const first = await Bench.open(chrome);
  const second = await tab(first);
  const [one, other] = [new Drawer(first), new Drawer(second)];
  await one.keep("Hall");
  await second.page.locator(".count").getByText("1").waitFor();
  await other.open();
  await other.press("Delete Hall");
  await other.says("“Hall” is deleted.");
  await first.page.waitForFunction(() => document.querySelector(".count").textContent === "");
  assert.deepEqual([first.errors, second.errors], [[], []]);
  await first.close();
});

test("a new visitor finds nothing of the one before, in no tab; for a minute it can be taken back", async () => {
  const first = await Bench.open(chrome);
  await first.page.clock.install();
  await first.page.reload();
  await first.live();
  await first.address(ADA);
  await first.page.keyboard.press("Escape");
  await first.type("Width", "1700");
  await first.page.clock.runFor(1000);
  const drawer = new Drawer(first);
  await drawer.keep("Hall");
  const second = await tab(first);
  await second.type("Height", "600");
  await second.saved();
  const visitor = async () => {
    await drawer.open();
    await drawer.press("New visitor");
    await first.page.getByText("for an order are cleared. For a minute").waitFor();
    await first.page.clock.runFor(1000);
    await first.saved();
  };
  await visitor();
  await shows(first, /1.640\smm wide/);
  await shows(second, /1.640\smm wide, 520 high/);
  assert.doesNotMatch(JSON.stringify(await first.stored()), /1700|x600x|Hall/, "nothing is left in the browser at once");
  await first.button("Order").click();
  assert.equal((await first.customer()).Name, "");
  await first.page.keyboard.press("Escape");
  await first.page.locator(".banner").getByRole("button", { name: "Take it back" }).click();
  await shows(first, /1.700\smm wide/);
  await first.page.clock.runFor(1000);
  await drawer.open();
  assert.equal((await drawer.names())[0], "Hall");
  assert.match(JSON.stringify(await first.stored()), /x600x/, "the other tab's unit is there again too");
  await drawer.close();
  await visitor();
  await first.page.clock.runFor(60_000);
  await first.button("Begin afresh").waitFor();
  assert.equal(await first.header("Undo").getAttribute("aria-disabled"), "true");
  await first.page.goBack();
  await first.page.clock.runFor(1000);
  await shows(first, /1.640\smm wide/);
  assert.doesNotMatch(JSON.stringify(await first.stored()), /1700|x600x|Hall/);
  assert.deepEqual([first.errors, second.errors], [[], []]);
  await first.close();
});

test("a new visitor begins with the first unit and no word of the one before, and Redo clears again what was taken back", async () => {
  const bench = await Bench.open(chrome);
  const drawer = new Drawer(bench);
  await bench.question("Model").getByRole("radio", { name: "Teasel, sideboard" }).click();
  await bench.type("Width", "1700");
  await drawer.keep("Hall");
  await drawer.open();
  await drawer.press("New visitor");
  const cleared = bench.page.getByText("for an order are cleared. For a minute");
  await cleared.waitFor();
  await shows(bench, /1.640\smm wide, 520 high/);
  await bench.rest();
  assert.ok(!await bench.page.locator(".did").isVisible(), "nothing is told of the unit before");
  await bench.page.locator(".banner").getByRole("button", { name: "Take it back" }).click();
  await shows(bench, /1.700\smm wide, 760 high/);
  await bench.page.locator(".count").getByText("1").waitFor();
  await bench.saved();
  assert.match(JSON.stringify(await bench.stored()), /Hall/);
  await bench.header("Redo").click();
  await cleared.waitFor();
  await shows(bench, /1.640\smm wide, 520 high/);
  assert.equal(await drawer.count(), "");
  await bench.rest();
  assert.ok(!await bench.page.locator(".did").isVisible());
  const left = async () => /teasel|Hall/.test(JSON.stringify(await bench.stored()));
  for (let tries = 0; tries < 40 && await left(); tries += 1) await bench.page.waitForTimeout(50);
  assert.ok(!await left(), "nothing is left in the browser");
  // What comes now can be taken back by itself, and a reload brings nothing of the one before.
  await bench.type("Height", "600");
  await bench.saved();
  await bench.page.reload();
  await bench.live();
  await shows(bench, /600 high/);
  await bench.header("Undo").click();
  await shows(bench, /1.640\smm wide, 520 high/);
  assert.equal(await bench.header("Undo").getAttribute("aria-disabled"), "true");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("to begin afresh leaves the drafts, and the unit that was there", async () => {
  const bench = await Bench.open(chrome);
  const drawer = new Drawer(bench);
  await drawer.keep("Hall");
  await bench.type("Width", "1700");
  await bench.saved();
  await bench.button("Begin afresh").click();
  await bench.saved();
  await drawer.open();
  assert.equal((await drawer.names()).length, 2);
  await drawer.press("Open Sedge 1\u202f700\u202f×\u202f520");
  await shows(bench, /1.700\smm wide/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what another tab has open is that tab's: here it gets no other name, and is not deleted", async () => {
  const first = await Bench.open(chrome);
  await first.type("Width", "1700");
  await first.saved();
  const second = await tab(first);
  await second.type("Height", "600");
  await second.saved();
  const drawer = new Drawer(second);
  const own = "Sedge 1\u202f700\u202f×\u202f520";
  await drawer.open();
  await drawer.item(own).getByText("Open in another tab").waitFor();
  assert.equal(await drawer.dialog.getByRole("button", { name: /^Delete/ }).count(), 0);
  await drawer.rename(own, "Hall");
  await drawer.says("It is called “Hall” now.");
  assert.deepEqual(await drawer.names(), ["Hall", own], "a copy has the name");
  await finish(first, "Brick");
  await first.saved();
  const texts = Object.entries(await first.kept()).map(([name, text]) => [name[0], ...text.split("\u001f").slice(2, 4)].join(" "));
  assert.deepEqual(texts.map((text) => text.match(/^[td] \S* ?1\/sedge\/\w+\/0\/birch-18\/\w+/)[0]).sort(), [
    "d Hall 1/sedge/1700x520x420/0/birch-18/clear", "t  1/sedge/1700x520x420/0/birch-18/brick",
    "t  1/sedge/1700x600x420/0/birch-18/clear",
  ]);
  assert.deepEqual([first.errors, second.errors], [[], []]);
  await first.close();
});

test("a unit that a tab has taken meanwhile is not deleted as a second copy of a draft", async () => {
  const first = await Bench.open(chrome);
  await first.type("Width", "1700");
  await first.saved();
  const [[name, text]] = Object.entries(await first.kept());
  await first.kept({ "d1-copy": text });
  // This tab asks who has what before the first one is there, as when both begin at once.
  const second = new Bench(await first.page.context().newPage());
  await second.page.addInitScript(() => { LockManager.prototype.query = async () => ({ held: [] }); });
  await second.visit();
  await shows(second, /1.700\smm wide/);
  await second.rest();
  assert.deepEqual(Object.keys(await first.kept()).sort(), ["d1-copy", name].sort());
  // Once nobody has it, it goes.
  await second.type("Width", "1800");
  await second.saved();
  await first.page.close();
  await second.page.reload();
  await second.live();
  const left = async () => Object.keys(await second.kept());
  for (let tries = 0; tries < 40 && (await left()).includes(name); tries += 1) await second.page.waitForTimeout(50);
  assert.deepEqual((await left()).map(([kind]) => kind).sort(), ["d", "t"]);
  assert.ok(!(await left()).includes(name));
  await second.close();
});

/** A browser that keeps pages for the way back to them; playwright's own does not. */
async function keeping() {
  const cached = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"],
    ignoreDefaultArgs: ["--disable-back-forward-cache"],
  });
  // After a test that fails as well: a browser that stays open keeps the whole run from its end.
  after(() => cached.close());
  return cached;
}

/** Leaves the page; what comes back has to be the same one. */
async function leave(bench) {
  await bench.page.evaluate(() => addEventListener("pageshow", ({ persisted }) => { window.persisted = persisted; }));
  await bench.page.goto("data:text/html,elsewhere");
}

async function back(bench) {
  await bench.page.goBack({ waitUntil: "commit" });
  await bench.live();
  // It is there before it has heard that it is shown again.
  const persisted = bench.page.waitForFunction(() => window.persisted, undefined, { timeout: 10_000 });
  await persisted.catch(() => assert.fail("nothing keeps the page from the cache"));
}

test("a page that comes back from the browser's cache goes on with its unit", async () => {
  const cached = await keeping();
  const bench = await Bench.open(cached);
  await bench.type("Width", "1700");
  await bench.saved();
  const [name] = Object.keys(await bench.kept());
  await leave(bench);
  await back(bench);
  await finish(bench, "Soot");
  await bench.saved();
  assert.deepEqual(Object.keys(await bench.kept()), [name]);
  assert.match(await bench.keptUnit(), /1700x.*soot/);
  // It has it again for itself.
  const second = await tab(bench);
  await finish(second, "Brick");
  await second.saved();
  assert.equal((await units(second)).length, 2);
  assert.deepEqual([bench.errors, second.errors], [[], []]);
  await cached.close();
});

test("a new visitor finds nothing in a page that waited in the browser's cache", async () => {
  const cached = await keeping();
  const first = await Bench.open(cached);
  await first.type("Width", "1700");
  await first.saved();
  await leave(first);
  const second = await tab(first);
  const drawer = new Drawer(second);
  await drawer.open();
  await drawer.press("New visitor");
  await second.page.getByText("for an order are cleared. For a minute").waitFor();
  await back(first);
  await shows(first, /1.640\smm wide/);
  await first.rest();
  assert.equal(await first.header("Undo").getAttribute("aria-disabled"), "true");
  assert.doesNotMatch(JSON.stringify(await first.stored()), /1700/);
  assert.deepEqual([first.errors, second.errors], [[], []]);
  await cached.close();
});

test("a page that waits in the browser's cache has its unit for no other tab to wait for", async () => {
  const cached = await keeping();
  const first = await Bench.open(cached);
  await first.type("Width", "1700");
  await first.saved();
  await leave(first);
  const second = await tab(first);
  await shows(second, /1.700\smm wide/);
  await finish(second, "Brick");
  await second.saved();
  assert.equal((await units(second)).length, 1, "it took the unit over");
  await back(first);
  await shows(first, /1.700\smm wide.*Finish Clear/);
  await first.saved();
  await finish(first, "Soot");
  await first.saved();
  assert.deepEqual((await units(first)).map((link) => link.split("/")[5]).sort(), ["brick", "soot"]);
  assert.deepEqual([first.errors, second.errors], [[], []]);
  await cached.close();
});
