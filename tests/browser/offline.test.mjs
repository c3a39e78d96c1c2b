// The page without a network: after one visit all of it is there, wherever it is hosted.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { visited } from "./host.mjs";
import { ADA, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Loads the page anew. */
async function reload(bench) {
  await bench.page.reload();
  await bench.live();
}

/** What a browser says of a host that is gone is no fault of the page. */
const faults = (bench) => bench.errors.filter((text) => !text.includes("ERR_CONNECTION_REFUSED"));

/** Uses all of the page: each model, picture, adviser, order desk, link. */
async function useAll(bench) {
  for (const model of ["Teasel, sideboard", "Bulrush, tall open shelf", "Sedge, low media unit"]) {
    await bench.question("Model").getByRole("radio", { name: model }).click();
    assert.match(await bench.tally(), /Can be made/, model);
  }
  await bench.stage();
  await bench.question("Device in bay 1").getByRole("radio", { name: "Receiver", exact: true }).click();
  await bench.page.getByText("Receiver. This does not go alone: ").waitFor();
  await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  const file = await bench.order();
  await bench.button("Begin afresh").click();
  await bench.open(file);
  await bench.page.getByText("Everything that it promised still holds.").waitFor();
  assert.match(await bench.drawing(), /Finish Brick/);
  await bench.button("Order").click();
  assert.deepEqual(await bench.customer(), ADA);
  await bench.page.keyboard.press("Escape");
  await bench.button("Link").click();
  const dialog = bench.page.getByRole("dialog", { name: "A link to this unit" });
  await dialog.getByRole("img", { name: "QR code of the link to this unit" }).waitFor();
  await bench.page.keyboard.press("Escape");
}

for (const base of ["/", "/shop/cabinets/"]) {
  test(`after one visit all of the page is there without its host, at ${base}`, async (context) => {
    const { host, bench } = await visited(chrome, context, base);
    await host.stop();
    await useAll(bench);
    await reload(bench);
    await useAll(bench);
    await bench.page.goto(`${host.url}index.html`);
    await bench.live();
    assert.deepEqual(faults(bench), []);
  });
}

test("a later visit asks the host for what may be new alone", async (context) => {
  const { host, bench } = await visited(chrome, context);
  host.asked.length = 0;
  await reload(bench);
  await bench.stage();
  await bench.order();
  const asked = new Set(host.asked.filter((path) => path !== "sw.js"));
  assert.deepEqual([...asked], ["ranges/fenland.toml"]);
});

test("the host's range counts; where it does not answer, the last one does", async (context) => {
  const { host, bench } = await visited(chrome, context);
  const price = async () => (await bench.tally()).match(/€ ?([\d ]+\.\d\d)/)[1];
  const usual = await price();
  host.edit("ranges/fenland.toml", (text) => text.replaceAll(/price_minor = (\d+)/g, "price_minor = $10"));
  await reload(bench);
  const dearer = await price();
  assert.notEqual(dearer, usual);
  host.silent.add("ranges/fenland.toml");
  await reload(bench);
  assert.equal(await price(), dearer);
  assert.match(await bench.tally(), /Can be made/);
});

test("the component for the room is kept once it was loaded, and not before", async (context) => {
  const { host, bench } = await visited(chrome, context);
  const load = () => bench.page.evaluate(() => fetch("room/model-viewer.js").then((answer) => answer.text(), () => "").then((text) => text.length));
  assert.ok(!host.asked.includes("room/model-viewer.js"));
  const whole = await load();
  assert.ok(whole > 100_000, `${whole} letters`);
  await host.stop();
  assert.equal(await load(), whole);
});

test("the page can be installed, and what it offers then works", async (context) => {
  const { host, bench } = await visited(chrome, context, "/cabinets/");
  const devtools = await bench.page.context().newCDPSession(bench.page);
  const { data, errors, url } = await devtools.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  // A browser without a profile installs nothing; that alone it may say.
  const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
  assert.deepEqual(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== "in-incognito"), []);
  const manifest = JSON.parse(data);
  for (const { src } of manifest.icons) {
    const answer = await fetch(new URL(src, url));
    assert.equal(answer.status, 200, src);
  }
  await bench.type("Height", "600");
  await bench.rest();
  const [shortcut] = manifest.shortcuts;
  await bench.page.goto("about:blank");
  await bench.page.goto(new URL(shortcut.url, url).href);
  await bench.button("Take it back").waitFor();
  assert.match(await bench.drawing(), /520 high/);
  assert.match(await bench.page.evaluate(() => location.hash), /^#1\/sedge\//);
  await bench.button("Take it back").click();
  assert.match(await bench.drawing(), /600 high/);
  assert.deepEqual(bench.errors, []);
});

test("that there is no network stands beside what is saved", async (context) => {
  const { bench } = await visited(chrome, context);
  const told = () => bench.page.locator(".kept").evaluate((kept) => getComputedStyle(kept, "::after").content);
  assert.equal(await told(), "none");
  await bench.page.context().setOffline(true);
  await bench.page.waitForFunction(() => document.documentElement.hasAttribute("data-offline"));
  assert.match(await told(), /offline/);
  await bench.page.context().setOffline(false);
  await bench.page.waitForFunction(() => !document.documentElement.hasAttribute("data-offline"));
});
