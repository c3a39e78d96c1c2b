// Windows of all sizes, letters of all sizes: nothing is cut off, nothing overlaps, nothing scrolls sideways.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const open = (width, height, options = {}, of = chrome) =>
  Bench.open(of, { viewport: { width, height }, reducedMotion: "reduce", ...options });

// Source: WCAG 2.2, 1.4.12.
const SPACING = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }";

const space = (bench) => bench.page.evaluate((css) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets.push(sheet);
}, SPACING);

/** The verdict that takes the most room, with the line about what was done. */
async function unsuit(bench) {
  await bench.page.getByLabel("Free wall").fill("1000");
  await bench.page.getByLabel("Free wall").press("Enter");
  await bench.page.getByText("Can be made, does not suit", { exact: true }).waitFor();
}

/** All texts in sight within an element, with their boxes. */
function boxes(bench, selector) {
  return bench.page.evaluate((selector) => {
    const seen = (element) => {
      for (let at = element; at; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (style.clipPath !== "none" || style.visibility === "hidden" || style.display === "none") return false;
      }
      return true;
    };
    const walker = document.createTreeWalker(document.querySelector(selector), NodeFilter.SHOW_TEXT);
    const found = [];
    while (walker.nextNode()) {
      const node = walker.currentNode;
      if (!node.data.trim() || !seen(node.parentElement)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const box = range.getBoundingClientRect();
      // What is let end in dots goes no further than its element.
      const own = node.parentElement.getBoundingClientRect();
      const ends = getComputedStyle(node.parentElement).overflowX !== "visible";
      const { left, top, bottom } = box;
      const right = ends ? Math.min(box.right, own.right) : box.right;
      if (right > left) found.push({ text: node.data, left, top, right, bottom });
    }
    return found;
  }, selector);
}

/** Texts of an element stand apart from each other, within the window. */
async function assertApart(bench, selector, where) {
  const { width, height } = bench.page.viewportSize();
  const all = await boxes(bench, selector);
  assert.ok(all.length > 1, `${where}: ${selector} has texts`);
  for (const box of all) {
    const within = box.left >= -0.5 && box.right <= width + 0.5 && box.bottom <= height + 0.5 && box.top >= -0.5;
    assert.ok(within, `${where}: within the window: ${JSON.stringify(box)}`);
  }
  all.forEach((one, at) => all.slice(at + 1).forEach((other) => {
    const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
    const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
    // A face's box is higher than its letters.
    const air = 0.3 * Math.min(one.bottom - one.top, other.bottom - other.top);
    assert.ok(across < 1 || down < air, `${where}: "${one.text}" and "${other.text}" overlap by ${across} by ${down} px`);
  }));
}

async function assertWhole(bench, where) {
  const wide = await bench.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${where}: ${wide} px sideways`);
  await assertApart(bench, "header", where);
  await unsuit(bench);
  await assertApart(bench, ".tally", where);
  const strip = await bench.page.locator(".tally").boundingBox();
  const cut = await bench.page.locator(".tally dd, .state span, .tally .main").evaluateAll((all) => all
    .filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
    .map((one) => one.textContent));
  assert.deepEqual(cut, [], `${where}: cut off`);
  const picture = await bench.page.locator("canvas").boundingBox();
  assert.ok(picture.height >= 120, `${where}: the picture is ${picture.height} px high`);
  return strip;
}

const SIZES = [[320, 640], [360, 225], [360, 740], [640, 400], [768, 1024], [1024, 768], [1440, 225], [1440, 900]];

for (const [width, height] of SIZES) {
  test(`${width} by ${height} pixels show all of the strip, with usual and with wide spacing`, async () => {
    const bench = await open(width, height);
    const strip = await assertWhole(bench, "usual");
    assert.ok(strip.height <= Math.max(height * 0.2, 84), `the strip is ${strip.height} px high`);
    await bench.page.evaluate(() => scrollTo(0, 0));
    await space(bench);
    await assertWhole(bench, "spaced");
    await bench.close();
  });
}

for (const letters of [125, 150, 200]) {
  test(`letters of ${letters} % have their room`, async () => {
    const large = await browser(letters);
    for (const [width, height] of [[1440, 900], [768, 1024], [360, 740]]) {
      const bench = await open(width, height, {}, large);
      assert.equal(await bench.page.evaluate(() => getComputedStyle(document.body).fontSize), `${letters * 0.16}px`);
      await assertWhole(bench, `${width} by ${height}`);
      await bench.close();
    }
    await large.close();
  });
}

for (const reducedMotion of ["reduce", "no-preference"]) {
  test(`on a telephone most is answers, and nothing but the picture moves while they scroll (${reducedMotion})`, async () => {
    const bench = await open(360, 740, { reducedMotion });
    await bench.stage();
    const before = await bench.page.locator("canvas").boundingBox();
    await bench.page.evaluate(() => {
      window.shifts = [];
      new PerformanceObserver((list) => window.shifts.push(...list.getEntries().map((entry) => entry.value)))
        .observe({ type: "layout-shift" });
    });
    await bench.page.mouse.move(180, 500);
    for (let turn = 0; turn < 12; turn += 1) {
      await bench.page.mouse.wheel(0, 60);
      await bench.page.waitForTimeout(50);
    }
    const { bottom, picture } = await bench.page.evaluate(() => ({
      bottom: document.querySelector(".stage").getBoundingClientRect().bottom,
      picture: document.querySelector("canvas").getBoundingClientRect().toJSON(),
    }));
    const strip = await bench.page.locator(".tally").boundingBox();
    assert.ok(strip.y - bottom >= 480, `${strip.y - bottom} px of answers`);
    assert.ok(picture.top >= -1 && picture.bottom <= bottom + 1 && picture.height >= 130, JSON.stringify(picture));
    if (reducedMotion === "no-preference") assert.ok(before.height > picture.height * 1.3, `${before.height} px before`);
    assert.deepEqual(await bench.page.evaluate(() => window.shifts), []);
    await bench.close();
  });
}

for (const reducedMotion of ["reduce", "no-preference"]) {
  test(`a flat drawing on a telephone leaves most to the answers as well (${reducedMotion})`, async () => {
    const bench = await open(360, 740, { reducedMotion });
    await bench.button("More").click();
    await bench.button("Elevation").click();
    await bench.button("More").click();
    const drawing = bench.page.locator(".paper svg");
    const before = await drawing.boundingBox();
    assert.ok(before.height >= 150, `${before.height} px`);
    await bench.page.mouse.move(180, 500);
    for (let turn = 0; turn < 12; turn += 1) {
      await bench.page.mouse.wheel(0, 60);
      await bench.page.waitForTimeout(50);
    }
    const bottom = await bench.page.locator(".stage").evaluate((stage) => stage.getBoundingClientRect().bottom);
    const strip = await bench.page.locator(".tally").boundingBox();
    assert.ok(strip.y - Math.max(bottom, 0) >= 480, `${strip.y - bottom} px of answers`);
    const { y, height } = await drawing.boundingBox();
    // It stays in sight as a smaller one; without motion it goes up with the page.
    if (reducedMotion === "no-preference") assert.ok(y >= -1 && y + height <= bottom + 1 && height >= 100, `${y}, ${height}`);
    else assert.equal(height, before.height);
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("on a telephone three controls stand beside the picture and the rest behind one more", async () => {
  const bench = await open(360, 740);
  await bench.stage();
  const tops = [];
  for (const name of ["Doors open", "Apart", "More"]) tops.push((await bench.button(name).boundingBox()).y);
  assert.ok(new Set(tops).size === 1, `${tops}`);
  const rest = ["Solid", "Section", "Link", "Corner", "Turn to the left", "Farther", "Person, 1.70 m", "Build it up"];
  for (const name of rest) assert.ok(!await bench.button(name).isVisible(), name);
  const more = bench.page.getByRole("button", { name: "More", expanded: false });
  await more.click();
  for (const name of rest) {
    const { x, width } = await bench.button(name).boundingBox();
    assert.ok(x >= 0 && x + width <= 360, name);
  }
  await bench.page.getByRole("button", { name: "More", expanded: true }).click();
  assert.ok(!await bench.button("Corner").isVisible());
  await bench.button("Apart").click();
  await bench.page.waitForFunction(() => document.querySelector(".quick [aria-pressed=true]")?.textContent === "Apart");
  await bench.close();
});

test("on a telephone the header is one row, and its menu has the rest", async () => {
  const bench = await open(360, 740);
  const { height } = await bench.page.getByRole("banner").boundingBox();
  assert.ok(height <= 60, `${height} px`);
  assert.ok(!await bench.header("Begin afresh").isVisible());
  await bench.header("Menu").click();
  for (const name of ["Redo", "Begin afresh", "Print"]) assert.ok(await bench.header(name).isVisible(), name);
  await bench.header("Begin afresh").click();
  assert.ok(!await bench.header("Print").isVisible(), "a menu closes once something is taken");
  await bench.header("Menu").click();
  await bench.page.keyboard.press("Escape");
  assert.ok(!await bench.header("Print").isVisible(), "and by Escape");
  assert.equal(await bench.page.evaluate(() => document.activeElement.textContent), "Menu");
  await bench.close();
});

for (const [width, height] of [[360, 740], [360, 225], [1440, 420]]) {
  test(`what came of an order stays in sight wherever its dialog is scrolled to (${width} by ${height})`, async () => {
    const bench = await open(width, height);
    await bench.address();
    const saved = bench.page.waitForEvent("download");
    await bench.save();
    await saved;
    const told = bench.dialog.getByText(/^Saved as /);
    for (const top of [0, 200, 10_000]) {
      await bench.page.evaluate((top) => {
        for (const part of [".order", ".order-body"]) document.querySelector(part).scrollTo(0, top);
      }, top);
      const box = await told.boundingBox();
      assert.ok(box.y >= 0 && box.y + box.height <= height, `scrolled to ${top}: ${JSON.stringify(box)}`);
    }
    await bench.close();
  });
}

test("on a telephone what came of an order covers none of its form", async () => {
  const bench = await open(360, 740);
  await bench.address();
  const saved = bench.page.waitForEvent("download");
  await bench.save();
  await saved;
  await bench.dialog.getByText(/^Saved as /).waitFor();
  const foot = await bench.page.locator(".order-foot").boundingBox();
  await bench.page.waitForFunction((top) => document.querySelector(".order form .main").getBoundingClientRect().bottom <= top + 1, foot.y);
  await bench.close();
});

for (const [width, height] of [[360, 740], [768, 1024], [1440, 900]]) {
  test(`the line of a change is whole, and the strip does not break (${width} by ${height})`, async () => {
    const bench = await open(width, height);
    await bench.question("Back").getByRole("radio", { name: "12 mm birch plywood" }).click();
    await bench.told(/^Back 18 mm birch plywood to 12 mm birch plywood: .* Undo$/);
    const state = await bench.page.locator("#verdict span").first().evaluate((span) => span.getClientRects().length);
    assert.equal(state, 1, "the verdict is one line");
    const line = await bench.page.locator(".did").boundingBox();
    assert.ok(line.x >= 0 && line.x + line.width <= width && line.y >= 0 && line.y + line.height <= height, JSON.stringify(line));
    await assertApart(bench, ".tally", "changed");
    // What is only counted in the line is named behind a button.
    await bench.question("Number of bays").getByRole("radio", { name: "2", exact: true }).click();
    await bench.question("Model").getByRole("radio", { name: "Bulrush, tall open shelf" }).click();
    await bench.told(/^Bulrush, \d+ answers did not fit: /);
    const names = bench.page.locator("#changed");
    assert.ok(!await names.isVisible());
    await bench.button("Which").click();
    await names.getByText(/^Width 1\u202f640 to [\s\S]*\nHeight 520 to /).waitFor();
    const count = Number((await bench.did()).match(/(\d+) answers/)[1]);
    assert.equal((await names.innerText()).split("\n").length, count);
    const box = await names.boundingBox();
    assert.ok(box.x >= 0 && box.x + box.width <= width && box.y >= 0, JSON.stringify(box));
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("a telephone's header is as high before the first answer as after it, and the controls cover nothing of the picture", async () => {
  const bench = await open(360, 740);
  await bench.stage();
  const high = async () => (await bench.page.getByRole("banner").boundingBox()).height;
  const before = await high();
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  await bench.saved();
  assert.equal(await high(), before);
  const knobs = await bench.button("More").boundingBox();
  const picture = await bench.page.locator("canvas").boundingBox();
  assert.ok(knobs.y + knobs.height <= picture.y, `${knobs.y + knobs.height} above ${picture.y}`);
  await bench.close();
});

test("forced colours leave finishes their own, and show which is taken", async () => {
  const bench = await open(1440, 900, { forcedColors: "active" });
  const swatches = await bench.page.locator(".swatch").evaluateAll((all) => all.map((one) => {
    const { backgroundColor, borderStyle, outlineStyle } = getComputedStyle(one);
    return { backgroundColor, own: one.style.backgroundColor, borderStyle, outlineStyle };
  }));
  assert.ok(swatches.length > 3);
  for (const { backgroundColor, own, borderStyle } of swatches) {
    assert.equal(backgroundColor, own);
    assert.equal(borderStyle, "solid");
  }
  assert.equal(swatches.filter(({ outlineStyle }) => outlineStyle === "solid").length, 1);
  await bench.close();
});
