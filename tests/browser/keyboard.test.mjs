// By keyboard alone: how many presses an order takes, what arrows do, and that the focus is never lost.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

/** Presses keys and counts them; a text that is typed counts as one. */
class Keys {
  constructor(bench) {
    this.page = bench.page;
    this.count = 0;
  }

  async press(...keys) {
    for (const key of keys) {
      this.count += 1;
      await this.page.keyboard.press(key);
    }
  }

  async type(text) {
    this.count += 1;
    await this.page.keyboard.insertText(text);
  }

  /** What has the focus: its role or kind, and its name. */
  at() {
    return this.page.evaluate(() => {
      const own = document.activeElement;
      const name = own.getAttribute("aria-label") ?? own.labels?.[0]?.querySelector(".field-label")?.textContent
        ?? own.labels?.[0]?.textContent ?? own.textContent;
      const group = own.closest("[role=radiogroup], [role=tablist], [role=toolbar]")?.getAttribute("aria-label");
      return [group, name.trim()].filter(Boolean).join(": ").replaceAll(/[\u202f\u00a0]/g, " ");
    });
  }

  /** Waits for the focus to be led somewhere: the page derives the unit first. */
  async comes(name) {
    const until = Date.now() + 5000;
    while (!(await this.at()).startsWith(name) && Date.now() < until) await this.page.waitForTimeout(10);
    await this.is(name);
  }

  async is(wanted) {
    const at = await this.at();
    assert.ok(at.startsWith(wanted), `${at} has the focus, not ${wanted}`);
  }

  /** Goes on by a key until that has the focus. */
  async to(wanted, key = "Tab") {
    for (let presses = 0; presses < 40; presses += 1) {
      await this.press(key);
      if ((await this.at()).startsWith(wanted)) return;
    }
    assert.fail(`${wanted} is not reached; ${await this.at()} has the focus`);
  }

  /** Fills in the order's dialog from where it opens, and saves; the order. */
  async save() {
    // Its fields stand there once the order is derived.
    await this.page.getByRole("dialog", { name: "Order" }).getByRole("textbox", { name: "Name", exact: true }).waitFor();
    await this.to("Name");
    await this.type("Ada Reed");
    await this.press("Enter");
    await this.is("E-mail or telephone");
    await this.type("ada@example.org");
    await this.press("Enter");
    await this.is("Address");
    await this.type("1 Dyke Lane");
    await this.press("Tab");
    await this.is("Remark");
    const saved = this.page.waitForEvent("download");
    await this.press("Enter");
    return JSON.parse(readFileSync(await (await saved).path(), "utf8"));
  }
}

