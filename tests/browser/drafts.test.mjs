// Drafts: kept by a name, opened, renamed, deleted and brought back, and side by side.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";
import { Drawer } from "./drawer.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const finish = (bench, name) => bench.question("Finish").getByRole("radio", { name }).click();

/** A page with two drafts, of which the second is on the bench. */
async function two(options) {
  const bench = await Bench.open(chrome, options);
  const drawer = new Drawer(bench);
  await drawer.keep("Window, light");
  await bench.type("Width", "1800");
  await bench.group("Bay to look at").getByRole("tab").first().click();
  await bench.question("Bay 1 holds").getByRole("radio", { name: "Open" }).click();
  await finish(bench, "Soot");
  await bench.rest();
  await drawer.keep("Window, dark");
  return [bench, drawer];
}

test("a draft keeps the unit under a name, and opening it is one step", async () => {
  const bench = await Bench.open(chrome);
  const drawer = new Drawer(bench);
  await bench.type("Height", "600");
  await bench.button("Keep height").click();
  await bench.rest();
  await drawer.open();
  assert.equal(await drawer.field.inputValue(), "Sedge 1\u202f640\u202f×\u202f600", "a name is proposed");
  await drawer.field.fill("Window, bowed");
  await drawer.press("Keep a copy");
  await drawer.says("“Window, bowed” is kept.");
  assert.deepEqual(await drawer.names(), ["Window, bowed"]);
  assert.match(await drawer.figures("Window, bowed"), /^€ [\d ]+\.\d\d · [\d.]+ kg · \w+ \d+ \w+$/);
  assert.equal(await drawer.item("Window, bowed").locator("svg").count(), 1);
  await drawer.close();
  assert.equal(await drawer.count(), "1");
  await finish(bench, "Soot");
  await bench.type("Width", "1500");
  await bench.rest();
  const before = await bench.drawing();
  await drawer.open();
  await drawer.press("Open Window, bowed");
  assert.match(await bench.drawing(), /1.640\smm wide, 600 high.*Finish Clear/);
  assert.equal(await bench.button("Keep height").getAttribute("aria-pressed"), "true");
  await bench.saved();
  await bench.header("Undo").click();
  assert.equal(await bench.drawing(), before, "what was not kept comes back");
  await bench.header("Redo").click();
  assert.match(await bench.drawing(), /600 high.*Finish Clear/);
  await drawer.open();
  await drawer.dialog.getByText("Left for another unit").waitFor();
  assert.equal((await drawer.names()).length, 2, "nor is it lost if the browser ends now");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a draft is renamed, duplicated, deleted and brought back, and the list outlives the page", async () => {
  const [bench, drawer] = await two();
  await drawer.open();
  await drawer.rename("Window, dark", "  Hall <i>& more</i> ");
  await drawer.says("It is called “Hall <i>& more</i>” now.");
  await drawer.press("Duplicate Window, light");
  await drawer.says("“Window, light, second” is kept.");
  await drawer.press("Delete Window, light");
  await drawer.says("“Window, light” is deleted.");
  assert.deepEqual(await drawer.names(), ["Window, light, second", "Hall <i>& more</i>"]);
  const focused = () => bench.page.evaluate(() => document.activeElement.textContent);
  assert.equal(await focused(), "Bring it back");
  await drawer.press("Delete Window, light, second");
  await drawer.says("“Window, light, second” is deleted.");
  await drawer.press("Bring it back");
  await drawer.says("“Window, light, second” is there again.");
  await drawer.press("Bring it back");
  await drawer.says("“Window, light” is there again.");
  await drawer.close();
  assert.match(await focused(), /^Drafts/, "the focus returns to what opened the list");
  await bench.page.reload();
  await bench.live();
  await drawer.open();
  assert.deepEqual(await drawer.names(), ["Window, light, second", "Hall <i>& more</i>", "Window, light"]);
  // A name is used once: who keeps another unit by it replaces the draft, and can have that back.
  await drawer.close();
  await finish(bench, "Mere");
  await drawer.keep("Window, light");
  await drawer.says("“Window, light” is kept in place of the draft that had this name.");
  await drawer.press("Bring it back");
  await drawer.says("“Window, light” is there again.");
  assert.equal((await drawer.names()).filter((name) => name === "Window, light").length, 2);
  await drawer.field.fill("   ");
  await drawer.press("Keep a copy");
  await drawer.says("Give it a name first.");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a name that is given takes neither the focus nor a press", async () => {
  const [bench, drawer] = await two();
  await finish(bench, "Mere");
  await bench.saved();
  await bench.button("Begin afresh").click();
  await bench.saved();
  await drawer.open();
  const left = "Sedge 1\u202f800\u202f×\u202f520";
  const field = (name) => drawer.dialog.getByRole("textbox", { name: `Name of ${name}`, exact: true });
  const focused = () => bench.page.evaluate(() => document.activeElement.getAttribute("aria-label"));
  // By keyboard: the focus goes on from the field, and stays there.
  await field("Window, dark").fill("Hall");
  await bench.page.keyboard.press("Tab");
  await drawer.says("It is called “Hall” now.");
  assert.equal(await focused(), "Open Hall");
  await drawer.rename("Hall", "Attic");
  await drawer.says("It is called “Attic” now.");
  assert.equal(await focused(), "Name of Attic");
  // By mouse: what is pressed meanwhile is of the same draft, which has another id by then.
  await field(left).fill("Stair");
  const button = await drawer.dialog.getByRole("button", { name: `Delete ${left}` }).boundingBox();
  await bench.page.mouse.move(button.x + button.width / 2, button.y + button.height / 2);
  await bench.page.mouse.down();
  await bench.page.waitForTimeout(700);
  await bench.page.mouse.up();
  await drawer.says("“Stair” is deleted.");
  assert.deepEqual(await drawer.names(), ["Attic", "Window, light"]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("side by side what differs is marked, and what is lost is said", async () => {
  const [bench, drawer] = await two();
  await drawer.open();
  await drawer.press("Compare side by side");
  await drawer.says("Tick two to four of them to see them side by side.");
  await drawer.tick("Window, light");
  await drawer.tick("Window, dark");
  await drawer.press("Compare side by side");
  const rows = await drawer.rows();
  assert.deepEqual(rows["Width, mm"], ["1 800", "differs: 1 640"]);
  assert.deepEqual(rows["Height, mm"], ["520", "520"]);
  assert.deepEqual(rows.Finish, ["Soot", "differs: Clear"]);
  assert.match(rows["Bay 1"][1], /^differs: door/);
  assert.match(rows["Price with tax"].join(), /^€ [\d ]+\.\d\d,differs: € [\d ]+\.\d\d$/);
  assert.deepEqual(Object.keys(rows).filter((name) => name.startsWith("Bay")), ["Bay 1", "Bay 2", "Bay 3"]);
  await drawer.dialog.getByText("Against Window, dark, Window, light loses nothing and gains one door.").waitFor();
  await drawer.press("Go on with this: Window, light");
  assert.match(await bench.drawing(), /1.640\smm wide.*Finish Clear/);
  await drawer.open();
  await drawer.tick("This unit");
  await drawer.tick("Window, dark");
  await drawer.press("Compare side by side");
  await drawer.dialog.getByText("Against Window, light, Window, dark loses one door.").waitFor();
  await drawer.press("All drafts");
  await drawer.item("Window, dark").waitFor();
  assert.equal((await drawer.names()).length, 2);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a range that has changed is told of each draft", async () => {
  const [bench, drawer] = await two({ serviceWorkers: "block" });
  const kept = await bench.kept();
  const [name, text] = Object.entries(kept).find(([, text]) => text.includes("Window, light"));
  await bench.kept({ [name]: text.replace("sedge", "reed"), d1: "1\u001ffenland\u001ffuture\u001f9/sedge/x\u001f", d2: "broken" });
  await bench.page.route("**/ranges/fenland.toml", async (route) => {
    const response = await route.fetch();
    const body = (await response.text()).replaceAll(/price_minor = (\d+)/g, (_, minor) => `price_minor = ${minor}0`);
    await route.fulfill({ response, body });
  });
  await bench.page.reload();
  await bench.live();
  await drawer.open();
  const light = (await drawer.item("Window, light").innerText()).replaceAll("\u202f", " ");
  assert.match(light, /The range does not have the model reed any more/);
  assert.doesNotMatch(light, /Open/);
  const dark = (await drawer.item("Window, dark").innerText()).replaceAll(/[\u202f\u00a0]/g, " ");
  assert.match(dark, /Prices of this draft changed: € [\d ]+\.\d\d to € [\d ]+\.\d\d\./);
  assert.equal((await drawer.names()).length, 2, "what cannot be read is passed over");
  assert.equal((await bench.kept()).d1.includes("future"), true, "and stays");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1440, 360]) {
    test(`the list and the comparison break no automatic rule at ${width} px, ${colorScheme}`, async () => {
      const [bench, drawer] = await two({ colorScheme, viewport: { width, height: 740 } });
      await drawer.open();
      const violations = async () => {
        await bench.page.evaluate(axe);
        return bench.page.evaluate(async () => {
          const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
          const { violations } = await globalThis.axe.run("#drafts", { runOnly: tags });
          return violations.map((rule) => `${rule.id}: ${rule.nodes.map((node) => node.target.join(" ")).join(", ")}`);
        });
      };
      assert.deepEqual(await violations(), []);
      await drawer.tick("Window, light");
      await drawer.tick("Window, dark");
      await drawer.press("Compare side by side");
      await drawer.dialog.locator(".sides").waitFor();
      assert.deepEqual(await violations(), [], "side by side");
      const [inner, content] = await drawer.dialog.evaluate((dialog) => [dialog.clientWidth, dialog.scrollWidth]);
      assert.ok(content <= inner, `${content} px of content in ${inner} px`);
      const last = await drawer.dialog.locator("thead th").last().boundingBox();
      assert.ok(last.x + last.width <= width, "two of them are seen whole");
      await bench.close();
    });
  }
}

test("each draft has its link and its code, and opening one says where the unit before is", async () => {
  const [bench, drawer] = await two();
  await drawer.open();
  await drawer.press("Link to Window, light");
  const dialog = bench.page.getByRole("dialog", { name: "A link to this unit" });
  await dialog.getByRole("img", { name: "QR code of the link to this unit" }).waitFor();
  assert.match(await dialog.getByRole("textbox", { name: "Link" }).inputValue(), /#1\/sedge\/1640x520x420\/0\/birch-18\/clear\//);
  await dialog.getByRole("button", { name: "Close" }).click();
  await dialog.waitFor({ state: "hidden" });
  assert.match(await bench.page.locator("canvas").getAttribute("aria-label"), /Finish Soot/, "the unit is as it was");
  await finish(bench, "Brick");
  await bench.saved();
  await drawer.open();
  await drawer.press("Open Window, light");
  await bench.page.getByText("The unit that was here before is kept among the drafts.").waitFor();
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
