// The stage: a picture that is one, every control by name, the drawing where there is no picture.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Pixels of the canvas's picture, dimension lines aside, as grey levels of small squares. */
async function picture(bench) {
  const dims = bench.page.locator(".scene > .dims");
  // Not by the screenshot's own style sheet: the page's policy forbids it.
  await dims.evaluate((element) => { element.style.visibility = "hidden"; });
  const png = await bench.page.locator("canvas").screenshot();
  await dims.evaluate((element) => { element.style.visibility = ""; });
  return bench.page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const [across, down] = [96, 60];
    const canvas = new OffscreenCanvas(across, down);
    const pen = canvas.getContext("2d");
    pen.imageSmoothingQuality = "high";
    pen.drawImage(picture, 0, 0, across, down);
    const { data } = pen.getImageData(0, 0, across, down);
    return Array.from({ length: across * down }, (_, at) => (data[at * 4] + data[at * 4 + 1] + data[at * 4 + 2]) / 3);
  }, png.toString("base64"));
}

/** Share of the squares in which two pictures differ visibly. */
function apart(one, other) {
  return one.filter((grey, at) => Math.abs(grey - other[at]) > 6).length / one.length;
}

/** Looks until a picture is as `like` wants it: what was told may be a frame ahead of what is seen. */
async function until(bench, like) {
  let seen;
  for (let look = 0; look < 50; look += 1) {
    seen = await picture(bench);
    if (like(seen)) break;
    await bench.page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  }
  return seen;
}

const overlay = (bench) => bench.page.locator(".scene > .dims").innerHTML();

