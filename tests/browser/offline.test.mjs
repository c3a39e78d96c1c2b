// The page without a network: after one visit all of it is there, wherever it is hosted.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Host } from "./host.mjs";
import { ADA, Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** A host and a page of it that is kept by now. */
async function visited(base) {
  const host = await Host.open(base);
  const bench = await Bench.open(chrome, { url: host.url });
  await kept(bench);
  return { host, bench };
}

/** Waits until all files are kept and the page has them from there. */
const kept = (bench) => bench.page.evaluate(async () => {
  const { serviceWorker } = navigator;
  await serviceWorker.ready;
  if (!serviceWorker.controller) await new Promise((resolve) => serviceWorker.addEventListener("controllerchange", resolve));
});

/** Loads the page anew. */
async function reload(bench) {
  await bench.page.reload();
  await bench.button("Order spec").waitFor();
}

/** What a browser says of a host that is gone is no fault of the page. */
const faults = (bench) => bench.errors.filter((text) => !text.includes("ERR_CONNECTION_REFUSED"));

/** Uses all of the page: each model, picture, adviser, order desk, link. */
async function useAll(bench) {
  for (const model of ["Teasel, sideboard", "Osier, tall cabinet", "Sedge, media bench"]) {
    await bench.group("Model").getByRole("button", { name: model }).click();
    assert.match(await bench.tally(), /Can be made/, model);
  }
  await bench.stage();
  await bench.group("Device in bay 1").getByRole("button", { name: "Receiver", exact: true }).click();
  await bench.page.getByText("Receiver. This does not go alone: ").waitFor();
  await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  await bench.group("Finish").getByRole("button", { name: "Brick" }).click();
  const file = await bench.order();
  await bench.button("Begin afresh").click();
  await bench.open(file);
  await bench.page.getByText("Everything that it promised still holds.").waitFor();
  assert.match(await bench.drawing(), /Finish Brick/);
  await bench.button("Order spec").click();
  assert.deepEqual(await bench.customer(), ADA);
  await bench.page.keyboard.press("Escape");
  await bench.button("Link").click();
  const dialog = bench.page.getByRole("dialog", { name: "A link to this unit" });
  await dialog.getByRole("img", { name: "QR code of the link to this unit" }).waitFor();
  await bench.page.keyboard.press("Escape");
}

for (const base of ["/", "/shop/cabinets/"]) {
  test(`after one visit all of the page is there without its host, at ${base}`, async () => {
    const { host, bench } = await visited(base);
    await host.stop();
    await useAll(bench);
    await reload(bench);
    await useAll(bench);
    await bench.page.goto(`${host.url}index.html`);
    await bench.button("Order spec").waitFor();
    assert.deepEqual(faults(bench), []);
    await bench.close();
    await host.close();
  });
}

test("a later visit asks the host for what may be new alone", async () => {
  const { host, bench } = await visited();
  host.asked.length = 0;
  await reload(bench);
  await bench.stage();
  await bench.order();
  const asked = new Set(host.asked.filter((path) => path !== "sw.js"));
  assert.deepEqual([...asked], ["ranges/fenland.toml"]);
  await bench.close();
  await host.close();
});

test("the host's range counts; where it does not answer, the last one does", async () => {
  const { host, bench } = await visited();
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
  await bench.close();
  await host.close();
});

test("the component for the room is kept once it was loaded, and not before", async () => {
  const { host, bench } = await visited();
  const load = () => bench.page.evaluate(() => fetch("room/model-viewer.js").then((answer) => answer.text(), () => "").then((text) => text.length));
  assert.ok(!host.asked.includes("room/model-viewer.js"));
  const whole = await load();
  assert.ok(whole > 100_000, `${whole} letters`);
  await host.stop();
  assert.equal(await load(), whole);
  await bench.close();
  await host.close();
});

test("the page can be installed, and what it offers then works", async () => {
  const { host, bench } = await visited("/cabinets/");
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
  await bench.close();
  await host.close();
});
