// The main job: configure, see what holds, take the order away; the workshop's tool says whether it holds.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { ADA, Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

function check(...files) {
  const { status, stdout } = spawnSync(process.env.SLOTWRIGHT_BIN, ["check", ...files], { encoding: "utf8" });
  return { status, stdout };
}

test("a configured order holds in the workshop, and one changed byte does not", async (context) => {
  const bench = await Bench.open(chrome);
  await bench.question("Model").getByRole("radio", { name: "Teasel, sideboard" }).click();
  await bench.type("Width", "1 720 mm");
  await bench.question("Bay 1 holds").getByRole("radio", { name: "Door, hung right" }).click();
  await bench.question("Cable hole in the back of bay 1").getByRole("radio", { name: "Round hole 60" }).click();
  await bench.question("Finish").getByRole("radio", { name: "Soot" }).click();
  assert.match(await bench.tally(), /Can be made/);
  const file = await bench.order();
  const text = readFileSync(file, "utf8");
  const order = JSON.parse(text);
  assert.equal(order.choice.width_mm, 1720);
  assert.equal(order.choice.finish, "soot");
  assert.deepEqual(order.choice.bays[0].fill, { leaf: "right" });
  const shown = (await bench.tally()).replaceAll(/[ .€]/g, "");
  assert.ok(shown.includes(String(order.promised.price_minor)), `${shown} shows ${order.promised.price_minor}`);

  const good = check(file);
  assert.equal(good.status, 0, good.stdout);
  const folder = mkdtempSync(join(tmpdir(), "slotwright-"));
  context.after(() => rmSync(folder, { recursive: true }));
  const changed = join(folder, "changed.json");
  writeFileSync(changed, text.replace('"width_mm":1720', '"width_mm":1730'));
  const bad = check(changed);
  assert.notEqual(bad.status, 0, bad.stdout);
  assert.match(bad.stdout, /the file was changed after it was written/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an order says first what is to be minded, and then where its file goes", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.getByLabel("costs at most").fill("900");
  await bench.page.getByLabel("costs at most").press("Enter");
  await bench.page.getByText(/It costs €.*; you gave €/).waitFor();
  await bench.address();
  const minded = bench.dialog.locator(".notice.warn");
  const texts = (await minded.allInnerTexts()).join("\n");
  assert.match(texts, /^Mind\. .*fastened to the wall/m);
  assert.match(texts, /^Mind\. It costs €.*; you gave €/m);
  assert.equal(await bench.dialog.locator(".notice button").count(), 0, "nothing changes the unit behind the dialog");
  const [notice, save] = [await minded.last().boundingBox(), await bench.dialog.getByRole("button", { name: "Save the order" }).boundingBox()];
  assert.ok(notice.y < save.y);
  // A browser that gives files to other programs.
  await bench.page.evaluate(() => {
    navigator.canShare = ({ files }) => files?.length === 1;
    navigator.share = async ({ files: [file] }) => { window.shared = [file.name, await file.text()]; };
  });
  const saved = bench.page.waitForEvent("download");
  await bench.save();
  const file = (await saved).suggestedFilename();
  await bench.dialog.getByText(`Saved as ${file}, where this browser keeps what it downloads.`).waitFor();
  const mail = bench.dialog.getByRole("link", { name: "Write to orders@odd-lintel.example" });
  assert.equal(await mail.getAttribute("href"), `mailto:orders@odd-lintel.example?subject=Order%20${file}`);
  assert.doesNotMatch(file, /Ada|Reed/);
  await bench.dialog.getByRole("button", { name: "Share the file" }).click();
  const [name, text] = await bench.page.waitForFunction(() => window.shared).then((shared) => shared.jsonValue());
  assert.equal(name, file);
  assert.equal(JSON.parse(text).customer.name, "Ada Reed");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an order is opened again, and a broken one says why", async () => {
  const bench = await Bench.open(chrome);
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  const file = await bench.order();
  await bench.button("Begin afresh").click();
  await bench.question("Finish").getByRole("radio", { name: "Clear" }).click();
  const picker = bench.page.locator("input[type=file]");
  await picker.setInputFiles(file);
  await bench.page.getByText("Everything that it promised still holds.").waitFor();
  assert.match(await bench.drawing(), /Finish Brick/);
  await picker.setInputFiles({ name: "x.json", mimeType: "application/json", buffer: Buffer.from("{\"format\":3}") });
  await bench.page.getByText("This file is no order.").waitFor();
  assert.match(await bench.drawing(), /Finish Brick/, "nothing is lost");
  await bench.close();
});

test("what cannot be made says why and offers ways out that mend it", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "5000");
  assert.match(await bench.tally(), /Cannot be made/);
  await bench.page.getByText("The width is 5\u202f000 mm; the most is 2\u202f400 mm.").waitFor();
  assert.equal(await bench.isShut("Order"), true);
  await bench.button("Make it 2\u202f400 mm wide").first().click();
  assert.match(await bench.tally(), /Can be made/);
  await bench.type("Width", "wide");
  await bench.page.getByText("This is no size.").waitFor();
  await bench.close();
});

