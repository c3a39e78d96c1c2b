// The solid to take away: as a file, and in the person's own room where the device can show that.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { validateBytes } from "gltf-validator";
import { Bench, browser } from "./page.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const SAVE = "Save as a 3D file";
const STAND = "Stand it in your room";

/** A device with a touch screen that can stand things in a room, or only might. */
async function handheld({ can = true } = {}) {
  const bench = await Bench.routed(chrome, { isMobile: true, hasTouch: true });
  await bench.page.addInitScript((can) => {
    const isSessionSupported = async (kind) => {
      window.asked = true;
      return can && kind === "immersive-ar";
    };
    Object.defineProperty(navigator, "xr", { value: { isSessionSupported } });
  }, can);
  await bench.visit();
  await bench.button(STAND).waitFor();
  return bench;
}

test("the saved solid is the tool's, byte by byte, and a valid file", async (context) => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "1720");
  await bench.question("Finish").getByRole("radio", { name: "Soot" }).click();
  const saved = bench.page.waitForEvent("download");
  await bench.button(SAVE).click();
  const file = await saved;
  assert.equal(file.suggestedFilename(), "sedge-1720x520x420.glb");
  await bench.page.getByText("Saved as sedge-1720x520x420.glb.").waitFor();
  const bytes = readFileSync(await file.path());

  const folder = mkdtempSync(join(tmpdir(), "slotwright-"));
  context.after(() => rmSync(folder, { recursive: true }));
  const [choice, own] = [join(folder, "choice.json"), join(folder, "own.glb")];
  const { choice: picked } = JSON.parse(readFileSync(await bench.order(), "utf8"));
  writeFileSync(choice, JSON.stringify(picked));
  const tool = spawnSync(process.env.SLOTWRIGHT_BIN, ["solid", "--choice", choice, "--out", own], { encoding: "utf8" });
  assert.equal(tool.status, 0, tool.stderr);
  assert.ok(bytes.equals(readFileSync(own)), "the bytes are the tool's");
  const { issues } = await validateBytes(new Uint8Array(bytes));
  assert.deepEqual([issues.numErrors, issues.numWarnings], [0, 0]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what cannot be made is not written, and why is said", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "5000");
  assert.equal(await bench.isShut(SAVE), true);
  await bench.button(SAVE).click();
  await bench.page.getByText("Only a unit that can be made is written: see what stops it.").waitFor();
  await bench.button("Begin afresh").click();
  await bench.page.getByText("Only a unit that can be made").waitFor({ state: "hidden" });
  await bench.close();
});

test("without a device for it nobody is offered the room", async () => {
  const bench = await Bench.open(chrome);
  await bench.button(SAVE).waitFor();
  assert.equal(await bench.button(STAND).count(), 0);
  assert.equal(await bench.page.locator("script[src*=room]").count(), 0, "and the viewer is not loaded");
  await bench.close();
});

test("a device is asked whether it can only when somebody wants it, and told if not", async () => {
  const bench = await handheld({ can: false });
  assert.equal(await bench.page.evaluate(() => window.asked), undefined);
  await bench.button(STAND).click();
  await bench.page.getByText("This device cannot stand things in your room.").waitFor();
  assert.equal(await bench.page.locator("script[src*=room]").count(), 0, "and the viewer is not loaded");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("the unit stands in the viewer, from this server alone, and Escape leads back", async () => {
  const bench = await handheld();
  const elsewhere = [];
  const own = new URL(process.env.SLOTWRIGHT_URL).origin;
  bench.page.on("request", (request) => {
    if (!request.url().replace(/^blob:/, "").startsWith(own)) elsewhere.push(request.url());
  });
  await bench.button(STAND).click();
  const dialog = bench.page.getByRole("dialog", { name: "In your room" });
  await dialog.getByRole("button", { name: "Stand it here" }).waitFor();
  await bench.page.waitForFunction(() => document.querySelector("model-viewer")?.loaded, null, { timeout: 60_000 });
  const viewer = bench.page.locator("model-viewer");
  assert.match(await viewer.getAttribute("alt"), /^Sedge, 1.640\smm wide/);
  // True size: the viewer measures the model in metres.
  const size = await viewer.evaluate((viewer) => { const { x, y, z } = viewer.getDimensions(); return [x, y, z]; });
  [1.64, 0.52, 0.42].forEach((metres, at) => assert.ok(Math.abs(size[at] - metres) < 1e-4, `${size}`));
  await bench.page.evaluate(axe);
  const { violations } = await bench.page.evaluate(() => window.axe.run(document.querySelector("dialog.room")));
  assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
  await bench.page.keyboard.press("Escape");
  await dialog.waitFor({ state: "hidden" });
  assert.equal(await bench.page.locator("model-viewer").count(), 0);
  assert.equal(await bench.page.evaluate(() => document.activeElement.textContent), STAND);
  // A second time it is there again.
  await bench.button(STAND).click();
  await bench.page.waitForFunction(() => document.querySelector("model-viewer")?.loaded, null, { timeout: 60_000 });
  assert.deepEqual(elsewhere, []);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a dialog that is closed before its answer comes harms nothing, and opens again with one unit", async () => {
  const bench = await handheld();
  const dialog = bench.page.getByRole("dialog", { name: "In your room" });
  // A slow line to the desk, so that its first answer comes when the dialog is closed.
  await bench.page.route("**/split_orders.wasm", async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 500));
    await route.continue();
  });
  await bench.button(STAND).click();
  await dialog.waitFor();
  await bench.page.keyboard.press("Escape");
  await dialog.waitFor({ state: "hidden" });
  await bench.button(STAND).click();
  await bench.page.waitForFunction(() => document.querySelector("model-viewer")?.loaded, null, { timeout: 60_000 });
  // Time for the other desk's answer as well.
  await bench.page.waitForTimeout(2000);
  assert.equal(await bench.page.locator("model-viewer").count(), 1);
  await bench.page.keyboard.press("Escape");
  await bench.type("Width", "1700");
  assert.match(await bench.drawing(), /1.700\smm wide/, "the page still answers");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a viewer that cannot be loaded says so", async () => {
  const bench = await handheld();
  await bench.page.route("**/room/*", (route) => route.fulfill({ status: 404 }));
  await bench.button(STAND).click();
  await bench.page.getByText("The viewer could not be loaded. Is there a connection?").waitFor();
  await bench.close();
});
