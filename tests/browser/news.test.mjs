// What is new is offered and never forced: another version of the page, another range.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { visited } from "./host.mjs";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const VERSION = "A new version of this page is ready.";
const RANGE = "The workshop has changed its range:";

/** The page is looked at again after a while. */
const look = (bench) => bench.page.evaluate(() => { document.dispatchEvent(new Event("visibilitychange")); });

/** Loads what is offered, and waits for the page that comes of it. */
async function load(bench) {
  const loaded = bench.page.waitForEvent("load");
  await bench.button("Load it now").click();
  await loaded;
  await bench.live();
}

/** The folder of the program with which a page runs. */
const program = (bench) => bench.page.evaluate(() => document.getElementById("start").src.split("/").at(-2));
const caches = (bench) => bench.page.evaluate(() => globalThis.caches.keys());
const told = (bench, text) => bench.page.getByRole("status").getByText(text);

/** The same page still, by a mark that no reload survives. */
const mark = (bench) => bench.page.evaluate(() => { globalThis.marked = true; });
const isMarked = (bench) => bench.page.evaluate(() => globalThis.marked === true);

test("a new version is offered; one tab loads it, the other goes on with its own build until it is asked", async (context) => {
  const { host, bench } = await visited(chrome, context);
  const other = await Bench.tab(bench.page.context(), host.url);
  await other.cached();
  await bench.type("Height", "600");
  await bench.rest();
  const before = await program(bench);
  await mark(bench);
  await mark(other);
  host.rebuild();
  await look(bench);
  for (const tab of [bench, other]) await told(tab, VERSION).waitFor();
  // Offered, and no more than that; a plain reload changes nothing.
  assert.ok(await isMarked(bench) && await isMarked(other));
  await bench.page.reload();
  await told(bench, VERSION).waitFor();
  assert.equal(await program(bench), before);

  await load(bench);
  assert.equal(await program(bench), host.program);
  assert.match(await bench.drawing(), /600 high/, "what was chosen is there");
  assert.equal(await told(bench, VERSION).isVisible(), false);

  assert.ok(await isMarked(other), "nobody asked there");
  assert.equal(await program(other), before);
  // The host has nothing of the old build any more; this page has all of it.
  await other.order();
  await other.button("Link").click();
  await other.page.getByRole("img", { name: "QR code of the link to this unit" }).waitFor();
  await other.page.keyboard.press("Escape");
  assert.equal((await caches(bench)).length, 3, "both builds and the range");
  await load(other);
  assert.equal(await program(other), host.program);
  // Now nobody needs the old one.
  await other.page.waitForFunction(async () => (await globalThis.caches.keys()).length === 2);
  await host.stop();
  await other.page.reload();
  await other.order();
  assert.deepEqual([...bench.errors, ...other.errors].filter((text) => !text.includes("ERR_CONNECTION_REFUSED")), []);
});

test("a new version can be put off, and is there the next time", async (context) => {
  const { host, bench } = await visited(chrome, context);
  const before = await program(bench);
  host.rebuild();
  await look(bench);
  await told(bench, VERSION).waitFor();
  const height = bench.size("Height");
  await height.focus();
  await bench.button("Later").focus();
  await bench.page.keyboard.press("Enter");
  assert.equal(await told(bench, VERSION).isVisible(), false);
  assert.ok(await height.evaluate((field) => field === document.activeElement), "the focus is where it was");
  await look(bench);
  assert.equal(await program(bench), before);
  // Once no page of the old version is open, the next one is of the new.
  const browsing = bench.page.context();
  await bench.page.close();
  const next = await Bench.tab(browsing, host.url);
  await next.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  assert.equal(await program(next), host.program);
});

test("a version that is not whole is not offered, and the page goes on", async (context) => {
  const { host, bench } = await visited(chrome, context);
  host.rebuild();
  // The page was put there cut short.
  const whole = host.edit("index.html", (html) => html.replace("</html>", ""));
  await look(bench);
  const failed = () => bench.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => undefined);
    const { installing } = registration;
    if (installing) await new Promise((resolve) => installing.addEventListener("statechange", resolve));
    return registration.waiting === null;
  });
  assert.ok(await failed());
  assert.equal(await told(bench, VERSION).isVisible(), false);
  host.edit("index.html", () => whole);
  await look(bench);
  await told(bench, VERSION).waitFor();
});

test("a range that changed is told while the page is open, and what became different once it is loaded", async (context) => {
  const { host, bench } = await visited(chrome, context);
  await bench.type("Height", "600");
  await bench.rest();
  await bench.page.waitForURL(/@[0-9a-f]{8}=\d+$/);
  await look(bench);
  const price = async () => (await bench.tally()).match(/€ ?[\d ]+\.\d\d/)[0];
  const usual = await price();
  host.edit("ranges/fenland.toml", (text) => text.replaceAll(/price_minor = (\d+)/g, "price_minor = $10"));
  await look(bench);
  await told(bench, RANGE).waitFor();
  assert.equal(await price(), usual, "nothing changes silently");
  await load(bench);
  await told(bench, /^The range has changed since you last saw this unit: it cost € ?[\d\s]+\.\d\d with tax, and costs € ?[\d\s]+\.\d\d now\.$/).waitFor();
  assert.equal(await told(bench, RANGE).isVisible(), false);
  assert.deepEqual(bench.errors, []);
});

test("who comes back without a link is told what the range has changed, once", async (context) => {
  const { host, bench } = await visited(chrome, context);
  await bench.question("Finish").getByRole("radio", { name: "Chalk" }).click();
  await bench.rest();
  await bench.page.waitForURL(/chalk.*@[0-9a-f]{8}=\d+$/);
  const come = async () => {
    await bench.page.goto("about:blank");
    await bench.visit();
  };
  await come();
  await bench.page.waitForURL(/@[0-9a-f]{8}=\d+$/);
  assert.equal(await bench.page.getByText("since you last saw").count(), 0);
  host.edit("ranges/fenland.toml", (text) => text.replaceAll("\"chalk\"", "\"lime\""));
  await come();
  // Spoken sentence by sentence; in sight it is whole.
  await bench.page.getByText(/^The range has changed since you last saw this unit: it could be ordered, and cannot be now\. This finish is not in the range\./).first().waitFor();
  while ((await bench.keptUnit()).includes("/@")) await bench.page.waitForTimeout(50);
  await come();
  // Time for the order desk to say it again.
  await bench.page.waitForTimeout(1500);
  assert.equal(await bench.page.getByText("since you last saw").count(), 0);
});