test("an answer that does not go alone stays in sight, says why and is not taken by itself", async () => {
  const bench = await Bench.open(chrome);
  const one = bench.question("Number of bays").getByRole("radio", { name: "1", exact: true });
  const before = await bench.drawing();
  await one.focus();
  await bench.page.keyboard.press("Enter");
  await bench.page.getByText("Number of bays: 1. This does not go alone: The top over bay 1 would bend").waitFor();
  assert.equal(await bench.drawing(), before);
  await bench.close();
});

test("the choice survives a reload, and what is kept of it", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Height", "600");
  await bench.button("Keep height").click();
  await bench.question("Finish").getByRole("radio", { name: "Mere" }).click();
  await bench.stage();
  const before = await bench.drawing();
  await bench.visit();
  await bench.stage();
  assert.equal(await bench.drawing(), before);
  assert.match(before, /600 high.*Finish Mere/);
  assert.equal(await bench.button("Keep height").getAttribute("aria-pressed"), "true");
  assert.equal(await bench.button("Keep width").getAttribute("aria-pressed"), "false");
  // Left at once, before anything has come to rest.
  await bench.page.evaluate(() => {
    const buttons = [...document.querySelectorAll("[aria-label='Finish'] button")];
    buttons.find((button) => button.textContent === "Clear").click();
    location.reload();
  });
  await bench.page.getByText(/Finish Clear/).first().waitFor();
  await bench.close();
});

test("a saved choice of a model that is gone is said, and stays until something is answered", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 360, height: 740 } });
  await bench.type("Height", "600");
  await bench.saved();
  const saved = () => bench.keptUnit();
  const [[name, text]] = Object.entries(await bench.kept());
  await bench.kept({ [name]: text.replace("sedge", "reed") });
  const before = await saved();
  assert.match(before, /reed/);
  await bench.visit();
  await bench.page.getByText("What you chose last time is of the model reed").waitFor();
  await bench.pause(300);
  assert.equal(await saved(), before);
  const { height } = await bench.button("Close").boundingBox();
  assert.ok(height < 60, `the button is ${height} px high: its word is broken`);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a page that only stands there overwrites no newer choice of another one", async () => {
  const bench = await Bench.open(chrome);
  await bench.pause(300);
  const other = await bench.page.context().newPage();
  await other.goto(process.env.SLOTWRIGHT_URL);
  await other.getByRole("radiogroup", { name: "Finish", exact: true }).getByRole("radio", { name: "Mere" }).click();
  await other.locator(".kept").getByText("Saved", { exact: true }).waitFor();
  // Its own address has its own unit.
  await bench.page.reload();
  await bench.page.getByText("What you chose before is among the drafts").waitFor();
  assert.doesNotMatch(await bench.drawing(), /Finish Mere/);
  await bench.pause(300);
  await bench.visit();
  await bench.page.getByText(/Finish Mere/).first().waitFor();
  await bench.close();
});

