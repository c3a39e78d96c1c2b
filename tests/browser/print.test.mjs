// The page on paper: one sheet, to scale, with its link; a dialog as itself.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";
import { scan } from "./scan.mjs";

/** Pixels of a millimetre. */
const MM = 96 / 25.4;

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** A page that notes when it would print. */
async function open(options = {}) {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce", ...options });
  await bench.page.evaluate(() => { window.prints = 0; window.print = () => { window.prints += 1; }; });
  return bench;
}

/** Presses what prints, and waits for the sheet. */
async function print(bench, press = () => bench.header("Print").click()) {
  const before = await bench.page.evaluate(() => window.prints);
  await press();
  await bench.page.waitForFunction((before) => window.prints === before + 1, before);
}

/** How many sheets of paper it takes. */
async function sheets(bench, format) {
  const pdf = await bench.page.pdf({ format, preferCSSPageSize: true });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g).length;
}

/** What stands on paper. */
async function paper(bench) {
  await bench.page.emulateMedia({ media: "print" });
  const text = await bench.page.evaluate(() => document.body.innerText);
  return text.replaceAll(/[\u202f\u00a0]/g, " ");
}

/** No control is on paper. */
async function assertNoControls(bench) {
  const seen = await bench.page.locator("button, input[type=range], .choice").evaluateAll(
    (all) => all.filter((one) => one.checkVisibility()).map((one) => one.textContent));
  assert.deepEqual(seen, []);
}

test("a unit goes on one sheet of either paper, with all that was chosen and what it comes to", async () => {
  const bench = await open();
  await bench.page.getByLabel("Free wall").fill("3000");
  await bench.page.getByLabel("Free wall").press("Enter");
  await bench.rest();
  await print(bench);
  for (const format of ["A4", "Letter"]) assert.equal(await sheets(bench, format), 1, format);
  const tally = await bench.tally();
  const [price] = tally.match(/€ [\d .]+\d/), [mass] = tally.match(/\d+(\.\d)? kg/);
  const text = await paper(bench);
  for (const said of [
    "Odd Lintel Workshop", "Fenland range", "Sedge, low media unit", "1 640 mm wide, 520 high, 420 deep", "Scale 1 : 10", price,
    mass, "if ordered today", "18 mm birch plywood", "Square", "3 000 mm", "one shelf, Round hole 60 (in the middle)",
    "door, hung left", "fastened to the wall", "lift each with two people", "electrician", "certifies nothing",
  ]) {
    assert.ok(text.includes(said), `${said}: ${text}`);
  }
  await assertNoControls(bench);
  await bench.page.emulateMedia({ media: "screen" });
  assert.ok(!await bench.page.locator("#sheet").isVisible(), "it is on paper alone");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("drawings have their scale, and the bar its 100 millimetres", async () => {
  const bench = await open();
  await print(bench);
  await bench.page.emulateMedia({ media: "print" });
  const bar = await bench.page.locator(".sheet-bar svg").boundingBox();
  assert.ok(Math.abs(bar.width - 100 * MM) < 0.1, `${bar.width} px`);
  const sides = await bench.page.locator("#sheet .sheet-views svg.drawing").evaluateAll((drawings) => drawings.map((drawing) => {
    const rects = [...drawing.querySelectorAll("rect")].map((rect) => rect.getBoundingClientRect());
    const least = (side) => Math.min(...rects.map((rect) => rect[side]));
    const most = (side) => Math.max(...rects.map((rect) => rect[side]));
    return [most("right") - least("left"), most("bottom") - least("top")];
  }));
  const expected = [[1640, 520], [420, 520]].map((unit) => unit.map((side) => side / 10 * MM));
  sides.flat().forEach((side, at) => {
    assert.ok(Math.abs(side - expected.flat()[at]) < 2, `${sides} where ${expected} were expected`);
  });
  await bench.close();
});

test("a reader finds the link in the code", async () => {
  const bench = await open();
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  await bench.rest();
  await print(bench);
  await bench.page.emulateMedia({ media: "print" });
  const link = await scan(bench, bench.page.locator(".sheet-foot > svg"));
  assert.equal(link, await bench.page.evaluate(() => location.href));
  assert.ok((await paper(bench)).includes(link), "it stands beside it in letters");
  const { width } = await bench.page.locator(".sheet-foot > svg").boundingBox();
  const modules = await bench.page.locator(".sheet-foot > svg").evaluate((svg) => svg.viewBox.baseVal.width);
  assert.ok(width / MM / modules >= 0.4, `modules of ${width / MM / modules} mm`);
  await bench.close();
});

test("large and tall units go on one sheet as well, by the keys too, and dark pages print light", async () => {
  const bench = await open({ colorScheme: "dark" });
  await bench.type("Width", "2400");
  await bench.question("Number of bays").getByRole("radio", { name: "6", exact: true }).click();
  await bench.rest();
  await print(bench, () => bench.page.keyboard.press("Control+p"));
  for (const format of ["A4", "Letter"]) assert.equal(await sheets(bench, format), 1, format);
  assert.match(await paper(bench), /Bay 6[^]*Scale 1 : 20/);
  const [ink, sheet] = await bench.page.evaluate(() => {
    const { color } = getComputedStyle(document.querySelector("#sheet"));
    return [color, getComputedStyle(document.documentElement).colorScheme];
  });
  assert.deepEqual([ink, sheet], ["rgb(29, 35, 32)", "light"]);
  await bench.page.emulateMedia({ media: null });
  await bench.question("Model").getByRole("radio", { name: /Bulrush/ }).click();
  await bench.rest();
  await print(bench);
  for (const format of ["A4", "Letter"]) assert.equal(await sheets(bench, format), 1, format);
  await bench.close();
});

test("what was written of another unit is not printed: the page goes plain then, with a drawing and the link", async () => {
  const bench = await open();
  await print(bench);
  await bench.type("Width", "1500");
  await bench.rest();
  await bench.page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  const text = await paper(bench);
  assert.doesNotMatch(text, /1 640 mm/);
  assert.match(text, /1 500 mm wide/);
  assert.ok(text.includes(await bench.page.evaluate(() => location.href)), text);
  assert.match(text, /certifies nothing/);
  assert.ok(await bench.page.locator("#sheet svg.drawing").first().isVisible());
  await assertNoControls(bench);
  assert.equal(await sheets(bench, "A4"), 1);
  await bench.close();
});

test("an order that is open is printed as itself, once", async () => {
  const bench = await open();
  await print(bench);
  await bench.address();
  for (const format of ["A4", "Letter"]) assert.equal(await sheets(bench, format), 1, format);
  const text = await paper(bench);
  assert.equal(text.match(/Total with tax/g).length, 1);
  assert.doesNotMatch(text, /Fenland range|Scale 1 :|Where it stands|Can be made/);
  assert.equal(await bench.dialog.getByLabel("Name").inputValue(), "Ada Reed");
  await assertNoControls(bench);
  await bench.close();
});
