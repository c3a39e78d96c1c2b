// The order's dialog: what it shows of the price, and what becomes of an order that is not waited for.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { ADA, Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

test("an order is not lost when its dialog is closed before the desk answers", async () => {
  const bench = await Bench.routed(chrome);
  await bench.slowDesk(500);
  await bench.address();
  const saved = bench.page.waitForEvent("download");
  await bench.save();
  await bench.page.keyboard.press("Escape");
  await bench.dialog.waitFor({ state: "hidden" });
  const file = await saved;
  assert.equal(JSON.parse(readFileSync(await file.path(), "utf8")).customer.name, "Ada Reed");
  await bench.page.getByText(`Saved as ${file.suggestedFilename()}, where this browser`).waitFor();
  await bench.type("Width", "1700");
  assert.match(await bench.drawing(), /1.700\smm wide/, "the page still answers");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a double press saves once, and a later press again", async () => {
  const bench = await Bench.routed(chrome);
  const saved = [];
  bench.page.on("download", (file) => saved.push(file.suggestedFilename()));
  await bench.slowDesk(300);
  await bench.address();
  await bench.save({ twice: true });
  await bench.dialog.getByText("Saved as").waitFor();
  // Time for another desk to answer as well.
  await bench.page.waitForTimeout(1500);
  assert.equal(saved.length, 1, saved.join());
  const later = bench.page.waitForEvent("download");
  await bench.save();
  await later;
  assert.equal(saved.length, 2, saved.join());
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what was typed for the order is there again when its dialog is opened again", async () => {
  const bench = await Bench.open(chrome);
  const typed = { ...ADA, "Remark for workshop and driver, if any": "Ring the lower bell" };
  await bench.address(typed);
  await bench.page.keyboard.press("Escape");
  await bench.dialog.waitFor({ state: "hidden" });
  await bench.button("Order").click();
  assert.deepEqual(await bench.customer(), typed);
  await bench.page.keyboard.press("Escape");
  await bench.type("Height", "600");
  await bench.saved();
  const stored = JSON.stringify(await bench.kept())
    + await bench.page.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
  assert.match(stored, /sedge/);
  assert.doesNotMatch(stored, /Ada Reed/, "and nothing of it is stored");
  await bench.close();
});

test("the customer's lines of the price sum to the total, without overhead and margin", async () => {
  const bench = await Bench.open(chrome);
  const strip = (await bench.tally()).match(/€ ?[\d ]+\.\d\d/)[0];
  await bench.button("Order").click();
  const rows = await bench.dialog.locator("table", { hasText: "Total with tax" }).locator("tr").all();
  const read = async (row) => [await row.locator("th").innerText(), await row.locator("td").innerText()];
  const lines = await Promise.all(rows.map(read));
  const names = ["Material", "Making", "Finish", "Packing and carriage", "Tax", "Total with tax"];
  assert.deepEqual(lines.map(([name]) => name), names);
  const minor = lines.map(([, amount]) => Number(amount.replaceAll(/\D/g, "")));
  assert.ok(minor.every((amount) => amount > 0), String(minor));
  const total = minor.pop();
  assert.equal(minor.reduce((sum, amount) => sum + amount), total);
  assert.equal(total, Number(strip.replaceAll(/\D/g, "")), "the total is the price of the strip");
  assert.doesNotMatch(await bench.dialog.innerText(), /overhead|margin/i);
  await bench.close();
});