test("the unit is drawn, turns by button and by keys, and says what it shows", async () => {
  const bench = await Bench.open(chrome);
  await bench.stage();
  const shades = (seen) => new Set(seen.map(Math.round)).size;
  assert.ok(shades(await until(bench, (seen) => shades(seen) > 40)) > 40, "wood, shadow, plies");
  const figures = bench.page.locator(".scene > .dims text");
  assert.deepEqual((await figures.allTextContents()).map((text) => text.replace(/\D/g, "")).sort(), ["1640", "420", "520"]);
  const dims = (like, known) => bench.page.waitForFunction(
    ([like, known]) => (document.querySelector(".scene > .dims").innerHTML === known) === like, [like, known]);
  const corner = await overlay(bench);
  await bench.button("Turn to the right").click();
  await dims(false, corner);
  const turned = await overlay(bench);
  await bench.button("Corner").click();
  await dims(true, corner);
  // Keys turn it the way that buttons do, half as far.
  for (let press = 0; press < 2; press += 1) await bench.page.locator("canvas").press("ArrowRight");
  await dims(true, turned);
  assert.match(await bench.drawing(), /^Sedge, .* Seen from the front left, from a little above\.$/);
  await bench.button("Doors open").click();
  await bench.page.locator("canvas[aria-label$=' Its doors are open.']").waitFor();
  assert.equal(await bench.button("Doors open").getAttribute("aria-pressed"), "true");
  await bench.question("Bay 1 holds").getByRole("radio", { name: "Open", exact: true }).click();
  await bench.page.locator("canvas[aria-label$=' a little above.']").waitFor();
  // It goes together by itself, step by step.
  await bench.button("Build it up").click();
  await bench.button("Pause").waitFor();
  await bench.page.getByText(/^2 of \d+: /).waitFor();
  await bench.button("Pause").click();
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("the assembly goes step by step, each with its sentence, the top last", async () => {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce" });
  await bench.stage();
  const whole = await picture(bench);
  await bench.button("Build it up").click();
  // Whoever asks for less motion begins it.
  await bench.button("Play").click();
  await bench.button("Pause").click();
  await bench.button("Play").waitFor();
  assert.equal(await bench.button("One step back").getAttribute("aria-disabled"), "true");
  const status = bench.group("Steps").locator("xpath=following-sibling::p");
  await status.getByText(/^1 of 15: Lay the lower base plate/).waitFor();
  for (let step = 2; step <= 15; step += 1) {
    await bench.button("One step on").click();
    await status.getByText(new RegExp(`^${step} of 15: `)).waitFor();
  }
  assert.match(await status.innerText(), /held to the wall by its tethers/);
  assert.equal(await bench.button("One step on").getAttribute("aria-disabled"), "true");
  // However quickly they follow each other, no press is lost.
  for (let press = 0; press < 6; press += 1) await bench.button("One step back").click();
  await status.getByText(/^9 of 15: /).waitFor();
  for (let press = 0; press < 5; press += 1) await bench.button("One step on").click();
  await status.getByText(/^14 of 15: Lower the top over all tabs/).waitFor();
  for (let step = 13; step >= 3; step -= 1) {
    await bench.button("One step back").click();
    await status.getByText(new RegExp(`^${step} of 15: `)).waitFor();
  }
  const begun = await until(bench, (seen) => apart(seen, whole) > 0.05);
  assert.ok(apart(begun, whole) > 0.05, "three parts look unlike all of them");
  await bench.button("Build it up").click();
  await bench.stage();
  const back = await until(bench, (seen) => apart(seen, whole) < 0.005);
  assert.ok(apart(back, whole) < 0.005, "all parts are back");
  await bench.close();
});

test("drawn apart, every part has its name beside the unit", async () => {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce" });
  await bench.stage();
  await bench.slider("Pull apart").fill("100");
  const names = bench.page.locator(".scene > .dims .name");
  await names.first().waitFor();
  const told = await names.allTextContents();
  assert.equal(new Set(told).size, 14, told.join(", "));
  assert.ok(["top", "back", "door of bay 1", "door stop of bay 1", "shelf 1 of bay 2"].every((name) => told.includes(name)));
  const boxes = await names.evaluateAll((texts) => texts.map((text) => text.getBoundingClientRect().toJSON()));
  const over = (a, b) => a.left < b.right && b.left < a.right && a.top + 3 < b.bottom && b.top + 3 < a.bottom;
  boxes.forEach((box, at) => assert.ok(!boxes.slice(at + 1).some((other) => over(box, other)), told[at]));
  assert.match(await bench.drawing(), / Its parts are drawn apart\.$/);
  await bench.close();
});

test("a lost picture gives way to the drawing and comes back", async () => {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce" });
  const stage = await bench.stage();
  const whole = await picture(bench);
  await stage.evaluate(() => {
    const draw = WebGL2RenderingContext.prototype.drawElements;
    WebGL2RenderingContext.prototype.drawElements = function (...rest) {
      self.seen = this;
      return draw.apply(this, rest);
    };
  });
  await bench.button("Person, 1.70 m").click();
  await bench.button("Person, 1.70 m").click();
  await stage.evaluate(async () => {
    while (!self.seen) await new Promise((resolve) => requestAnimationFrame(resolve));
    self.loses = self.seen.getExtension("WEBGL_lose_context");
    self.loses.loseContext();
  });
  await bench.page.locator(".paper .drawing").waitFor();
  assert.equal(await bench.button("Solid").getAttribute("aria-disabled"), "true");
  await bench.type("Width", "1700");
  await stage.evaluate(() => self.loses.restoreContext());
  await bench.page.locator("canvas").waitFor();
  await bench.type("Width", "1640");
  const back = await until(bench, (seen) => apart(seen, whole) < 0.005);
  assert.ok(apart(back, whole) < 0.005, "the same picture as before");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a device stands in its bay while the unit is whole", async () => {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce" });
  await bench.stage();
  const empty = await picture(bench);
  await bench.group("Bay to look at").getByRole("tab").nth(2).click();
  await bench.question("Device in bay 3").getByRole("radio", { name: "Disc player" }).click();
  const full = await until(bench, (seen) => apart(seen, empty) > 0.005);
  assert.ok(apart(full, empty) > 0.005, "a disc player is seen");
  assert.match(await bench.drawing(), /with Disc player/);
  await bench.close();
});

test("figures of the drawings are large enough to read", async () => {
  const bench = await Bench.open(chrome);
  for (const view of ["Sheet", "Elevation", "Plan", "Section"]) {
    await bench.group("View").getByRole("button", { name: view, exact: true }).click();
    const sizes = await bench.page.locator(".drawing .dim-text").evaluateAll((texts) =>
      texts.map((text) => text.getBoundingClientRect()).map(({ width, height }) => Math.min(width, height)));
    assert.ok(sizes.length > 0 && Math.min(...sizes) >= 10, `${view}: ${sizes}`);
  }
  await bench.close();
});

test("without WebGL the drawing takes the place of the stage", async () => {
  const bench = await Bench.open(chrome);
  const page = await bench.page.context().newPage();
  await page.addInitScript(() => { delete HTMLCanvasElement.prototype.transferControlToOffscreen; HTMLCanvasElement.prototype.getContext = () => null; });
  await page.goto(process.env.SLOTWRIGHT_URL);
  await page.locator(".paper .drawing").waitFor();
  assert.equal(await page.getByRole("button", { name: "Solid", exact: true }).getAttribute("aria-disabled"), "true");
  await bench.close();
});

test("on a phone no button of the stage lies under another", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 360, height: 740 }, reducedMotion: "reduce" });
  await bench.stage();
  await bench.button("More").click();
  for (const group of ["Look from", "Show"]) {
    for (const button of await bench.group(group).getByRole("button").all()) await button.click({ trial: true, timeout: 5000 });
  }
  await bench.close();
});
