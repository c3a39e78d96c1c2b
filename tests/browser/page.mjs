// The page as a person meets it: everything is found by role and name.
import assert from "node:assert/strict";
import { chromium } from "playwright-core";

const flags = [
  "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

/** Starts the browser, where somebody has asked it for larger letters with those. */
export function browser(letters = 100) {
  const args = [...flags, `--blink-settings=defaultFontSize=${letters * 0.16}`];
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args });
}

/** What a message between the page and a worker is, in a word: its second part, each behind its length and a colon. */
export function word(message) {
  const part = (text) => {
    const [length] = text.split(":", 1);
    return [text.substr(length.length + 1, length), text.slice(length.length + 1 + Number(length))];
  };
  // That it listens has no parts.
  return message.includes(":") ? part(part(message)[1])[0] : message;
}

/** What an invented person fills in, by the labels of the fields. */
export const ADA = {
  "Name": "Ada Reed",
  "E-mail or telephone": "ada@example.org",
  "Address, up to six lines": "1 Dyke Lane\nFenby",
  "Remark for workshop and driver, if any": "",
};

/** One open page of the app. */
export class Bench {
  static async open(browser, { url, ...options } = {}) {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true, ...options });
    return Bench.tab(context, url);
  }

  /** One more page of the same browser, for the same person. */
  static async tab(context, url) {
    const bench = new Bench(await context.newPage(), url);
    bench.page.on("pageerror", (error) => bench.errors.push(error.message));
    bench.page.on("console", (message) => message.type() === "error" && bench.errors.push(message.text()));
    await bench.visit();
    return bench;
  }

  /** A page whose files a test answers itself: what a service worker asks for, nobody could route. */
  static routed(browser, options = {}) {
    return Bench.open(browser, { serviceWorkers: "block", ...options });
  }

  constructor(page, url = process.env.SLOTWRIGHT_URL) {
    this.page = page;
    this.url = url;
    // What is spoken stands in sight as well: tests of a text mean that.
    page.getByText = (text, options) => page.locator("body > :not(#said)").getByText(text, options);
    this.errors = [];
  }

  async visit() {
    await this.page.goto(this.url);
    await this.live();
  }

  /** Waits until all of the live page stands in the place of the first view. */
  async live() {
    await this.page.locator("#page #question-looks").waitFor();
  }

  /** Waits until all files are there for days without a network, and the page has them from there. */
  cached() {
    return this.page.evaluate(async () => {
      const { serviceWorker } = navigator;
      await serviceWorker.ready;
      if (serviceWorker.controller) return;
      await new Promise((resolve) => serviceWorker.addEventListener("controllerchange", resolve));
    });
  }

  close() {
    return this.page.context().close();
  }

  button(name) {
    return this.page.getByRole("button", { name, exact: true });
  }

  /** Whether a button has nothing to give now, and says why when it is pressed: so it is not disabled, and tells how it stands. */
  async isShut(name) {
    const [disabled, shut, description] = await this.button(name).evaluate((button) => [
      button.hasAttribute("aria-disabled"), button.classList.contains("shut"),
      button.getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id).textContent).join(" "),
    ]);
    assert.equal(disabled, false);
    assert.equal(/Can be made/.test(description), !shut, description);
    return shut;
  }

  /** The button of the header; the strip has one like it beside what a step did. */
  header(name) {
    return this.page.getByRole("banner").getByRole("button", { name, exact: true });
  }

  /** What the last step did, with the way back; empty when it stands no longer. */
  async did() {
    return (await this.page.locator(".did").innerText()).replaceAll(/[\u202f\u00a0\s]+/g, " ").trim();
  }

  /** Waits until the line says that. */
  async told(pattern) {
    for (let tries = 0; tries < 60 && !pattern.test(await this.did()); tries += 1) await this.page.waitForTimeout(50);
    assert.match(await this.did(), pattern);
  }

  /** Waits until what changed is a step. */
  rest() {
    return this.pause(250);
  }

  /** Waits by the page's own clock: what it does by then is done, however busy it is. */
  pause(milliseconds) {
    return this.page.evaluate((milliseconds) => new Promise((done) => { setTimeout(done, milliseconds); }), milliseconds);
  }

  /** Waits until the page says that what changed is saved. */
  saved() {
    return this.page.locator(".kept").getByText("Saved", { exact: true }).waitFor();
  }

  /** All that is kept in the browser, text by name, steps aside; other texts are put there first. */
  async kept(put = {}) {
    return Object.fromEntries(Object.entries(await this.stored(put)).filter(([name]) => !name.startsWith("h")));
  }

  /** The same with the steps of units, each by its unit's name behind an `h`. */
  stored(put = {}) {
    return this.page.evaluate((put) => new Promise((good) => {
      const asked = indexedDB.open("slotwright", 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore("drafts");
      asked.onsuccess = () => {
        const work = asked.result.transaction("drafts", "readwrite");
        const all = work.objectStore("drafts");
        for (const [name, text] of Object.entries(put)) all.put(text, name);
        const [keys, texts] = [all.getAllKeys(), all.getAll()];
        work.oncomplete = () => {
          asked.result.close();
          good(Object.fromEntries(keys.result.map((key, at) => [key, texts.result[at]])));
        };
      };
    }), put);
  }

  /** The link and the pins of the unit that was kept last. */
  async keptUnit() {
    const units = Object.entries(await this.kept()).filter(([name]) => name.startsWith("t")).map(([, text]) => text.split("\u001f"));
    const last = units.sort(([one], [other]) => Number(one) - Number(other)).pop();
    return last?.slice(3).join(" ");
  }

  /** A group of controls, whatever else it is. */
  group(name) {
    const [group, ...others] = ["group", "toolbar", "tablist"].map((role) => this.page.getByRole(role, { name, exact: true }));
    return others.reduce((found, other) => found.or(other), group);
  }

  /** The answers to a question. */
  question(name) {
    return this.page.getByRole("radiogroup", { name, exact: true });
  }

  size(name) {
    return this.page.getByRole("textbox", { name, exact: true });
  }

  slider(name) {
    return this.page.getByRole("slider", { name, exact: true });
  }

  /** Types a size and leaves the field. */
  async type(name, text) {
    await this.size(name).fill(text);
    await this.size(name).press("Enter");
    await this.size(name).blur();
  }

  /** What the strip says. */
  async tally() {
    const text = await this.page.getByRole("contentinfo").innerText();
    return text.replaceAll(/[\u202f\u00a0]/g, " ");
  }

  /** The text alternative of the drawing. */
  drawing() {
    return this.page.getByRole("region", { name: "Drawing" }).getByRole("img").getAttribute("aria-label");
  }

  /** The worker that draws the stage, once there is a picture. */
  async stage() {
    await this.page.waitForFunction(() => document.querySelectorAll(".dims text:not(.name)").length > 0);
    return this.page.workers().find((worker) => worker.url().endsWith("#scene"));
  }

  /** The dialog of the order. */
  get dialog() {
    return this.page.getByRole("dialog", { name: "Order" });
  }

  /** What stands in the fields of the order, by their labels. */
  async customer() {
    const texts = {};
    for (const label of Object.keys(ADA)) texts[label] = await this.dialog.getByLabel(label).inputValue();
    return texts;
  }

  /** Opens the order and fills in its fields. */
  async address(texts = ADA) {
    await this.button("Order").click();
    for (const [label, text] of Object.entries(texts)) await this.dialog.getByLabel(label).fill(text);
  }

  /** Presses the button that saves the order. */
  save(options) {
    const button = this.dialog.getByRole("button", { name: "Save the order" });
    return options?.twice ? button.dblclick() : button.click();
  }

  /** Orders for an invented person and gives the saved file's path. */
  async order(texts = ADA) {
    await this.address(texts);
    const saved = this.page.waitForEvent("download");
    await this.save();
    const path = await (await saved).path();
    await this.dialog.getByRole("button", { name: "Close" }).click();
    return path;
  }

  /** Opens an order that was saved. */
  open(file) {
    return this.page.locator("input[type=file]").setInputFiles(file);
  }

  /** A slow line to the order desk. */
  slowDesk(milliseconds) {
    return this.page.route("**/split_orders.wasm", async (route) => {
      await new Promise((resolve) => setTimeout(resolve, milliseconds));
      await route.continue();
    });
  }
}
