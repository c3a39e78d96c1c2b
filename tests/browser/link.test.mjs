// The link of a unit: opened from the address, kept in it, and taken away as text and as a QR code.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";
import { scan } from "./scan.mjs";

const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const LINK = "1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2:h=round-60@-30,1l/w3000/p=hdmi";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Loads the page anew with a fragment. */
async function arrive(bench, fragment) {
  await bench.page.goto("about:blank");
  await bench.page.goto(`${process.env.SLOTWRIGHT_URL}#${fragment}`);
  await bench.live();
}

const fragment = (bench) => bench.page.evaluate(() => location.hash.slice(1));
const saved = (bench) => bench.keptUnit();
const banner = (bench) => bench.page.locator(".banner:not(#no-range):not(.empty) p").innerText();
/** Longer than the pause after which a choice is saved. */
const rest = (bench) => bench.pause(400);

/** The dialog of the link, opened. */
async function dialog(bench) {
  await bench.button("Link").click();
  const dialog = bench.page.getByRole("dialog", { name: "A link to this unit" });
  await dialog.getByRole("img", { name: "QR code of the link to this unit" }).waitFor();
  return dialog;
}

test("a link opens its unit, wins over what was saved, and what was saved stays until something is answered", async () => {
  const bench = await Bench.open(chrome);
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  await rest(bench);
  const before = await saved(bench);
  await arrive(bench, LINK);
  assert.match(await bench.drawing(), /1\u202f640\smm wide, 920 high, 400 deep.*Finish Chalk/);
  assert.equal(await bench.page.getByRole("textbox", { name: "Free wall" }).inputValue(), "3\u202f000");
  assert.match(await banner(bench), /^This unit was opened from a link\. What you chose before is among the drafts/);
  await rest(bench);
  assert.equal(await fragment(bench), LINK);
  assert.equal(await saved(bench), before);
  await bench.visit();
  assert.match(await bench.drawing(), /Finish Brick/);
  await arrive(bench, LINK);
  await bench.type("Height", "900");
  await rest(bench);
  assert.notEqual(await saved(bench), before);
  assert.match(await fragment(bench), /^1\/teasel\/1640x900x400\/30\/birch-18\/chalk\/.*\/w3000\/p=hdmi\/@[0-9a-f]{8}=\d+$/);
  assert.equal(await bench.page.getByText("opened from a link").isVisible(), false, "it was about the unit as it came");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what was there is called a draft only if it is one", async () => {
  const bench = await Bench.open(chrome);
  await bench.kept({ "d1-hall": "1764393600000\u001ffenland\u001fHall\u001f1/sedge/1700x520x420/0/birch-18/clear/1o,1o\u001f" });
  await arrive(bench, LINK);
  await bench.page.getByText("This unit was opened from a link.").waitFor();
  assert.doesNotMatch(await banner(bench), /among the drafts/, "the starting unit was never kept");
  // Within the page, what was chosen is kept at that moment.
  await bench.visit();
  await bench.type("Width", "1800");
  await bench.page.evaluate((link) => { location.hash = link; }, LINK);
  await bench.page.getByText("What you chose before is among the drafts").waitFor();
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a reload keeps the unit and what is kept of it, says nothing, and each step has its link", async () => {
  const bench = await Bench.open(chrome);
  // Before anything is answered: with its price as soon as the range's digest is there.
  await bench.page.waitForURL(/#1\/sedge\/1640x520x420\/.*\/@[0-9a-f]{8}=\d+$/);
  assert.equal(await saved(bench), undefined);
  await bench.page.reload();
  await bench.live();
  assert.equal(await bench.page.getByText("opened from a link").count(), 0);
  const steps = await bench.page.evaluate(() => history.length);
  await bench.type("Height", "600");
  await bench.button("Keep height").click();
  await rest(bench);
  assert.match(await fragment(bench), /^1\/sedge\/1640x600x420\//);
  assert.equal(await bench.page.evaluate(() => history.length), steps + 2, "a size and what is kept are two steps");
  await bench.page.goBack();
  await bench.page.goBack();
  await bench.page.waitForURL(/#1\/sedge\/1640x520x420\//);
  await bench.page.goForward();
  await bench.page.goForward();
  await bench.page.waitForURL(/#1\/sedge\/1640x600x420\//);
  await rest(bench);
  await bench.page.reload();
  await bench.live();
  assert.match(await bench.drawing(), /600 high/);
  assert.equal(await bench.button("Keep height").getAttribute("aria-pressed"), "true");
  assert.equal(await bench.page.getByText("opened from a link").count(), 0);
  // Left at once: the address is older than what is saved.
  await bench.page.evaluate(() => {
    const buttons = [...document.querySelectorAll("[aria-label='Finish'] button")];
    buttons.find((button) => button.textContent === "Mere").click();
    location.reload();
  });
  await bench.page.getByText(/Finish Mere/).first().waitFor();
  assert.equal(await bench.page.getByText("opened from a link").count(), 0);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a link that cannot be opened is refused kindly, and nothing is lost", async () => {
  const bench = await Bench.open(chrome);
  await bench.question("Finish").getByRole("radio", { name: "Brick" }).click();
  await rest(bench);
  const before = await saved(bench);
  for (const [text, said] of [
    [LINK.replace("1/", "7/"), /^This link is of version 7; here versions 1 to 2 are read\. Load the page anew/],
    [LINK.replace("teasel", "reed"), /^This link is of the model reed, which this range does not have/],
    [LINK.replace("1640x", "wide"), /^In this link width, height and depth cannot be read: \u201cwide920x400\u201d\. Copy all of it/],
    ["1/".repeat(500_000), /^This link is far too long\./],
    [`1/${"%3Cscript%3EsmuggledIn()%3C/script%3E"}`, /^In this link the model cannot be read: \u201c<script>smuggledIn\(\)<\u201d/],
    ["<img src=x onerror=alert(1)>", /^This is no link of a unit\./],
    [LINK.replace("2o,", "1o,".repeat(600)), /^This link has 602 bays, more than any unit has\./],
    [LINK.replace("2o", "%"), /^In this link bay 1 cannot be read: \u201c%\u201d/],
    [LINK.replace("2o", "%zz%E2%28"), /^In this link bay 1 cannot be read: \u201c%zz\ufffd\(\u201d/],
    ["1/teasel/%E2%80%AE/%00", /cannot be read: \u201c\ufffd\ufffd\ufffd\u201d/],
  ]) {
    await arrive(bench, text);
    assert.match(await banner(bench), said);
    assert.match(await banner(bench), /What you see is not its unit\.$/);
    assert.match(await bench.drawing(), /Finish Brick/);
  }
  await rest(bench);
  assert.equal(await saved(bench), before);
  // Sizes that no unit has are those of a unit all the same: what is wrong with them stands beside them, with ways out.
  for (const sizes of ["5000x920x400", "100000x100000x100000", "-1x0x-100000"]) {
    await arrive(bench, LINK.replace("1640x920x400", sizes));
    assert.match(await banner(bench), /^This unit was opened from a link\..*\nIt cannot be made as it is\. The width is/);
    await bench.page.waitForFunction(() => document.querySelectorAll("#questions .notice.stop").length > 0);
    assert.equal(await saved(bench), before);
  }
  await arrive(bench, "questions");
  assert.equal(await bench.page.locator(".banner:not(.empty)").count(), 0, "a place of the page is no link");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a link with a part that the range lacks says so at the top and aloud, with the way to what mends it", async () => {
  const bench = await Bench.open(chrome);
  const way = bench.button("See what stops it");
  assert.equal(await way.isVisible(), false);
  await bench.page.evaluate((link) => { location.hash = link; }, LINK.replace("chalk", "ochre"));
  await way.waitFor();
  assert.match(await banner(bench), /^This unit was opened from a link\.\nIt cannot be made as it is\. This finish is not in the range\.$/);
  const said = bench.page.locator("#said").getByText("This finish is not in the range.");
  await said.waitFor({ state: "attached" });
  await bench.page.locator("#question-looks .notice .remedy").first().waitFor();
  await way.click();
  const at = await bench.page.evaluate(() => document.activeElement.textContent);
  assert.match(at, /^Cannot be made\. This finish is not in the range\./);
  await bench.page.locator("#question-looks .notice .remedy").first().click();
  await way.waitFor({ state: "hidden" });
  assert.match(await bench.tally(), /Can be made/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("escapes are undone, and another link in the same tab is opened", async () => {
  const bench = await Bench.open(chrome);
  await arrive(bench, LINK.replaceAll("@", "%40").replaceAll(",", "%2C").replaceAll("/", "%2F"));
  assert.match(await bench.drawing(), /1\u202f640\smm wide/);
  const other = LINK.replace("1640x", "1700x").replace("chalk", "soot");
  await bench.page.evaluate((other) => { location.hash = other; }, other);
  await bench.page.getByText(/1\u202f700\smm wide.*Finish Soot/).first().waitFor();
  assert.match(await banner(bench), /^This unit was opened from a link\./);
  await rest(bench);
  assert.equal(await fragment(bench), other);
  await bench.page.evaluate(() => { location.hash = "7/teasel/1"; });
  await bench.page.getByText("This link is of version 7").waitFor();
  assert.match(await bench.drawing(), /1\u202f700\smm wide/);
  await bench.page.evaluate((link) => { location.hash = link; }, LINK);
  await bench.page.getByText("This link is of version 7").waitFor({ state: "hidden" });
  await bench.page.getByText(/1\u202f640\smm wide.*Finish Chalk/).first().waitFor();
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

for (const width of [1440, 360]) {
  test(`the dialog gives the link as text and as a code at ${width} px`, async () => {
    const bench = await Bench.open(chrome, { viewport: { width, height: 740 }, permissions: ["clipboard-read", "clipboard-write"] });
    await arrive(bench, LINK);
    await bench.stage();
    if (width < 640) await bench.button("More").click();
    await bench.button("Link").focus();
    await bench.page.keyboard.press("Enter");
    const opened = bench.page.getByRole("dialog", { name: "A link to this unit" });
    const code = opened.getByRole("img", { name: "QR code of the link to this unit" });
    await code.waitFor();
    const text = await opened.getByRole("textbox", { name: "Link" }).inputValue();
    assert.match(text, new RegExp(`^${process.env.SLOTWRIGHT_URL}/?#${LINK}/@[0-9a-f]{8}=\\d+$`));
    assert.equal(await scan(bench, code), text);
    await bench.page.evaluate(axe);
    const broken = await bench.page.evaluate(async () => {
      const { violations } = await globalThis.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
      return violations.map((rule) => `${rule.id}: ${rule.nodes.map((node) => node.target.join(" ")).join(", ")}`);
    });
    assert.deepEqual(broken, []);
    const [inner, content] = await opened.evaluate((dialog) => [dialog.clientWidth, dialog.scrollWidth]);
    assert.ok(content <= inner, `${content} px of content in ${inner} px`);
    await opened.getByRole("button", { name: "Copy" }).click();
    await opened.getByText("Copied.").waitFor();
    assert.equal(await bench.page.evaluate(() => navigator.clipboard.readText()), text);
    await bench.page.keyboard.press("Escape");
    await opened.waitFor({ state: "hidden" });
    assert.ok(await bench.button("Link").evaluate((button) => button === document.activeElement), "the focus returns");
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("where the browser does not copy, the link is selected; where it shares, it is offered", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.addInitScript(() => {
    Object.defineProperty(navigator, "clipboard", { value: undefined });
    navigator.share = async (data) => { globalThis.shared = data; };
  });
  await bench.visit();
  const opened = await dialog(bench);
  await opened.getByRole("button", { name: "Copy" }).click();
  await opened.getByText("The browser did not copy it.").waitFor();
  const field = opened.getByRole("textbox", { name: "Link" });
  const text = await field.inputValue();
  const selected = await field.evaluate((field) => field.value.slice(field.selectionStart, field.selectionEnd));
  assert.equal(selected, text);
  await opened.getByRole("button", { name: "Share" }).click();
  assert.deepEqual(await bench.page.evaluate(() => globalThis.shared), { url: text });
  await bench.close();
});

test("nothing of a person is in the link", async () => {
  const bench = await Bench.open(chrome);
  await bench.address();
  await bench.page.keyboard.press("Escape");
  await bench.type("Height", "600");
  await rest(bench);
  assert.doesNotMatch(decodeURIComponent(await bench.page.url()), /Ada|Reed|Dyke/);
  await bench.close();
});

test("what became different since the link was made is told", async () => {
  const bench = await Bench.routed(chrome);
  await arrive(bench, LINK);
  await bench.stage();
  await bench.type("Height", "900");
  await rest(bench);
  const link = await fragment(bench);
  const edit = async (edit) => {
    await bench.page.unroute("**/ranges/fenland.toml");
    await bench.page.route("**/ranges/fenland.toml", async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: edit(await response.text()) });
    });
    await arrive(bench, link);
    return (await banner(bench)).replaceAll("\u202f", " ");
  };
  const price = /The range has changed since you last saw this unit: it cost € ?[\d ]+\.\d\d with tax, and costs € ?[\d ]+\.\d\d now\.$/;
  const dearer = await edit((text) => text.replaceAll(/price_minor = (\d+)/g, (_, minor) => `price_minor = ${minor}0`));
  assert.match(dearer, price);
  const [then, now] = dearer.match(/€ ?[\d ]+\.\d\d/g).map((amount) => Number(amount.replaceAll(/\D/g, "")));
  assert.equal(then, Number(link.split("=").pop()));
  assert.ok(now > then, dearer);
  const gone = await edit((text) => text.replaceAll("\"chalk\"", "\"lime\""));
  assert.match(gone, /it could be ordered, and cannot be now\. This finish is not in the range\.$/);
  await bench.close();
  // Who comes back to the own unit is told nothing of that; another person is.
  const other = await Bench.routed(chrome);
  await other.page.route("**/ranges/fenland.toml", async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: (await response.text()).replace("note = ", "note = \"Other. \" # ") });
  });
  await arrive(other, link);
  assert.match(await banner(other), /The range has changed since its link was made; the price is the same\.$/);
  await other.close();
});
