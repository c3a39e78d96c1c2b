// The list of drafts as a person meets it.
import assert from "node:assert/strict";

export class Drawer {
  constructor(bench) {
    this.bench = bench;
  }

  get dialog() {
    return this.bench.page.getByRole("dialog", { name: /^(Drafts|Side by side)$/ });
  }

  /** The name that the present unit will have. */
  get field() {
    return this.dialog.getByRole("textbox", { name: "Name", exact: true });
  }

  async open() {
    await this.bench.page.getByRole("banner").getByRole("button", { name: /^Drafts/ }).click();
    await this.field.waitFor();
  }

  async close() {
    await this.press("Close");
    await this.dialog.waitFor({ state: "hidden" });
  }

  /** How many the header counts. */
  async count() {
    return (await this.bench.page.locator(".count").innerText()).trim();
  }

  press(name) {
    return this.dialog.getByRole("button", { name, exact: true }).click();
  }

  /** Waits until the list says that. */
  says(sentence) {
    return this.dialog.getByRole("status").getByText(sentence, { exact: true }).waitFor();
  }

  /** Keeps the present unit by a name, and closes the list again. */
  async keep(name) {
    await this.open();
    await this.field.fill(name);
    await this.press("Keep a copy");
    await this.dialog.getByRole("status").getByText(`“${name}” is kept`).waitFor();
    if (!(await this.dialog.getByText("in place of the draft").isVisible())) await this.close();
  }

  item(name) {
    return this.dialog.getByRole("listitem").filter({ has: this.bench.page.getByRole("heading", { name, exact: true }) });
  }

  names() {
    return this.dialog.getByRole("listitem").getByRole("heading").allInnerTexts();
  }

  async figures(name) {
    return (await this.item(name).locator(".figures").innerText()).replaceAll(/[\u202f\u00a0]/g, " ");
  }

  async rename(name, to) {
    const field = this.dialog.getByRole("textbox", { name: `Name of ${name}`, exact: true });
    await field.fill(to);
    await field.press("Enter");
  }

  tick(name) {
    return this.dialog.getByRole("checkbox", { name: `Compare ${name}`, exact: true }).check();
  }

  /** The rows of the comparison: values by their name. */
  async rows() {
    await this.dialog.locator(".sides").waitFor();
    const rows = await this.dialog.locator("tbody tr").evaluateAll((rows) => rows.map((row) =>
      [row.querySelector("th").textContent, [...row.querySelectorAll("td")].map((cell) => cell.textContent)]));
    assert.ok(rows.length > 10);
    return JSON.parse(JSON.stringify(Object.fromEntries(rows)).replaceAll(/[\u202f\u00a0]/g, " "));
  }
}
