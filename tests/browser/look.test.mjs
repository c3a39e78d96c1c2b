// What a telephone shows: 360 by 740 pixels.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

const [width, height] = [360, 740];

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const open = () => Bench.open(chrome, { viewport: { width, height }, reducedMotion: "reduce" });

/** Whether all of an element is within the window. */
async function assertInSight(locator) {
  const box = await locator.boundingBox();
  const within = box.x >= 0 && box.x + box.width <= width && box.y >= 0 && box.y + box.height <= height;
  assert.ok(within, JSON.stringify(box));
  return box;
}

test("what came of an order is in sight once it is saved", async () => {
  const bench = await open();
  await bench.address();
  const saved = bench.page.waitForEvent("download");
  await bench.save();
  await saved;
  const told = bench.dialog.getByText(/^Saved as .*send it to the workshop\.$/);
  await told.waitFor();
  await bench.page.waitForFunction(() => {
    const { bottom } = document.getElementById("order-told").getBoundingClientRect();
    return bottom <= innerHeight;
  });
  await assertInSight(told);
  await assertInSight(bench.dialog.getByRole("button", { name: "Close" }));
  await bench.close();
});

test("the verdict about what does not suit is one line", async () => {
  const bench = await open();
  await bench.page.getByLabel("Free wall").fill("1000");
  await bench.page.getByLabel("Free wall").press("Enter");
  const verdict = bench.page.getByText("Can be made, does not suit", { exact: true });
  const [line, is] = await verdict.evaluate((element) => [parseFloat(getComputedStyle(element).lineHeight), element.offsetHeight]);
  assert.ok(is < line * 1.5, `${is} px of lines that are ${line} px high`);
  await bench.close();
});

test("controls of the stage have their room, and the stage leaves most of the window", async () => {
  const bench = await open();
  await bench.stage();
  const stage = bench.page.getByRole("region", { name: "Drawing" });
  const high = async () => (await stage.boundingBox()).height;
  assert.ok(await high() <= height * 0.44, `${await high()} px`);
  await bench.button("More").click();
  const slider = await assertInSight(bench.slider("Pull apart"));
  assert.ok(slider.width > 140, `${slider.width} px`);
  const heights = [];
  for (const view of ["Sheet", "Elevation", "Plan", "Section"]) {
    await bench.button(view).click();
    const drawing = stage.locator("svg.drawing");
    await drawing.waitFor();
    await bench.button("More").click();
    heights.push(await high());
    const sizes = await drawing.locator("text").evaluateAll(
      (texts) => texts.map((text) => text.getAttribute("font-size") * text.ownerSVGElement.getScreenCTM().a));
    assert.ok(sizes.length > 0 && sizes.every((size) => size > 12.5), `${view}: ${sizes} px`);
    await bench.button("More").click();
  }
  assert.ok(new Set(heights).size === 1 && heights[0] <= height * 0.44, `drawings are as high as each other: ${heights} px`);
  await bench.close();
});

test("thousands are set apart in both faces", async () => {
  const bench = await open();
  const gaps = await bench.page.evaluate(async () => {
    const faces = ["400 100px 'Atkinson Hyperlegible Next'", "600 100px Literata"];
    await Promise.all(faces.map((face) => document.fonts.load(face)));
    const pen = new OffscreenCanvas(10, 10).getContext("2d");
    return faces.map((face) => {
      pen.font = face;
      return pen.measureText("1\u202f640").width - pen.measureText("1640").width;
    });
  });
  for (const gap of gaps) assert.ok(Math.abs(gap - 18) < 0.5, `${gaps}: a gap of 0.18 em, of the face itself`);
  await bench.close();
});
