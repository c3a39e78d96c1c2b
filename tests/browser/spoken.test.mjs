// What is spoken: one region says each thing once and shortly; and the focus is never lost to what comes and goes.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** A page whose live regions are all listened to, once its first advice is there. */
async function listened() {
  const bench = await Bench.open(chrome);
  await bench.page.locator("#questions .notice").first().waitFor();
  await bench.pause(1200);
  await bench.page.evaluate(() => {
    window.said = [];
    const live = "[role=status], [role=alert], [role=log], [aria-live], output";
    new MutationObserver((changes) => changes.forEach(({ target }) => {
      const region = (target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement)?.closest(live);
      if (region !== null && region !== undefined) window.said.push([region.id, region.textContent]);
    })).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  return bench;
}

/** What is said after something was done, each thing of one region, once, in at most 25 words. */
async function heard(bench, act, longest = 25) {
  await bench.page.evaluate(() => { window.said = []; });
  await act();
  await bench.pause(1800);
  const said = await bench.page.evaluate(() => window.said);
  // What is outside a dialog is not spoken while it is open: it has a region of its own.
  const regions = [...new Set(said.map(([region]) => region))];
  assert.ok(regions.length <= 1 && regions.every((region) => ["said", "order-told"].includes(region)), JSON.stringify(said));
  const texts = said.map(([, text]) => text.replaceAll(/[\u202f\u00a0]/g, " ").trim());
  assert.equal(new Set(texts).size, texts.length, `twice: ${texts.join(" | ")}`);
  // Thousands are set apart in figures: they are one word.
  for (const text of texts) {
    const words = text.replaceAll(/(\d) (?=\d)/g, "$1").split(/\s+/).length;
    assert.ok(words <= longest, `${words} words: ${text}`);
  }
  return texts;
}

const lost = (bench) => bench.page.evaluate(() => document.activeElement === document.body);
const focused = (bench) => bench.page.evaluate(() => {
  const { activeElement: own } = document;
  return own.getAttribute("aria-label") ?? own.textContent;
});

test("one region is there before any program, and nothing is said of what the page begins with", async () => {
  const bench = await Bench.open(chrome);
  assert.match(await (await bench.page.request.get(process.env.SLOTWRIGHT_URL)).text(), /id="?said"? [^>]*role="?status/);
  await bench.pause(1500);
  assert.equal(await bench.page.locator("#said").innerText(), "");
  // What is new, and that the page stopped, is told from outside the program.
  const regions = bench.page.locator("[role=status]:not(dialog *, #news *), [role=alert]:not(#trouble), [aria-live], output");
  assert.equal(await regions.count(), 1);
  await bench.close();
});

test("a change says what it did and what it brought, not what stays", async () => {
  const bench = await listened();
  const wall = bench.page.getByRole("textbox", { name: "Free wall" });
  const enter = async (text) => { await wall.fill(text); await wall.press("Enter"); };
  assert.match((await heard(bench, () => bench.type("Width", "1700"))).join(), /^Width 1 640 to 1 700: .* heavier\. € .* kg, with you by /);
  assert.match((await heard(bench, () => enter("1500"))).join(), /The unit is 1 700 mm wide; the wall has 1 500 mm\.$/);
  const still = (await heard(bench, () => bench.type("Height", "600"))).join(" ");
  assert.match(still, /^Height 520 to 600: /);
  assert.doesNotMatch(still, /the wall has/);
  const way = bench.button("Make it 1\u202f500 mm wide").first();
  await way.focus();
  assert.match((await heard(bench, () => bench.page.keyboard.press("Enter"))).join(), /^Width 1 700 to 1 500: /);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("why something cannot be made or read is said once", async () => {
  const bench = await listened();
  const stopped = await heard(bench, () => bench.type("Width", "5000"));
  assert.deepEqual(stopped, ["Width 1 640 to 5 000: cannot be made. The width is 5 000 mm; the most is 2 400 mm."]);
  assert.deepEqual(await heard(bench, () => bench.type("Height", "560")), ["Height 520 to 560: cannot be made."]);
  const way = bench.page.locator(".notice.stop .remedy").first();
  await way.focus();
  assert.match((await heard(bench, () => bench.page.keyboard.press("Enter"))).join(), /^Width 5 000 to .*: can be made now/);
  const unread = await heard(bench, () => bench.type("Depth", "deep"));
  assert.equal(unread.length, 1);
  assert.match(unread[0], /^The depth cannot be read\. This is no size\. Write it like /);
  assert.match((await heard(bench, () => bench.type("Width", "1301 mm"))).join(), /is between sizes/);
  await bench.close();
});

test("goals, explanations and what was opened or saved are said, each once", async () => {
  const bench = await listened();
  const widest = bench.button("is as wide as can be");
  assert.match((await heard(bench, () => widest.press("Enter"))).join(), /^As wide as can be: € .*\. Make it 2 400 mm wide$/);
  const devices = bench.question("Device in bay 1");
  await devices.getByRole("radio", { checked: true }).focus();
  const shifting = await heard(bench, async () => {
    for (let press = 0; press < 2; press += 1) await bench.page.keyboard.press("ArrowRight");
  });
  assert.match(shifting.join(" "), / Enter: Take this.* deep\.$/);
  await bench.button("Keep depth").press("Space");
  await bench.pause(1500);
  await devices.getByRole("radio", { checked: true }).focus();
  const shut = await heard(bench, async () => {
    for (let press = 0; press < 2; press += 1) await bench.page.keyboard.press("ArrowRight");
  });
  assert.match(shut.join(" "), /You keep the depth, so no other change makes up for it\./);
  assert.equal((await heard(bench, () => bench.button("Build it up").click())).length > 0, true);
  await bench.button("Build it up").click();
  let file;
  await heard(bench, async () => { file = await bench.order(); });
  const opened = await heard(bench, () => bench.open(file));
  assert.match(opened.join(), /Everything that it promised still holds\./);
  assert.match((await heard(bench, () => bench.button("Save as a 3D file").click())).join(), /Saved as sedge-.*\.glb\.$/);
  assert.deepEqual(await heard(bench, () => bench.group("Bay to look at").getByRole("tab").nth(1).click()), []);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("the focus goes where the person was when what had it goes", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const press = async (button) => {
    await button.waitFor();
    await button.focus();
    await page.keyboard.press("Enter");
    await button.waitFor({ state: "detached" });
    await bench.pause(100);
    assert.ok(!(await lost(bench)));
    return focused(bench);
  };
  await bench.type("Width", "5000");
  assert.equal(await press(page.locator(".size .notice.stop .remedy").first()), "Width", "a way out");
  await bench.type("Width", "5000");
  assert.equal(await press(page.locator(".goals .remedy")), "Find one that", "a goal");
  const wall = page.getByRole("textbox", { name: "Free wall" });
  await wall.fill("1407");
  await wall.press("Enter");
  assert.equal(await press(bench.button("Make it 1\u202f400 mm wide").first()), "1Where it stands", "a warning");
  // One that is taken away by what is found out later, while somebody reads it.
  await wall.fill("1200");
  await wall.press("Enter");
  const notice = page.locator("#question-place .notice");
  await notice.first().waitFor();
  await notice.first().focus();
  await page.evaluate(() => {
    const slider = document.querySelector("input[type=range][aria-label=Width]");
    slider.value = "20";
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await page.waitForFunction(() => document.activeElement?.textContent === "1Where it stands");
  assert.equal(await notice.count(), 0);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a banner and dialogs that are closed give the focus back", async () => {
  const bench = await Bench.open(chrome);
  const { page } = bench;
  const file = await bench.order();
  assert.equal(await focused(bench), "Order");
  await bench.open(file);
  await page.getByText("still holds.").waitFor();
  const close = page.locator(".banner").getByRole("button", { name: "Close" });
  await close.focus();
  await page.keyboard.press("Enter");
  await close.waitFor({ state: "hidden" });
  await bench.pause(100);
  assert.ok(!(await lost(bench)));
  await bench.button("Link").focus();
  await page.keyboard.press("Enter");
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "hidden" });
  assert.equal(await focused(bench), "Link");
  // A press beside everything is no loss.
  await page.getByText("Fenland range", { exact: true }).click();
  await bench.pause(100);
  assert.ok(await lost(bench), await focused(bench));
  await bench.type("Height", "600");
  await bench.rest();
  const undo = page.locator(".did").getByRole("button");
  for (const name of ["Redo", "Undo"]) {
    await undo.focus();
    await page.keyboard.press("Enter");
    await bench.rest();
    assert.equal(await focused(bench), name);
  }
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
