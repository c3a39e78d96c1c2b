// Steps: undo and redo by button, keys and the browser, what each did in one line, and what a model keeps.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { ADA, Bench, browser } from "./page.mjs";
import { able, finish, is, steps, unit } from "./stepped.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

test("every answer is undone and done again by the buttons, and a new one cuts what was undone", async () => {
  const bench = await Bench.open(chrome);
  assert.deepEqual(await able(bench), [false, false]);
  const states = await steps(bench);
  for (const state of states.slice(0, 3).reverse()) {
    await bench.header("Undo").click();
    assert.equal(await unit(bench), state);
  }
  assert.deepEqual(await able(bench), [false, true]);
  await bench.header("Undo").click({ force: true });
  assert.equal(await unit(bench), states[0]);
  for (const state of states.slice(1)) {
    await bench.header("Redo").click();
    assert.equal(await unit(bench), state);
  }
  await bench.header("Undo").click();
  await bench.header("Undo").click();
  await finish(bench, "Soot");
  await bench.rest();
  assert.deepEqual(await able(bench), [true, false]);
  await bench.header("Undo").click();
  assert.equal(await unit(bench), states[1]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("answers given one right after another are steps of their own", async () => {
  const bench = await Bench.open(chrome);
  const first = await unit(bench);
  // Within one task: nothing comes to rest between them.
  await bench.page.evaluate(() => {
    const press = (start) => [...document.querySelectorAll(".choice")].find((button) => button.innerText.startsWith(start)).click();
    press("Brick");
    press("Radius 12");
  });
  await bench.rest();
  await bench.header("Undo").click();
  assert.match(await unit(bench), /Brick/);
  await bench.header("Undo").click();
  assert.equal(await unit(bench), first);
  await bench.close();
});

test("keys undo and do again, but not what is being typed", async () => {
  const bench = await Bench.open(chrome);
  const states = await steps(bench);
  await bench.slider("Width").focus();
  const press = async (key, wanted) => {
    await bench.page.keyboard.press(key);
    assert.equal(await unit(bench), wanted, key);
  };
  await press("Control+z", states[2]);
  await press("Meta+z", states[1]);
  await press("Control+Shift+Z", states[2]);
  await press("Control+y", states[3]);
  await press("Control+z", states[2]);
  await bench.size("Depth").click();
  await bench.page.keyboard.press("Control+a");
  await bench.page.keyboard.type("470");
  await press("Control+z", states[2]);
  assert.notEqual(await bench.size("Depth").inputValue(), "470", "the field's own undo");
  await bench.page.keyboard.press("Escape");
  await bench.size("Depth").fill("430");
  await bench.page.keyboard.press("Enter");
  await bench.rest();
  assert.match(await unit(bench), / 430 /);
  await press("Control+z", states[2]);
  await bench.button("Order").click();
  await bench.dialog.waitFor();
  await press("Control+z", states[2]);
  await bench.close();
});

test("the browser's back and forward are undo and redo, and back from the first step leaves", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const address = page.url();
  await page.goto("data:text/html,before");
  await bench.visit();
  const states = await steps(bench);
  for (const state of states.slice(0, 3).reverse()) {
    await page.goBack();
    await is(bench, state);
  }
  await page.goForward();
  await is(bench, states[1]);
  await bench.header("Redo").click();
  await bench.header("Redo").click();
  await is(bench, states[3]);
  await bench.pause(700);
  await page.goBack();
  await is(bench, states[2]);
  await bench.header("Undo").click();
  await bench.pause(700);
  await page.goForward();
  await is(bench, states[2]);
  await page.goBack();
  await page.goBack();
  await is(bench, states[0]);
  assert.equal(page.url().split("#")[0], address.split("#")[0]);
  await page.goBack();
  assert.match(page.url(), /^data:/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a whole drag of a slider is one step, whatever pauses it has", async () => {
  const bench = await Bench.open(chrome);
  const first = await unit(bench);
  const { page } = bench;
  await bench.slider("Width").scrollIntoViewIfNeeded();
  const { x, y, width, height } = await bench.slider("Width").boundingBox();
  const at = (share) => page.mouse.move(x + width * share, y + height / 2, { steps: 4 });
  await at(0.49);
  await page.mouse.down();
  for (const share of [0.6, 0.7, 0.8]) {
    await at(share);
    await page.waitForTimeout(300);
    assert.equal(await bench.did(), "", "nothing is told while it is dragged");
  }
  await page.mouse.up();
  await bench.rest();
  const dragged = await unit(bench);
  assert.notEqual(dragged, first);
  await bench.told(/^Width 1 640 to .*: .* Undo$/);
  await bench.header("Undo").click();
  assert.equal(await unit(bench), first);
  assert.deepEqual(await able(bench), [false, true]);
  await bench.header("Redo").click();
  assert.equal(await unit(bench), dragged);
  await bench.close();
});

test("a step says in one line what it did, once, with its way back", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const height = async () => (await page.getByRole("contentinfo").boundingBox()).height;
  const before = await height();
  assert.equal(await bench.did(), "");
  await page.evaluate(() => {
    const status = document.getElementById("said");
    window.spoken = [];
    new MutationObserver(() => window.spoken.push(status.textContent)).observe(status, { childList: true, characterData: true, subtree: true });
  });
  await bench.type("Width", "1520");
  await bench.rest();
  await bench.told(/^Width 1 640 to 1 520: € \d+\.\d\d less, \d+(\.\d)? kg lighter(, \d+ days? sooner)? Undo$/);
  assert.equal(await height(), before, "nothing moves for it");
  const isSpokenOnce = async (line) => {
    await page.waitForTimeout(2500);
    const spoken = (await page.evaluate(() => window.spoken)).map((text) => text.replaceAll(/[\u202f\u00a0]/g, " "));
    assert.equal(spoken.filter((text) => text.includes(line.replace(/ (Undo|Redo)$/, ""))).length, 1, spoken.join("|"));
  };
  await isSpokenOnce(await bench.did());
  await page.locator(".did").getByRole("button", { name: "Undo" }).click();
  await bench.rest();
  await bench.told(/^Width 1 520 to 1 640: € \d+\.\d\d more, .* Redo$/);
  const focused = await page.locator(".did").getByRole("button").evaluate((button) => button === document.activeElement);
  assert.ok(focused, "the focus stays");
  await isSpokenOnce(await bench.did());
  await page.locator(".did").getByRole("button", { name: "Redo" }).click();
  await bench.size("Height").click();
  await page.mouse.move(5, 5);
  await page.waitForTimeout(10_500);
  assert.equal(await bench.did(), "", "it stands for a while");
  await bench.type("Width", "5000");
  await bench.rest();
  await bench.told(/^Width 1 520 to 5 000: cannot be made Undo$/);
  await bench.button("Make it 2\u202f400 mm wide").first().click();
  await bench.rest();
  await bench.told(/^Width 5 000 to 2 400: can be made now, € [\d ]+\.\d\d Undo$/);
  await bench.close();
});

test("each model keeps its settings, and what did not fit is said", async () => {
  const bench = await Bench.open(chrome);
  const model = async (name) => {
    await bench.question("Model").getByRole("radio", { name: new RegExp(`^${name}`) }).click();
    await bench.rest();
  };
  await bench.type("Width", "1700");
  await finish(bench, "Brick");
  await bench.rest();
  const sedge = await unit(bench);
  await model("Teasel");
  assert.match(await unit(bench), /^1700 760 \d+ Brick$/, "what fits comes along");
  await bench.told(/^Teasel, height 520 became 760: /);
  await bench.type("Width", "1400");
  await finish(bench, "Soot");
  await bench.rest();
  const teasel = await unit(bench);
  await model("Sedge");
  assert.equal(await unit(bench), sedge);
  await bench.told(/^Sedge as you left it: /);
  await model("Teasel");
  assert.equal(await unit(bench), teasel);
  await bench.header("Undo").click();
  assert.equal(await unit(bench), sedge);
  await bench.button("Begin afresh").click();
  await model("Teasel");
  assert.doesNotMatch(await unit(bench), /^1400/, "the next person finds no settings of this one");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("beginning afresh and opening an order are steps, and nothing personal comes back", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "1700");
  const file = await bench.order();
  const ordered = await unit(bench);
  const name = async () => {
    await bench.button("Order").click();
    const { Name } = await bench.customer();
    await bench.page.keyboard.press("Escape");
    return Name;
  };
  await bench.button("Begin afresh").click();
  await bench.told(/^Begun afresh\. What was here is among the drafts\. Undo$/);
  await bench.header("Undo").click();
  await bench.told(/^What was here is back: .* Redo$/);
  assert.equal(await unit(bench), ordered);
  assert.equal(await name(), "");
  await bench.header("Redo").click();
  const fresh = await unit(bench);
  assert.notEqual(fresh, ordered);
  await bench.open(file);
  await bench.page.getByText("still holds.").waitFor();
  assert.equal(await name(), ADA.Name);
  await bench.page.goBack();
  await is(bench, fresh);
  assert.equal(await name(), "");
  await bench.page.goForward();
  await is(bench, ordered);
  assert.equal(await name(), "");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("back from a dialog closes it and changes nothing behind it", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const states = await steps(bench);
  await bench.button("Order").click();
  await bench.dialog.waitFor();
  await page.goBack();
  await bench.dialog.waitFor({ state: "hidden" });
  await bench.pause(700);
  assert.equal(await unit(bench), states[3]);
  await page.goBack();
  await is(bench, states[2]);
  assert.deepEqual(await able(bench), [true, true]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an address of a place of the page makes no step", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const first = await unit(bench);
  await bench.type("Width", "1700");
  await bench.rest();
  const second = await unit(bench);
  await page.evaluate(() => { location.hash = "questions"; });
  await page.waitForURL(/#questions$/);
  assert.equal(await unit(bench), second);
  await bench.header("Undo").click();
  await bench.pause(700);
  assert.equal(await unit(bench), first);
  await bench.header("Redo").click();
  await bench.pause(700);
  await page.evaluate(() => { location.hash = "questions"; });
  await page.waitForURL(/#questions$/);
  await finish(bench, "Brick");
  await bench.rest();
  // One press leads to the step before, not to the link.
  await page.goBack();
  await is(bench, second);
  await page.goBack();
  await is(bench, first);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an entry that could not be read is undone by itself", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "1700");
  await bench.rest();
  const [before, now] = [await bench.size("Width").inputValue(), await unit(bench)];
  await bench.type("Width", "wide");
  assert.match(await bench.tally(), /cannot be read|could not be read/i);
  await bench.header("Undo").click();
  assert.equal(await bench.size("Width").inputValue(), before);
  assert.equal(await unit(bench), now);
  assert.deepEqual(await able(bench), [true, false]);
  await bench.close();
});

test("a key that stays down on a slider makes one step", async () => {
  const bench = await Bench.open(chrome);
  const first = await unit(bench);
  await bench.slider("Width").focus();
  for (let times = 0; times < 4; times += 1) {
    await bench.page.keyboard.down("ArrowRight");
    await bench.page.waitForTimeout(150);
  }
  await bench.page.keyboard.up("ArrowRight");
  await bench.rest();
  assert.match(await unit(bench), /^1680 /);
  await bench.page.keyboard.press("Control+z");
  assert.equal(await unit(bench), first);
  assert.deepEqual(await able(bench), [false, true]);
  await bench.close();
});

test("the focus stays on the page when its place goes with a step", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const bays = () => page.locator("#question-bays .cards .choice").count();
  const before = await bays();
  await bench.question("Number of bays").getByRole("radio", { name: new RegExp(`^${before + 1}`) }).click();
  await bench.rest();
  assert.equal(await bays(), before + 1);
  await page.locator("#question-bays .cards .choice").last().focus();
  await page.keyboard.press("Control+z");
  await page.locator("#question-bays .cards .choice").nth(before).waitFor({ state: "detached" });
  await bench.pause(100);
  assert.equal(await bays(), before);
  assert.match(await page.evaluate(() => document.activeElement.textContent), /^1: /, "the bay that is looked at");
  await bench.close();
});

test("on a phone the tools stand in one row, and the line within the strip", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 360, height: 740 } });
  const tops = await bench.page.locator(".tools > *").evaluateAll((all) => all.filter((one) => one.checkVisibility()).map((one) => one.getBoundingClientRect().top));
  assert.equal(new Set(tops.map(Math.round)).size, 1, String(tops));
  await bench.type("Width", "1520");
  await bench.rest();
  await bench.told(/^Width 1 640 to 1 520: .* Undo$/);
  const right = await bench.page.locator(".did > *").evaluateAll((all) => Math.max(...all.map((one) => one.getBoundingClientRect().right)));
  assert.ok(right <= 360, `${right}`);
  const [inner, content] = await bench.page.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
  assert.ok(content <= inner, `${content} px of content in ${inner} px`);
  await bench.close();
});
