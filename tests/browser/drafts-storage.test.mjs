// What the browser keeps: taken over from earlier versions, refused, full, and after the browser was killed.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { chromium } from "playwright-core";
import { Bench, browser } from "./page.mjs";
import { Drawer } from "./drawer.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const FORMER = "slotwright-desk-1-fenland";

test("what an earlier version saved is a draft now", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.evaluate((name) => {
    localStorage[name] = "model = \"sedge\"\nback = \"birch-18\"\nfinish = \"mere\"\nwidth_mm = 1700\nheight_mm = 520\n"
      + "depth_mm = 420\ncorner_radius_mm = 0\n[[bay]]\nshare = 1\nfill = \"open\"\n[[bay]]\nshare = 1\nfill = \"open\"\n\u001fheight\u001fbay-9";
  }, FORMER);
  await bench.page.goto("about:blank");
  await bench.visit();
  assert.match(await bench.drawing(), /1.700\smm wide.*Finish Mere/);
  assert.equal(await bench.button("Keep height").getAttribute("aria-pressed"), "true");
  await bench.saved();
  assert.equal(await bench.page.evaluate((name) => localStorage[name], FORMER), undefined);
  assert.match(await bench.keptUnit(), /^1\/sedge\/1700x520x420\/0\/birch-18\/mere\/1o,1o\S* height$/);
  // It is not taken for newer than what was kept since.
  await bench.type("Width", "1800");
  await bench.saved();
  await bench.page.evaluate((name) => { localStorage[name] = "model = \"sedge\""; }, FORMER);
  await bench.page.goto("about:blank");
  await bench.visit();
  assert.match(await bench.drawing(), /1.800\smm wide/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

for (const [name, script] of [
  ["is shut", () => { IDBFactory.prototype.open = () => { throw new DOMException("denied", "SecurityError"); }; }],
  ["fails", () => {
    IDBFactory.prototype.open = () => {
      const asked = { error: new DOMException("broken", "UnknownError") };
      setTimeout(() => asked.onerror());
      return asked;
    };
  }],
  ["never answers", () => { IDBFactory.prototype.open = () => ({}); }],
  ["is not there", () => { delete IDBFactory.prototype.open; }],
]) {
  test(`a storage that ${name} is said at once, and the page works all the same`, async () => {
    const context = await chrome.newContext();
    const bench = new Bench(await context.newPage());
    bench.page.on("pageerror", (error) => bench.errors.push(error.message));
    await bench.page.addInitScript(script);
    await bench.visit();
    await bench.page.getByText("This browser lets the page save nothing").waitFor();
    assert.equal(await bench.page.locator(".kept").innerText(), "Not saved");
    await bench.type("Width", "1700");
    await bench.page.locator(".kept").getByText("Not saved").waitFor();
    await bench.page.waitForURL(/#1\/sedge\/1700x520x420\//);
    const drawer = new Drawer(bench);
    await drawer.open();
    await drawer.press("Keep a copy");
    await drawer.field.waitFor();
    assert.deepEqual(await drawer.names(), []);
    await drawer.close();
    assert.deepEqual(bench.errors, []);
    await bench.close();
  });
}

test("a storage that is full is said, and what is saved again as well", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "1700");
  await bench.saved();
  await bench.page.evaluate(() => {
    const { transaction } = IDBDatabase.prototype;
    window.full = true;
    // As a browser does: it takes back at the end what has no room.
    IDBDatabase.prototype.transaction = function begin(names, mode, options) {
      const work = transaction.call(this, names, mode, options);
      if (mode === "readwrite" && window.full) {
        Object.defineProperty(work, "error", { value: new DOMException("full", "QuotaExceededError") });
        work.commit = () => work.abort();
      }
      return work;
    };
  });
  await bench.type("Width", "1800");
  await bench.page.getByText("This browser has no room left to save in").waitFor();
  assert.equal(await bench.page.locator(".kept").innerText(), "Not saved");
  await bench.page.evaluate(() => { window.full = false; });
  assert.match(await bench.keptUnit(), /1700x/, "what was saved stays whole");
  await bench.type("Width", "1900");
  await bench.saved();
  assert.match(await bench.keptUnit(), /1900x/);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

const killers = [];
after(() => killers.forEach((kill) => kill()));

/** A browser of its own with a folder that outlives it; it can be killed. */
async function start(folder) {
  rmSync(join(folder, "DevToolsActivePort"), { force: true });
  const flags = ["--headless=new", "--no-sandbox", "--remote-debugging-port=0", "--no-first-run", "--disable-gpu"];
  const child = spawn(process.env.CHROMIUM ?? "/usr/bin/chromium", [...flags, `--user-data-dir=${folder}`, "about:blank"], {
    detached: true, stdio: "ignore",
  });
  const ended = new Promise((resolve) => child.once("exit", resolve));
  const kill = () => {
    if (child.exitCode === null && child.signalCode === null) process.kill(-child.pid, "SIGKILL");
    return ended;
  };
  killers.push(kill);
  for (let tries = 0; tries < 300; tries += 1) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    let port;
    try {
      port = readFileSync(join(folder, "DevToolsActivePort"), "utf8").split("\n")[0];
    } catch {
      continue;
    }
    const own = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const bench = new Bench(await own.contexts()[0].newPage());
    await bench.visit();
    return [bench, kill];
  }
  throw new Error("the browser did not start");
}

const width = async (bench) => Number((await bench.drawing()).replaceAll(/[\u202f\u00a0]/g, "").match(/(\d+) ?mm wide/)[1]);

// KILLS=100 for a long run.
test("what was shown as saved is there after the browser was killed", async () => {
  const folder = mkdtempSync(join(tmpdir(), "slotwright-kills-"));
  const waits = [];
  let [bench, kill] = await start(folder);
  for (let number = 0; number < Number(process.env.KILLS ?? 3); number += 1) {
    let [saved, last] = [await width(bench), 0];
    await bench.page.exposeBinding("shown", (_, width, wait) => {
      saved = width;
      waits.push(wait);
    });
    await bench.page.evaluate(() => {
      const [kept, told] = [document.querySelector(".kept"), document.querySelector(".words")];
      const width = () => Number(told.textContent.replaceAll(/[\u202f\u00a0]/g, "").match(/(\d+) ?mm wide/)[1]);
      let since;
      document.addEventListener("click", () => { since ??= performance.now(); });
      new MutationObserver(() => {
        if (kept.textContent !== "Saved") return;
        window.shown(width(), performance.now() - since);
        since = undefined;
      }).observe(kept, { childList: true, characterData: true, subtree: true });
    });
    // Back and forth, so that there is always a next width.
    const step = saved < 2000 ? "more" : "less";
    const button = bench.page.getByRole("button", { name: `Width: one step ${step}` });
    const until = Date.now() + 400 + (number * 137) % 500;
    do {
      await button.click();
      last = await width(bench);
      // Some changes follow at once, some are waited for.
      await bench.page.waitForTimeout(waits.length % 3 === 0 ? 300 : 0);
    } while (Date.now() < until);
    await kill();
    assert.ok(saved > 0 && last > 0);
    [bench, kill] = await start(folder);
    const now = await width(bench);
    const [least, most] = step === "more" ? [saved, last] : [last, saved];
    assert.ok(least <= now && now <= most, `${now} is there; ${saved} was shown as saved, ${last} was chosen last`);
    for (const text of Object.values(await bench.kept())) {
      assert.match(text, /^\d{13}\u001ffenland\u001f[^\u001f]*\u001f1\/sedge\/\S+\u001f$/, "a text is whole");
    }
  }
  waits.sort((one, other) => one - other);
  const at = (share) => Math.round(waits[Math.floor((waits.length - 1) * share)]);
  console.log(`shown as saved ${waits.length} times, after ${at(0.5)} ms, ${at(0.98)} ms at the 98th percentile, ${at(1)} ms at most`);
  await kill();
  rmSync(folder, { recursive: true, force: true });
});