test("a changed range file changes prices without a new build; a broken one is said and replaced", async () => {
  const bench = await Bench.routed(chrome);
  const price = (text) => text.match(/€ ?([\d ]+\.\d\d)/)[1];
  const usual = price(await bench.tally());
  const dearer = (text) => text.replaceAll(/price_minor = (\d+)/g, (_, minor) => `price_minor = ${minor}0`);
  await bench.page.route("**/ranges/fenland.toml", async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: dearer(await response.text()) });
  });
  await bench.visit();
  assert.notEqual(price(await bench.tally()), usual);
  await bench.page.unroute("**/ranges/fenland.toml");
  await bench.page.route("**/ranges/fenland.toml", (route) => route.fulfill({ body: "format = 1\n[build]\n" }));
  await bench.visit();
  await bench.page.getByText("What is wrong with it, for the workshop").click();
  await bench.page.getByText(/The range file has problems:[\s\S]*\sand \d+ more/).waitFor();
  assert.equal(price(await bench.tally()), usual);
  assert.match(await bench.tally(), /Cannot be ordered now/);
  await bench.close();
});

test("where the order desk cannot be loaded, that is said and nothing is lost", async () => {
  const bench = await Bench.routed(chrome);
  await bench.page.route("**/split_orders.wasm", (route) => route.abort());
  await bench.button("Order").click();
  const dialog = bench.page.getByRole("dialog", { name: "Order" });
  await dialog.getByRole("textbox", { name: "Name" }).fill("Ada Reed");
  await dialog.getByRole("textbox", { name: "E-mail or telephone" }).fill("ada@example.org");
  await dialog.getByRole("textbox", { name: "Address, up to six lines" }).fill("1 Dyke Lane");
  await dialog.getByRole("button", { name: "Save the order" }).click();
  await dialog.getByText("The order desk could not be loaded.").waitFor();
  assert.equal(await dialog.getByRole("textbox", { name: "Name" }).inputValue(), "Ada Reed");
  await bench.close();
});

test("an entry that cannot be read is not ordered past, and beginning afresh clears it", async () => {
  const bench = await Bench.open(chrome);
  const width = bench.page.getByRole("textbox", { name: "Width", exact: true });
  await width.fill("1900 mmm");
  await width.press("Enter");
  await bench.page.getByText("This is no size.").waitFor();
  // A mouse may press what is marked as not to be had; the page answers all the same.
  await bench.button("Order").click({ force: true });
  const dialog = bench.page.getByRole("dialog", { name: "Order" });
  assert.equal(await dialog.isVisible(), false);
  assert.ok(await width.evaluate((input) => input === document.activeElement), "the entry has the focus");
  await bench.button("Begin afresh").click();
  assert.notEqual(await width.inputValue(), "1900 mmm");
  await bench.button("Order").click();
  await dialog.getByText(/mm wide, .* high, .* deep/).waitFor();
  await bench.close();
});

