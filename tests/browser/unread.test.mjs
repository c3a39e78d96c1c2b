// An entry that cannot be read is part of the verdict, until its value is given anew in whatever way.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Nothing is said of the unit, and it cannot be had. */
async function assertUnread(bench, field) {
  const said = await bench.tally();
  assert.match(said, new RegExp(`Not judged yet\\s+${field} cannot be read`));
  assert.doesNotMatch(said, /Can be made|€|kg/, "no figures of before");
  assert.equal(await bench.isShut("Order"), true);
  assert.equal(await bench.isShut("Save as a 3D file"), true);
}

/** The wrong entry is gone and blocks nothing. */
async function assertMended(bench, input) {
  assert.match(await bench.tally(), /Can be made/);
  assert.equal(await input.getAttribute("aria-invalid"), "false");
  assert.match(await input.inputValue(), /^[\d\u202f.]*$/);
  await bench.button("Order").click();
  await bench.dialog.waitFor();
  await bench.page.keyboard.press("Escape");
}

const ways = {
  "another entry": (bench) => bench.type("Width", "1 720"),
  "the same size as before, in another unit": (bench) => bench.type("Width", "164 cm"),
  "a step": (bench) => bench.button("Width: one step more").click(),
  "an arrow key in the field": (bench) => bench.size("Width").press("ArrowUp"),
  "the slider": async (bench) => {
    await bench.slider("Width").focus();
    await bench.page.keyboard.press("ArrowLeft");
  },
  "another model": (bench) => bench.question("Model").getByRole("radio").nth(1).click(),
  "beginning afresh": (bench) => bench.button("Begin afresh").click(),
};

for (const [name, mend] of Object.entries(ways)) {
  test(`a size that cannot be read blocks, and ${name} mends it`, async () => {
    const bench = await Bench.open(chrome);
    await bench.type("Width", "1900 mmm");
    await assertUnread(bench, "The width");
    await mend(bench);
    await assertMended(bench, bench.size("Width"));
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("a way out mends a size that cannot be read", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "5000");
  await bench.button("Make it 2\u202f400 mm wide").first().waitFor();
  await bench.type("Width", "5000 mmm");
  await assertUnread(bench, "The width");
  await bench.button("Make it 2\u202f400 mm wide").first().click();
  await assertMended(bench, bench.size("Width"));
  await bench.close();
});

test("an opened order, and one that is taken back, mend what cannot be read", async () => {
  const bench = await Bench.open(chrome);
  const file = await bench.order();
  await bench.type("Depth", "deep");
  await assertUnread(bench, "The depth");
  await bench.open(file);
  await bench.page.getByText("Everything that it promised still holds.").waitFor();
  await assertMended(bench, bench.size("Depth"));
  await bench.type("Width", "1700");
  await bench.button("Begin afresh").click();
  await bench.type("Depth", "deep");
  await assertUnread(bench, "The depth");
  await bench.button("Take it back").click();
  await assertMended(bench, bench.size("Depth"));
  await bench.close();
});

test("an entry that cannot be read stays while something else changes, and the strip leads to it", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "wide");
  await bench.type("Height", "600");
  await assertUnread(bench, "The width");
  assert.equal(await bench.size("Width").inputValue(), "wide");
  await bench.button(/^Not judged yet/).click();
  assert.ok(await bench.size("Width").evaluate((input) => input === document.activeElement));
  await bench.close();
});

for (const [label, field, wrong, right] of [
  ["Free wall", "The free wall", "long", "3000"],
  ["Ceiling", "The ceiling", "high", "2400"],
  ["Screen on top", "The screen", "large", "40"],
]) {
  test(`«${wrong}» in «${label}» blocks until it is mended`, async () => {
    const bench = await Bench.open(chrome);
    const input = bench.page.getByRole("textbox", { name: label });
    const enter = async (text) => {
      await input.fill(text);
      await input.press("Enter");
      await input.blur();
    };
    await enter(wrong);
    await assertUnread(bench, field);
    assert.equal(await input.getAttribute("aria-invalid"), "true");
    assert.equal(await input.inputValue(), wrong);
    await enter(right);
    await assertMended(bench, input);
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("what is out of bounds says them, and is not called unreadable", async () => {
  const bench = await Bench.open(chrome);
  for (const [label, field, wrong, bounds, right] of [
    ["Screen on top", "The screen", "500", "A screen is 5 to 200 inches large.", "40"],
    ["Free wall", "The free wall", "0 mm", /^A size is more than 0\smm and at most 100.000\smm\.$/, "3000"],
  ]) {
    const input = bench.page.getByRole("textbox", { name: label });
    await input.fill(wrong);
    await input.press("Enter");
    await bench.page.getByText(bounds).waitFor();
    assert.match(await bench.tally(), new RegExp(`Not judged yet\\s+${field} is out of bounds`));
    await input.fill(right);
    await input.press("Enter");
    await bench.page.getByText(bounds).waitFor({ state: "detached" });
  }
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a plinth is typed and stepped like a size, and none is before the lowest", async () => {
  const bench = await Bench.open(chrome);
  const none = bench.button("No plinth");
  const is = async (height, kept) => {
    assert.equal(await bench.size("Plinth").inputValue(), height);
    assert.equal(await none.getAttribute("aria-pressed"), String(kept));
  };
  await is("", true);
  const more = bench.button("Plinth: one step more");
  await more.click();
  await is("60", false);
  await bench.size("Plinth").press("PageUp");
  await is("150", false);
  assert.equal(await more.getAttribute("aria-disabled"), "true");
  await bench.type("Plinth", "8.3 cm");
  await bench.page.getByText("83 mm is between sizes; 80 mm taken.").waitFor();
  await is("80", false);
  await bench.type("Plinth", "high");
  await assertUnread(bench, "The plinth");
  await none.click();
  await assertMended(bench, bench.size("Plinth"));
  await is("", true);
  await bench.type("Plinth", "80");
  await bench.type("Plinth", "");
  await is("", true);
  await bench.type("Plinth", "500");
  await bench.page.locator("#question-size .notice.stop").getByText(/The plinth is 500\smm; the most is 150\smm\./).waitFor();
  await bench.button("Plinth: one step less").click();
  await is("150", false);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a size between those that are offered becomes the nearest, and the page says so", async () => {
  const bench = await Bench.open(chrome);
  const note = bench.page.getByText("1\u202f371.6 mm is between sizes; 1\u202f370 mm taken.");
  await bench.type("Width", "4' 6\"");
  await note.waitFor();
  assert.equal(await bench.size("Width").inputValue(), "1\u202f370");
  await bench.button("Width: one step more").click();
  await note.waitFor({ state: "detached" });
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
