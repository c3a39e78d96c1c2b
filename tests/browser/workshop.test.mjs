// The workshop's page: orders come in, and the pack that goes out is the tool's, file by file.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { after, before, test } from "node:test";
import { Host } from "./host.mjs";
import { browser } from "./page.mjs";
import { unzipped } from "./zip.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let chrome, folder, orders, broken;

function tool(...words) {
  const { status, stdout, stderr } = spawnSync(process.env.SLOTWRIGHT_BIN, words, { encoding: "utf8", cwd: folder });
  assert.ok(status === 0 || status === 1, stderr);
  return stdout;
}

before(async () => {
  chrome = await browser();
  folder = mkdtempSync(join(tmpdir(), "slotwright-saw-"));
  const choices = tool("sample", "--count", "3", "--seed", "5").split("\n").filter((line) => line.startsWith("{"));
  orders = choices.map((choice, at) => {
    writeFileSync(join(folder, "choice.json"), choice);
    tool("order", "--today", "2026-11-25", "--choice", "choice.json", "--name", `Person ${at + 1}`, "--out", `o${at + 1}.json`);
    return join(folder, `o${at + 1}.json`);
  });
  broken = join(folder, "broken.json");
  writeFileSync(broken, readFileSync(orders[0], "utf8").replace("Person 1", "Person 9"));
});
after(async () => {
  await chrome.close();
  rmSync(folder, { recursive: true });
});

/** The open page. */
class Saw {
  errors = [];

