// What does not go alone goes with other changes, and what is kept stays.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser, word } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const RECEIVER = { name: "Receiver", exact: true };

/** An answer that goes with another change: its button, how it looks, and waiting for a look. */
function shifting(bench) {
  const receiver = bench.question("Device in bay 1").getByRole("radio", RECEIVER);
  const looks = () => receiver.getAttribute("aria-describedby");
  const comes = async (look) => { while ((await looks()) !== look) await bench.page.waitForTimeout(20); };
  return { receiver, looks, comes };
}

test("an answer that does not go alone says why, and takes what it needs with it", async () => {
  const bench = await Bench.open(chrome);
  const devices = bench.question("Device in bay 1");
  await devices.getByRole("radio", RECEIVER).click();
  await bench.page.getByText("Receiver. This does not go alone: ").waitFor();
  assert.equal(await devices.getByRole("radio", RECEIVER).getAttribute("aria-checked"), "false");
  const way = bench.page.getByRole("button", { name: /^Take this\b.+ deep/ });
  await way.click();
  assert.equal(await devices.getByRole("radio", RECEIVER).getAttribute("aria-checked"), "true");
  assert.match(await bench.tally(), /Can be made/);
  assert.notEqual(await bench.size("Depth").inputValue(), "420");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what goes with another change is never shown as shut while something else changes", async () => {
  const bench = await Bench.open(chrome);
  const { receiver, looks, comes } = shifting(bench);
  await comes("key-shifts");
  await receiver.evaluate((button) => {
    window.seen = new Set();
    new MutationObserver(() => window.seen.add(button.getAttribute("aria-describedby")))
      .observe(button, { attributes: true });
  });
  for (let step = 0; step < 5; step += 1) await bench.slider("Width").press("ArrowRight");
  await bench.page.waitForTimeout(600);
  assert.deepEqual(await bench.page.evaluate(() => [...window.seen]), []);
  assert.equal(await looks(), "key-shifts");
  await bench.close();
});

