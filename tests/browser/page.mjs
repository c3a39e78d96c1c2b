// The page as a person meets it: everything is found by role and name.
import { chromium } from "playwright-core";

const flags = [
  "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

/** Starts the browser. */
export function browser() {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: flags });
}

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

  group(name) {
    return this.page.getByRole("group", { name, exact: true });
  }

  size(name) {
    return this.page.getByRole("textbox", { name: `${name} in millimetres`, exact: true });
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
    return this.page.workers().find((worker) => worker.url().includes("slotwright-scene"));
  }

  /** Orders for an invented person and gives the saved file's path. */
  async order() {
    await this.button("Order spec").click();
    const dialog = this.page.getByRole("dialog", { name: "Order spec" });
    await dialog.getByRole("textbox", { name: "Name" }).fill("Ada Reed");
    await dialog.getByRole("textbox", { name: "E-mail or telephone" }).fill("ada@example.org");
    await dialog.getByRole("textbox", { name: "Address, up to six lines" }).fill("1 Dyke Lane\nFenby");
    const saved = this.page.waitForEvent("download");
    await dialog.getByRole("button", { name: "Save the order spec" }).click();
    const path = await (await saved).path();
    await dialog.getByRole("button", { name: "Close" }).click();
    return path;
  }
}