test("beginning afresh leaves nothing of the person before, and taking it back no name", async () => {
  const bench = await Bench.open(chrome);
  const box = (name) => bench.page.getByRole("textbox", { name });
  const plug = bench.page.getByRole("combobox", { name: "Plug to pass" });
  const state = async () => [
    await box("Free wall").inputValue(), await box("Ceiling").inputValue(), await box("Screen on top").inputValue(), await plug.inputValue(),
    (await bench.drawing()).match(/Finish \w+/)[0], await box("costs at most").inputValue(),
  ];
  const fresh = await state();
  for (const [name, text] of [["Free wall", "3000"], ["Ceiling", "2400"], ["Screen on top", "40"], ["costs at most", "9000"]]) {
    await box(name).fill(text);
    await box(name).press("Enter");
  }
  await plug.selectOption("hdmi");
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  const before = await state();
  assert.deepEqual(before, ["3\u202f000", "2\u202f400", "40", "hdmi", "Finish Brick", "9\u202f000.00"]);
  const file = await bench.order();
  await bench.open(file);
  await bench.page.getByText("still holds.").waitFor();
  // An opened order has no budget; the visit has one again.
  await box("costs at most").fill("9000");
  await box("costs at most").press("Enter");
  await bench.button("Begin afresh").click();
  assert.deepEqual(await state(), fresh);
  assert.equal(await bench.page.getByText("still holds.").count(), 0, "nor what was said of the order");
  await bench.button("Order").click();
  assert.deepEqual(Object.values(await bench.customer()), ["", "", "", ""]);
  await bench.page.keyboard.press("Escape");
  await bench.button("Take it back").click();
  assert.deepEqual(await state(), before);
  await bench.button("Order").click();
  assert.equal((await bench.customer())["Name"], "", "who it was does not come back");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("an opened order says for whom it is, and what holds of it is said of it alone", async () => {
  const bench = await Bench.open(chrome);
  const typed = { ...ADA, "Remark for workshop and driver, if any": "Ring the lower bell" };
  const file = await bench.order(typed);
  await bench.button("Begin afresh").click();
  await bench.open(file);
  const holds = bench.page.getByText("Everything that it promised still holds.");
  await holds.waitFor();
  await bench.button("Order").click();
  assert.deepEqual(await bench.customer(), typed);
  await bench.page.keyboard.press("Escape");
  await bench.question("Model").getByRole("radio", { name: "Teasel, sideboard" }).click();
  await holds.waitFor({ state: "hidden" });
  await bench.open(file);
  await holds.waitFor();
  await bench.type("Width", "1720");
  await holds.waitFor({ state: "hidden" });
  await bench.close();
});

test("without its range file nothing can be ordered; that is said, and it is tried again", async () => {
  const bench = await Bench.routed(chrome);
  const asked = [];
  let there = false;
  await bench.page.route("**/ranges/fenland.toml", (route) => {
    asked.push(there);
    return there ? route.continue() : route.abort();
  });
  // What looks for a newer range file later is none of this, nor is the page that was open before.
  await bench.page.goto("about:blank");
  await bench.page.route("**/offline.js", (route) =>
    route.fulfill({ contentType: "text/javascript", body: "export const begin = () => {};" }));
  await bench.visit();
  assert.equal(asked.length, 2, "it was tried twice before anything is said");
  const why = bench.page.getByText("Nothing can be ordered now. The range file could not be fetched.");
  await why.waitFor();
  assert.match(await bench.tally(), /Cannot be ordered now\s+No range file/);
  assert.equal(await bench.isShut("Order"), true);
  await bench.button("Order").click();
  assert.equal(await bench.dialog.isVisible(), false);
  await bench.button("Begin afresh").click();
  await bench.type("Height", "600");
  await bench.button("Try again").click();
  await why.waitFor();
  assert.equal(asked.length, 3);
  there = true;
  await bench.button("Try again").click();
  await bench.page.getByText("Can be made", { exact: true }).waitFor();
  assert.equal(await why.count(), 0);
  assert.match(await bench.drawing(), /600 high/, "what was chosen is there");
  await bench.button("Order").click();
  await bench.dialog.waitFor();
  await bench.close();
});

test("a range file that comes at the second try is no matter", async () => {
  const bench = await Bench.routed(chrome);
  let tries = 0;
  await bench.page.route("**/ranges/fenland.toml", (route) => (tries += 1) === 1 ? route.abort() : route.continue());
  await bench.visit();
  assert.match(await bench.tally(), /Can be made/);
  assert.equal(await bench.isShut("Order"), false);
  await bench.close();
});