test("without its adviser nothing old is shown as advice", async () => {
  const bench = await Bench.open(chrome);
  const { looks, comes } = shifting(bench);
  await comes("key-shifts");
  const adviser = bench.page.workers().find((worker) => worker.url().endsWith("#adviser"));
  await adviser.evaluate(() => { setTimeout(() => { throw new Error("gone"); }); });
  await comes("key-shut");
  await bench.slider("Width").press("ArrowRight");
  assert.equal(await looks(), "key-shut");
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("what is kept is not changed for anything, and is named as the reason", async () => {
  const bench = await Bench.open(chrome);
  const receiver = bench.question("Device in bay 1").getByRole("radio", RECEIVER);
  await bench.button("Keep depth").click();
  assert.equal(await bench.button("Keep depth").getAttribute("aria-pressed"), "true");
  await bench.page.waitForFunction(() => {
    const group = document.querySelector("[aria-label='Device in bay 1']");
    return [...group.querySelectorAll("button")].some((button) => button.getAttribute("aria-describedby") === "key-shut");
  });
  await receiver.click({ force: true });
  await bench.page.getByText("You keep the depth, so no other change makes up for it.").waitFor();
  await bench.button("Keep depth").click();
  // Whoever goes on to something else has read the reason.
  assert.equal(await bench.page.getByText("You keep the depth").count(), 0);
  await receiver.click({ force: true });
  await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  await bench.close();
});

test("what is kept is let go with one press, and nothing else", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 360, height: 740 } });
  const receiver = bench.question("Device in bay 1").getByRole("radio", RECEIVER);
  for (const kept of ["Keep depth", "Keep height", "Keep finish"]) {
    await bench.button(kept).click();
  }
  await bench.page.waitForFunction(() => {
    const group = document.querySelector("[aria-label='Device in bay 1']");
    return [...group.querySelectorAll("button")].some((button) => button.getAttribute("aria-describedby") === "key-shut");
  });
  await receiver.click({ force: true });
  const way = bench.page.getByRole("button", { name: /^Let the depth go: take this.* make it \d+\smm deep$/ });
  await way.waitFor();
  // It can be seen whole above the bar, unasked.
  const bar = await bench.page.locator(".tally").boundingBox();
  await bench.page.waitForFunction((top) => {
    const way = [...document.querySelectorAll("button.remedy")].find((button) => button.textContent.startsWith("Let the depth go: take this"));
    return way.getBoundingClientRect().bottom <= top;
  }, bar.y);
  // By keyboard: it stays while the focus comes to it, which goes back to the answer then.
  await receiver.focus();
  while (!(await way.evaluate((way) => way === document.activeElement))) {
    await bench.page.keyboard.press("Tab");
    assert.equal(await way.count(), 1);
  }
  await bench.page.keyboard.press("Enter");
  await bench.page.waitForFunction(() => document.querySelector("[aria-label='Keep depth']").getAttribute("aria-pressed") === "false");
  assert.equal(await bench.page.evaluate(() => document.activeElement.textContent), "Receiver");
  assert.equal(await receiver.getAttribute("aria-checked"), "true");
  assert.equal(await bench.button("Keep height").getAttribute("aria-pressed"), "true");
  assert.equal(await bench.button("Keep finish").getAttribute("aria-pressed"), "true");
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("a way out of what stops the order says that it lets go of what is kept", async () => {
  const bench = await Bench.open(chrome);
  await bench.button("Keep width").click();
  await bench.page.getByRole("textbox", { name: "Free wall" }).fill("1407");
  await bench.page.getByRole("textbox", { name: "Free wall" }).press("Enter");
  const way = bench.page.getByRole("button", { name: /^Let the width go and make it 1\s400\smm wide$/ });
  await way.click();
  assert.equal(await bench.button("Keep width").getAttribute("aria-pressed"), "false");
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("a bay that is kept is not left out, and of one that is gone nothing is kept", async () => {
  const bench = await Bench.open(chrome);
  const bays = (count) => bench.question("Number of bays").getByRole("radio", { name: count, exact: true });
  const third = () => bench.group("Bay to look at").getByRole("tab").nth(2);
  await third().click();
  await bench.button("Keep bay 3").click();
  await bench.page.waitForFunction(() => {
    const group = document.querySelector("[aria-label='Number of bays']");
    return [...group.querySelectorAll("button")].some((button) => button.textContent.startsWith("2") && button.getAttribute("aria-describedby") === "key-shut");
  });
  await bays("2").click({ force: true });
  await bench.page.getByText("Bay 3 would be gone. You keep bay 3, so no other change makes up for it.").waitFor();
  assert.equal(await bays("3").getAttribute("aria-checked"), "true");
  // Another model has other bays.
  await bench.question("Model").getByRole("radio", { name: "Teasel, sideboard" }).click();
  await third().click();
  assert.equal(await bench.button("Keep bay 3").getAttribute("aria-pressed"), "false");
  await bench.close();
});

test("a size beyond the bar is taken with what it needs", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "2300");
  await bench.question("Number of bays").getByRole("radio", { name: "6", exact: true }).click();
  assert.match(await bench.tally(), /Can be made/);
  const way = bench.page.getByRole("button", { name: /^Take this\b/ });
  await bench.slider("Width").press("Home");
  await way.waitFor();
  const before = await bench.size("Width").inputValue();
  await way.click();
  assert.notEqual(await bench.size("Width").inputValue(), before);
  assert.equal((await bench.size("Width").inputValue()).replace(/\D/g, ""), "900");
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("a thumb goes back to what was taken, and its reason goes with the next change", async () => {
  const bench = await Bench.open(chrome);
  const [width, reason] = [bench.slider("Width"), bench.page.getByText(/^\s*At 2\s400\smm: /)];
  await bench.question("Number of bays").getByRole("radio", { name: "2", exact: true }).click();
  await bench.button("Keep number of bays").click();
  await width.press("End");
  await reason.waitFor({ timeout: 8000 });
  const shown = () => width.evaluate((thumb) => [thumb.value, thumb.getAttribute("aria-valuetext")]);
  const [step, text] = await shown();
  assert.notEqual(text, "2\u202f400\u00a0mm");
  await bench.slider("Height").press("ArrowRight");
  await reason.waitFor({ state: "detached" });
  assert.deepEqual(await shown(), [step, text]);
  assert.notEqual(step, await width.getAttribute("max"));
  await bench.close();
});

test("a warning has a way out that mends it", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.getByRole("textbox", { name: "Free wall" }).fill("1407");
  await bench.page.keyboard.press("Enter");
  const way = bench.button("Make it 1\u202f400 mm wide");
  await way.click();
  await way.waitFor({ state: "detached" });
  assert.equal((await bench.size("Width").inputValue()).replace(/\D/g, ""), "1400");
  await bench.close();
});

test("without the adviser the page goes on: what does not go alone says why", async () => {
  const bench = await Bench.routed(chrome);
  await bench.page.route("**/split_adviser.wasm", (route) => route.abort());
  await bench.visit();
  await bench.question("Device in bay 1").getByRole("radio", RECEIVER).click({ force: true });
  await bench.page.getByText("Receiver. This cannot be had: ").waitFor();
  await bench.close();
});

test("a reason that is told stays until what to do about it is told too", async () => {
  const bench = await Bench.open(chrome);
  // Pressed before the adviser is there, and with another width while it is told.
  await bench.page.evaluate(() => {
    window.empty = 0;
    const group = document.querySelector("[aria-label='Device in bay 1']");
    const reason = group.parentElement.querySelector(".why");
    let told = false;
    new MutationObserver(() => {
      const now = reason.textContent.trim() !== "";
      if (told && !now) window.empty += 1;
      told ||= now;
    }).observe(reason, { childList: true, characterData: true, subtree: true });
    [...group.querySelectorAll("button")].find((button) => button.textContent === "Receiver").click();
  });
  const way = bench.page.getByRole("button", { name: /^Take this\b.+ deep/ });
  await way.waitFor();
  await bench.slider("Width").evaluate((slider) => {
    slider.value = String(Number(slider.value) + 1);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await bench.page.getByText("Receiver. This does not go alone: ").waitFor();
  await way.waitFor();
  assert.equal(await bench.page.evaluate(() => window.empty), 0);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("of two answers pressed at once the second is explained, and each is asked for once", async () => {
  const bench = await Bench.open(chrome);
  const { comes } = shifting(bench);
  await comes("key-shifts");
  await bench.page.evaluate(`window.word = ${word}`);
  await bench.page.evaluate(() => {
    window.asked = [];
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (data, ...rest) {
      if (typeof data === "string" && window.word(data) === "why") window.asked.push(data);
      return post.call(this, data, ...rest);
    };
    const bound = [...document.querySelectorAll("[aria-label='Device in bay 1'] button[aria-describedby='key-shifts']")];
    window.pressed = bound.slice(0, 2).map((button) => { button.click(); return button.textContent; });
  });
  const [first, second] = await bench.page.evaluate(() => window.pressed);
  await bench.page.getByText(`${second}. This does not go alone: `).waitFor();
  await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  await bench.page.waitForTimeout(300);
  assert.equal(await bench.page.getByText(`${first}. This does not go alone: `).count(), 0);
  const asked = await bench.page.evaluate(() => window.asked);
  assert.ok(asked.length > 0 && new Set(asked).size === asked.length, `${asked}`);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a press on what the page has just moved there is not taken", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 360, height: 740 } });
  const { receiver, comes } = shifting(bench);
  await comes("key-shifts");
  // Right above the bar: the page moves for the reason, and what to press comes under the finger.
  const bar = await bench.page.getByRole("contentinfo").evaluate((bar) => bar.getBoundingClientRect().top);
  await receiver.evaluate((button, bar) => window.scrollBy(0, button.getBoundingClientRect().bottom - bar + 4), bar);
  const box = await receiver.boundingBox();
  // What a second press would meet in the very frame of the move, on a busy machine as on a quick one.
  await bench.page.evaluate(() => {
    window.met = undefined;
    addEventListener("scroll", function moved() {
      const way = [...document.querySelectorAll(".remedy")].find((way) => way.textContent.startsWith("Take this"));
      if (way === undefined) return;
      removeEventListener("scroll", moved);
      const { left, top, height } = way.getBoundingClientRect();
      const under = document.elementFromPoint(left + 4, top + height / 2);
      window.met = way.contains(under) ? "the way" : "what is around it";
      under.click();
    });
  });
  await bench.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await bench.page.waitForFunction(() => window.met !== undefined);
  assert.equal(await bench.page.evaluate(() => window.met), "what is around it");
  assert.equal(await receiver.getAttribute("aria-checked"), "false");
  // The way is free soon: a click of this waits until it takes one.
  await bench.page.getByRole("button", { name: /^Take this\b/ }).click();
  assert.equal(await receiver.getAttribute("aria-checked"), "true");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("a way that is told of an earlier choice takes nothing", async () => {
  const bench = await Bench.open(chrome);
  const { receiver, comes } = shifting(bench);
  await comes("key-shifts");
  await receiver.click();
  await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  await bench.page.evaluate(() => {
    const slider = document.querySelector("input[type=range][aria-label=Width]");
    const way = [...document.querySelectorAll(".remedy")].find((way) => way.textContent.startsWith("Take this"));
    slider.value = String(Number(slider.value) - 1);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    way.click();
  });
  await bench.page.waitForTimeout(300);
  assert.equal(await receiver.getAttribute("aria-checked"), "false");
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("a slider's reason is that of its place, and the focus comes back to it", async () => {
  const bench = await Bench.open(chrome);
  const { receiver, comes } = shifting(bench);
  await comes("key-shifts");
  await receiver.click();
  await bench.page.getByRole("button", { name: /^Take this\b.+ deep/ }).click();
  await bench.page.evaluate(() => {
    const reason = document.querySelector("input[type=range][aria-label=Depth]").closest(".size").querySelector(".why");
    window.seen = new Set();
    // What is said, without what can be pressed.
    const said = () => [...reason.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE).map((node) => node.data);
    new MutationObserver(() => window.seen.add(said().join("").trim()))
      .observe(reason, { childList: true, characterData: true, subtree: true });
  });
  await bench.slider("Depth").focus();
  await bench.page.keyboard.press("ArrowLeft");
  const way = bench.page.getByRole("button", { name: /^Take this\b/ });
  await way.waitFor();
  const seen = await bench.page.evaluate(() => [...window.seen].filter((text) => text !== ""));
  assert.equal(seen.length, 1, `${seen}`);
  await way.focus();
  await bench.page.keyboard.press("Enter");
  assert.equal(await bench.page.evaluate(() => document.activeElement.getAttribute("aria-label")), "Depth");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("the adviser practises and keeps what it finds to itself", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.addInitScript(`window.word = ${word}`);
  await bench.page.addInitScript(() => {
    window.told = [];
    const Plain = window.Worker;
    window.Worker = class extends Plain {
      constructor(address, options) {
        super(address, options);
        const is = options.name === "adviser";
        if (is) this.addEventListener("message", ({ data }) => window.told.push(window.word(data)));
      }
    };
  });
  // Each question of its own is a timer: they are counted from the beginning, however long the page takes.
  const counting = bench.page.waitForEvent("worker", (worker) => worker.url().endsWith("#adviser")).then(
    async (worker) => {
      await worker.evaluate(() => {
        const plain = self.setTimeout;
        Object.assign(self, { plain, timers: 0 });
        self.setTimeout = (...what) => { self.timers += 1; return plain(...what); };
      });
      return worker;
    },
  );
  await bench.visit();
  await bench.page.waitForFunction(() => ["states", "findings"].every((what) => window.told.includes(what)));
  const adviser = await counting;
  // It is through when none came for a while.
  const practised = await adviser.evaluate(async () => {
    for (let before = -1; before < self.timers;) {
      before = self.timers;
      await new Promise((resolve) => self.plain(resolve, 500));
    }
    return self.timers;
  });
  assert.ok(practised > 20, `${practised}`);
  assert.deepEqual(await bench.page.evaluate(() => window.told.sort()), ["findings", "range", "ready", "states"]);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});