test("from load to a saved order: at most 30 presses", async () => {
  const bench = await Bench.open(chrome);
  const keys = new Keys(bench);
  await keys.press("Tab");
  await keys.is("Skip to the questions");
  await keys.press("Enter");
  await keys.is("1Where it stands");
  await keys.to("Width");
  await keys.type("1700");
  await keys.press("Control+Enter");
  await keys.is("Order");
  await keys.press("Enter");
  const order = await keys.save();
  assert.deepEqual([order.choice.width_mm, order.customer.name], [1700, "Ada Reed"]);
  assert.ok(keys.count <= 30, `${keys.count} presses`);
  console.log(`# ${keys.count} presses from load to a saved order`);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("without a key of our own, by the links that skip, it is not much longer", async () => {
  const bench = await Bench.open(chrome);
  const keys = new Keys(bench);
  const address = bench.page.url();
  await keys.press("Tab", "Tab");
  await keys.is("Skip to price and order");
  await keys.press("Enter");
  await keys.is("Order");
  await keys.press("Enter");
  await keys.save();
  assert.ok(keys.count <= 30, `${keys.count} presses`);
  assert.equal(bench.page.url().split("#")[0], address.split("#")[0]);
  assert.doesNotMatch(bench.page.url(), /#(order|questions)/, "the address is the unit's");
  await bench.close();
});

test("a full order: wall, screen, sizes, six bays, a device, kept answers, finish: at most 150 presses", async () => {
  const bench = await Bench.open(chrome);
  const keys = new Keys(bench);
  await keys.press("Tab", "Enter", "Tab");
  await keys.is("Free wall");
  await keys.type("3000");
  await keys.press("Tab");
  await keys.is("Ceiling");
  await keys.type("2400");
  await keys.press("Tab");
  await keys.type("55");
  for (const [name, size] of [["width", "2200"], ["height", "600"], ["depth", "480"]]) {
    await keys.to(`Keep ${name}`);
    if (name !== "height") await keys.press("Space");
    await keys.press("Tab");
    await keys.type(size);
  }
  await keys.to("Number of bays");
  await keys.press("End");
  await keys.is("Number of bays: 6");
  await keys.to("Bay to look at");
  await keys.is("Bay to look at: 1");
  for (let bay = 1; bay <= 6; bay += 1) {
    if (bay === 1) await keys.to("Bay 1 holds");
    await keys.is(`Bay ${bay} holds`);
    // From an open bay to one shelf, or from whatever it is to the next.
    await keys.press("Home");
    if (bay % 2 === 0) await keys.press("ArrowRight");
    if (bay === 6) break;
    await keys.to(`On to bay ${bay + 1}`);
    await keys.press("Enter");
    await keys.comes(`Bay ${bay + 1} holds`);
  }
  await keys.to("Device in bay 6");
  await keys.press("End");
  await keys.to("Finish");
  await keys.press("ArrowRight", "ArrowRight");
  await keys.is("Finish: Chalk");
  await keys.press("Control+Enter", "Enter");
  const { choice } = await keys.save();
  assert.deepEqual([choice.width_mm, choice.height_mm, choice.depth_mm, choice.bays.length, choice.finish], [2200, 600, 480, 6, "chalk"]);
  assert.deepEqual(choice.bays.map((bay) => bay.fill), ["open", { shelves: 1 }, "open", { shelves: 1 }, "open", { shelves: 1 }]);
  assert.equal(choice.bays[5].device, "router");
  assert.ok(keys.count <= 150, `${keys.count} presses`);
  console.log(`# ${keys.count} presses for a full order`);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("each group is one stop, and its arrows go round", async () => {
  const bench = await Bench.open(chrome, { reducedMotion: "reduce" });
  await bench.stage();
  const keys = new Keys(bench);
  const stops = [];
  for (let presses = 0; presses < 90 && stops.at(-1) !== "Order"; presses += 1) {
    await keys.press("Tab");
    stops.push(await keys.at());
  }
  const groups = stops.map((stop) => stop.split(": ")[0]).filter((name) => /^(View|Take away|Look from|Show|Model|Number of bays|Plinth|Bay to look at|Bay 1 holds|Cable hole.*|Device.*|Finish|Back|Corners.*)$/.test(name));
  assert.equal(groups.length, 14, groups.join());
  assert.equal(new Set(groups).size, groups.length, groups.join());
  // Each question has one for its answers and one to keep it.
  assert.ok(stops.length <= 64, `${stops.length} stops`);
  assert.ok(!stops.some((stop) => /step (less|more)|: (less|more)$/.test(stop)), "hands alone need these buttons");
  await bench.group("Look from").getByRole("button", { name: "Corner" }).focus();
  await keys.press("ArrowLeft");
  await keys.is("Look from: Farther");
  await keys.press("ArrowRight", "End", "Home");
  await keys.is("Look from: Corner");
  // Where a control of a group comes to be hidden, the group is still reached.
  await bench.button("Doors open").focus();
  await bench.question("Bay 1 holds").getByRole("radio", { name: "Open", exact: true }).click();
  await bench.button("Doors open").waitFor({ state: "hidden" });
  await bench.slider("Pull apart").focus();
  await keys.press("Shift+Tab");
  await keys.is("Show: Person");
  await bench.close();
});

test("arrows take what is open alone; Enter explains the rest, then takes it with what it needs", async () => {
  const bench = await Bench.open(chrome);
  const keys = new Keys(bench);
  const devices = bench.question("Device in bay 1");
  const receiver = devices.getByRole("radio", { name: "Receiver", exact: true });
  await bench.page.waitForFunction(() => document.querySelectorAll("[aria-describedby=key-shifts]").length > 2);
  assert.equal(await bench.page.locator("[role=radio][aria-disabled]").count(), 0, "all of them answer");
  const before = await bench.drawing();
  await devices.getByRole("radio", { checked: true }).focus();
  await keys.press("ArrowRight", "ArrowRight");
  await keys.is("Device in bay 1: Receiver");
  await bench.page.getByText("Device in bay 1: Receiver. This does not go alone: ").waitFor();
  assert.equal(await bench.drawing(), before);
  assert.equal(await receiver.getAttribute("aria-checked"), "false");
  await bench.page.locator("#said", { hasText: /Enter: Take this/ }).waitFor();
  await keys.press("Enter");
  assert.equal(await receiver.getAttribute("aria-checked"), "true");
  await keys.is("Device in bay 1: Receiver");
  // One that is open is taken by the arrow.
  await bench.question("Finish").getByRole("radio", { checked: true }).focus();
  await keys.press("ArrowLeft");
  await keys.is("Finish: Brick");
  assert.equal(await bench.question("Finish").getByRole("radio", { name: "Brick" }).getAttribute("aria-checked"), "true");
  // Tab leaves from an answer that is not taken, and comes back to the one that is.
  await devices.getByRole("radio", { checked: true }).focus();
  await keys.press("Home", "ArrowRight", "Tab");
  assert.doesNotMatch(await keys.at(), /^Device/);
  await keys.press("Shift+Tab");
  await keys.is("Device in bay 1: No device");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a size is stepped in its field, ten steps by Page Up and Page Down, and a share by arrows", async () => {
  const bench = await Bench.open(chrome);
  const value = async () => (await bench.size("Width").inputValue()).replaceAll(/\D/g, "");
  await bench.size("Width").focus();
  for (const [key, wanted] of [["ArrowUp", "1650"], ["PageUp", "1750"], ["ArrowDown", "1740"], ["PageDown", "1640"]]) {
    await bench.page.keyboard.press(key);
    assert.equal(await value(), wanted, key);
  }
  const share = bench.page.getByRole("spinbutton", { name: "Share of the width" });
  await share.focus();
  await bench.page.keyboard.press("ArrowUp");
  assert.equal(await share.getAttribute("aria-valuenow"), "2");
  await bench.page.keyboard.press("ArrowDown");
  assert.equal(await share.getAttribute("aria-valuenow"), "1");
  await bench.close();
});
