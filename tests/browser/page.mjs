// The page as a person meets it: everything is found by role and name.
import assert from "node:assert/strict";
import { chromium } from "playwright-core";

const flags = [
  "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

/** Starts the browser. */
export function browser() {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: flags });
}

/** What an invented person fills in, by the labels of the fields. */
export const ADA = {
  "Name": "Ada Reed",
  "E-mail or telephone": "ada@example.org",
  "Address, up to six lines": "1 Dyke Lane\nFenby",
  "Remark, if any": "",
};

/** One open page of the app. */
export class Bench {
  static async open(browser, options = {}) {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true, ...options });
    const page = await context.newPage();
    const bench = new Bench(page);
    page.on("pageerror", (error) => bench.errors.push(error.message));
    page.on("console", (message) => message.type() === "error" && bench.errors.push(message.text()));
    await bench.visit();
    return bench;
  }

  constructor(page) {
    this.page = page;
    // What is spoken stands in sight as well: tests of a text mean that.
    page.getByText = (text, options) => page.locator("body > :not(#said)").getByText(text, options);
    this.errors = [];
  }

  async visit() {
    await this.page.goto(process.env.SLOTWRIGHT_URL);
    await this.page.getByRole("button", { name: "Order spec", exact: true }).waitFor();
  }

  close() {
    return this.page.context().close();
  }

  button(name) {
    return this.page.getByRole("button", { name, exact: true });
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
  async rest() {
    await this.page.waitForTimeout(250);
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
    return this.page.getByRole("dialog", { name: "Order spec" });
  }

  /** What stands in the fields of the order, by their labels. */
  async customer() {
    const texts = {};
    for (const label of Object.keys(ADA)) texts[label] = await this.dialog.getByLabel(label).inputValue();
    return texts;
  }

  /** Opens the order and fills in its fields. */
  async address(texts = ADA) {
    await this.button("Order spec").click();
    for (const [label, text] of Object.entries(texts)) await this.dialog.getByLabel(label).fill(text);
  }

  /** Presses the button that saves the order. */
  save(options) {
    const button = this.dialog.getByRole("button", { name: "Save the order spec" });
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