  static async open({ url = process.env.SLOTWRIGHT_URL, ...options } = {}) {
    const saw = new Saw();
    const context = await chrome.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true, ...options });
    saw.page = await context.newPage();
    saw.page.on("pageerror", (error) => saw.errors.push(error.message));
    saw.page.on("console", (message) => message.type() === "error" && saw.errors.push(message.text()));
    saw.url = `${url}workshop/`;
    await saw.page.goto(saw.url);
    await saw.live();
    return saw;
  }

  async live() {
    await this.page.getByRole("heading", { name: "Odd Lintel Workshop" }).waitFor();
    await this.page.getByText("Drop the orders of the day here").waitFor();
  }

  async bring(...files) {
    await this.page.locator("input[type=file]").setInputFiles(files);
    await this.nested();
  }

  /** Waits until the first effort is spent. */
  async nested() {
    await this.page.locator(".done:not(:empty, .looks)").waitFor();
  }

  async done() {
    return (await this.page.locator(".done").innerText()).replaceAll(/\s+/g, " ");
  }

  /** Takes what a button hands over; the file. */
  async take(press) {
    const [download] = await Promise.all([this.page.waitForEvent("download"), press()]);
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  }

  pack() {
    return this.take(() => this.page.getByRole("button", { name: "Take the pack" }).click());
  }

  async violations() {
    await this.page.evaluate(axe);
    return this.page.evaluate(async () => {
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
      const { violations } = await globalThis.axe.run(document, { runOnly: tags });
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).slice(0, 4).join(", ")}`);
    });
  }

  close() {
    return this.page.context().close();
  }
}

/** All files of a folder by path. */
function all(from, within = from, found = new Map()) {
  for (const name of readdirSync(within)) {
    const path = join(within, name);
    if (statSync(path).isDirectory()) all(from, path, found);
    else found.set(relative(from, path).replaceAll("\\", "/"), readFileSync(path));
  }
  return found;
}

/** The tool's pack of the same files, and that of a ZIP, are the same in every file. */
function isTheToolsPack(zip, out, ...words) {
  tool("pack", "o1.json", "o2.json", "o3.json", "broken.json", "--out", out, ...words);
  const [own, tools] = [unzipped(zip), all(join(folder, out))];
  assert.deepEqual([...own.keys()].sort(), [...tools.keys()].sort());
  for (const [path, bytes] of tools) assert.ok(bytes.equals(own.get(path)), `${path} differs`);
}

test("orders are taken or set aside, and the pack is the tool's, file by file", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders, broken);
  assert.match(await saw.done(), /^3 orders, \d+ parts, 1 set aside/);
  const list = saw.page.getByRole("region", { name: "Orders" });
  await list.getByText("Person 2").waitFor();
  await list.getByText("the file was changed after it was written").waitFor();
  const pictures = saw.page.getByRole("tabpanel").getByRole("button", { name: /^Sheet \d+,/ });
  assert.ok((await pictures.count()) > 0);
  const { name, bytes } = await saw.pack();
  assert.match(name, /^pack-[0-9a-f]{8}-[0-9a-f]{4}\.zip$/);
  // The page says by what its papers are known.
  await saw.page.getByText(name.slice("pack-".length, -".zip".length), { exact: true }).waitFor();
  isTheToolsPack(bytes, "plain");
  const labels = await saw.take(() => saw.page.getByRole("button", { name: "Labels", exact: true }).click());
  assert.equal(labels.name, "labels.pdf");
  assert.ok(labels.bytes.equals(all(join(folder, "plain")).get("labels.pdf")));
  assert.deepEqual(saw.errors, []);
  await saw.close();
});

test("a measured batch and a cutter change what is cut, as with the tool", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders, broken);
  const points = "17.60 17.62 17.64 17.61 17.63 17.60 17.62 17.64";
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  const dialog = saw.page.getByRole("dialog", { name: "Stock and measures" });
  const board = dialog.getByRole("textbox", { name: "18 mm birch plywood" }).first();
  await board.fill("17.6 17.7");
  await board.press("Tab");
  await dialog.getByText("2 points were given; measure eight").waitFor();
  assert.equal(await board.getAttribute("aria-invalid"), "true");
  await board.fill(points);
  await dialog.getByRole("textbox", { name: "Cutter, mm", exact: true }).fill("8");
  await saw.page.keyboard.press("Tab");
  await dialog.getByText("Mean 17.6").waitFor();
  await saw.page.keyboard.press("Escape");
  await saw.page.getByText("cutter 8 mm").waitFor();
  await saw.nested();
  isTheToolsPack((await saw.pack()).bytes, "thin", "--measured", `birch-18=${points}`, "--cutter", "8");
  await saw.close();
});

test("promises are checked from a stated day behind what is booked, as with the tool", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders, broken);
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  const dialog = saw.page.getByRole("dialog", { name: "Stock and measures" });
  const day = dialog.locator("[name=day]");
  await day.fill("soon");
  await day.press("Tab");
  await dialog.getByText('"soon" is not a day written YYYY-MM-DD').waitFor();
  assert.equal(await day.getAttribute("aria-invalid"), "true");
  await day.fill("2027-03-01");
  await dialog.locator("[name='booked/cut']").fill("10 h");
  await saw.page.keyboard.press("Tab");
  await dialog.getByText(/^600\smin \(10\sh\s00\)$/).waitFor();
  await saw.page.keyboard.press("Escape");
  await saw.page.getByText("once what is booked is done, these would be late:").waitFor();
  await saw.nested();
  // It is there as long as the visit.
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  assert.equal(await day.inputValue(), "2027-03-01");
  await saw.page.keyboard.press("Escape");
  isTheToolsPack((await saw.pack()).bytes, "booked", "--today", "2027-03-01", "--booked", "cut=10 h");
  await saw.close();
});

test("a day that is set keeps the nest, also one that was looked for longer", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders);
  await saw.page.getByRole("button", { name: "Look longer" }).click();
  await saw.page.getByRole("button", { name: "Stop" }).click();
  await saw.page.getByRole("button", { name: "Look longer" }).waitFor();
  const before = await saw.pack();
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  const dialog = saw.page.getByRole("dialog", { name: "Stock and measures" });
  const day = dialog.locator("[name=day]");
  await day.fill("2026-11-20");
  await day.press("Tab");
  await dialog.getByText("nothing is made before it was ordered").waitFor();
  await day.fill("2026-12-01");
  await day.press("Tab");
  await saw.page.keyboard.press("Escape");
  await saw.page.getByText("Made in turn from the day after Tue 1 December").waitFor();
  await saw.nested();
  const after = await saw.pack();
  const [cut, plan] = [before, after].map(({ name }) => name.split("-").slice(1));
  assert.equal(plan[0], cut[0]);
  assert.notEqual(plan[1], cut[1]);
  const [then, now] = [before, after].map(({ bytes }) => unzipped(bytes));
  const manifests = [then, now].map((files) => JSON.parse(files.get("manifest.json")));
  assert.ok(manifests[0].effort > 100_000 && manifests[0].effort === manifests[1].effort, `${manifests[1].effort}`);
  // Where everything lies, and its labels: byte for byte.
  for (const path of ["parts.csv", "sheets.csv", "offcuts.csv", "labels.pdf"]) {
    assert.ok(then.get(path).equals(now.get(path)), path);
  }
  await saw.close();
});

test("the code of a label shows its sheet and its order, whatever has the focus", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders);
  const { digest } = JSON.parse(readFileSync(orders[1], "utf8"));
  let downloads = 0;
  saw.page.on("download", () => (downloads += 1));
  // A scanner types and ends with Enter, which must not press the button that has the focus.
  await saw.page.getByRole("button", { name: "Take the pack" }).focus();
  await saw.page.keyboard.type(`${digest.slice(0, 8)}/top`);
  await saw.page.keyboard.press("Enter");
  const dialog = saw.page.getByRole("dialog", { name: /^2-\d+, top, for Person 2: sheet \d+, step \d+$/ });
  await dialog.waitFor();
  const mark = (await dialog.getAttribute("aria-labelledby")) && (await dialog.locator("h2").innerText()).split(",")[0];
  assert.equal(await dialog.locator(".found").getAttribute("data-part"), mark);
  assert.equal(await saw.page.locator(".came .found").getAttribute("data-order"), "2");
  // The next label, while that sheet is still in large.
  await saw.page.keyboard.type("1/top");
  await saw.page.keyboard.press("Enter");
  await saw.page.getByRole("dialog", { name: /^1-\d+, top, for Person 1/ }).waitFor();
  await saw.page.keyboard.type("00000000/top");
  await saw.page.keyboard.press("Enter");
  await saw.page.getByText('Nothing here has the code "00000000/top"').first().waitFor();
  assert.equal(await saw.page.locator("dialog[open]").count(), 0);
  assert.equal(downloads, 0);
  // Into its field it goes as text.
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  const part = saw.page.getByRole("dialog").locator("[name=part]");
  await part.focus();
  await saw.page.keyboard.type(`${digest.slice(0, 8)}/top`);
  await saw.page.keyboard.press("Enter");
  await saw.page.keyboard.press("Escape");
  await saw.page.locator(".done").getByText("3 orders, 1 part").waitFor();
  assert.deepEqual(saw.errors, []);
  await saw.close();
});

test("dropped anywhere they are taken as well, and go out again", async () => {
  const saw = await Saw.open();
  const text = readFileSync(orders[0], "utf8");
  await saw.page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "dropped.json"));
    document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  }, text);
  await saw.nested();
  await saw.page.getByRole("button", { name: "Take out dropped.json" }).click();
  await saw.page.getByText("Drop the orders of the day here").waitFor();
  await saw.close();
});

test("a sheet is made large and larger by keys, and the search goes on and stops", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders, broken);
  await saw.page.getByRole("button", { name: /^Sheet 1,/ }).press("Enter");
  const dialog = saw.page.getByRole("dialog", { name: /^Sheet 1,/ });
  const width = () => dialog.getByRole("img").evaluate((picture) => picture.getBoundingClientRect().width);
  const whole = await width();
  await saw.page.keyboard.press("+");
  assert.ok((await width()) > 1.4 * whole);
  await saw.page.keyboard.press("-");
  assert.equal(await width(), whole);
  await saw.page.keyboard.press("Escape");
  await saw.page.getByRole("button", { name: "Look longer" }).click();
  await saw.page.getByRole("button", { name: "Stop" }).click();
  await saw.page.getByRole("button", { name: "Look longer" }).waitFor();
  const { bytes } = await saw.pack();
  const { effort } = JSON.parse(unzipped(bytes).get("manifest.json"));
  assert.ok(effort > 100_000, `${effort}`);
  isTheToolsPack(bytes, "longer", "--effort", String(effort));
  await saw.close();
});

test("a wrong setting stands on the page and keeps the pack back", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders);
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  // What is wrong with it is part of its name then.
  const cutter = saw.page.getByRole("dialog").locator("[name=cutter]");
  await cutter.fill("1/4 or so");
  await cutter.press("Tab");
  await saw.page.keyboard.press("Escape");
  const pack = saw.page.getByRole("button", { name: "Take the pack" });
  await saw.page.getByRole("contentinfo").getByText("There is no pack until this can be read, or is empty: Cutter, mm").waitFor();
  assert.equal(await pack.getAttribute("aria-disabled"), "true");
  await saw.page.getByRole("button", { name: "Stock and measures" }).click();
  await cutter.fill("6.35");
  await cutter.press("Tab");
  await saw.page.keyboard.press("Escape");
  await saw.page.getByText("cutter 6.35 mm").waitFor();
  await saw.pack();
  await saw.close();
});

test("what is being written can be stopped, and one drawing taken by itself", async () => {
  const saw = await Saw.open();
  await saw.bring(...orders);
  let downloads = 0;
  saw.page.on("download", () => (downloads += 1));
  await saw.page.evaluate(() => document.querySelector("[data-do=pack]").click());
  await saw.page.getByRole("button", { name: "Stop writing" }).click();
  await saw.page.locator(".saved", { hasText: "Stopped: nothing was saved" }).waitFor();
  const { name, bytes } = await saw.take(() => saw.page.getByRole("button", { name: "Sheet 1 as DXF" }).click());
  assert.match(name, /^01-.*\.dxf$/);
  assert.equal(downloads, 1);
  const whole = unzipped((await saw.pack()).bytes);
  assert.ok(bytes.equals(whole.get(`sheets/${name}`)));
  await saw.close();
});

test("by keyboard alone it is seven keys from the page to its pack", async () => {
  const saw = await Saw.open();
  const focused = () => saw.page.evaluate(() => document.activeElement.dataset?.do ?? document.activeElement.type);
  let keys = 0;
  const tab = async (back, wanted) => {
    for (; (await focused()) !== wanted && keys < 40; keys += 1) await saw.page.keyboard.press(back ? "Shift+Tab" : "Tab");
  };
  await tab(false, "file");
  keys += 1;
  const [chooser] = await Promise.all([saw.page.waitForEvent("filechooser"), saw.page.keyboard.press("Space")]);
  await chooser.setFiles(orders);
  await saw.nested();
  // Before the first one stands the end of the page.
  await tab(true, "pack");
  keys += 1;
  const { bytes } = await saw.take(() => saw.page.keyboard.press("Enter"));
  assert.ok(unzipped(bytes).has("manifest.json"));
  assert.ok(keys <= 7, `${keys} keys`);
  assert.match(await saw.page.locator("#said").innerText(), /^Saved as pack-/);
  await saw.close();
});

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1440, 768, 360]) {
    test(`no automatic rule is broken at ${width} px, ${colorScheme}, and nothing is wider`, async () => {
      const saw = await Saw.open({ colorScheme, viewport: { width, height: 900 } });
      assert.deepEqual(await saw.violations(), [], "empty");
      await saw.bring(...orders, broken);
      assert.deepEqual(await saw.violations(), [], "nested");
      const wider = await saw.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wider <= 0, `${wider} px`);
      await saw.page.getByRole("button", { name: "Stock and measures" }).click();
      assert.deepEqual(await saw.violations(), [], "settings");
      await saw.page.keyboard.press("Escape");
      await saw.page.getByRole("button", { name: /^Sheet 1,/ }).click();
      assert.deepEqual(await saw.violations(), [], "large");
      await saw.close();
    });
  }
}

test("after one visit it is there without its host, and customers load none of it", async (context) => {
  const host = await Host.open();
  const saw = await Saw.open({ url: host.url });
  context.after(async () => {
    await saw.close();
    await host.close();
  });
  // All that it asks to be kept is there.
  await saw.page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    const isKept = async () => Boolean(await caches.match(new URL("index.html", location)));
    for (let tries = 0; tries < 200 && !(await isKept()); tries += 1) await new Promise((done) => setTimeout(done, 50));
  });
  await host.stop();
  await saw.page.reload();
  await saw.live();
  await saw.bring(...orders, broken);
  isTheToolsPack((await saw.pack()).bytes, "offline");
  await saw.page.goto(`${host.url}workshop`);
  await saw.live();

  await host.start();
  const customer = await (await chrome.newContext()).newPage();
  host.asked.length = 0;
  await customer.goto(host.url);
  await customer.evaluate(() => navigator.serviceWorker.ready);
  await customer.waitForTimeout(500);
  assert.deepEqual(host.asked.filter((path) => /workshop|split_packs/.test(path)), []);
  await customer.context().close();
});
