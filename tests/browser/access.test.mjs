// For every person: automatic rules of WCAG 2.2 in several states, the keyboard, narrow windows.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

async function violations(bench) {
  // Advice that is being renewed is faded for that moment, however long it takes a busy machine.
  await bench.page.waitForFunction(() => document.querySelector(".old .notice:not(.stop)") === null);
  // Evaluated by the debugger, so the page's content security policy stays as it is.
  await bench.page.evaluate(axe);
  const found = await bench.page.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    const { violations } = await globalThis.axe.run(document, { runOnly: tags });
    return violations.map((rule) => `${rule.id}: ${rule.nodes.map((node) => node.target.join(" ")).join(", ")}`);
  });
  return found;
}

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1440, 768, 360]) {
    test(`no automatic rule is broken at ${width} px, ${colorScheme}`, async () => {
      const bench = await Bench.open(chrome, { colorScheme, viewport: { width, height: 900 } });
      assert.deepEqual(await violations(bench), []);
      await bench.type("Width", "5000");
      assert.deepEqual(await violations(bench), [], "with findings");
      await bench.button("Make it 2\u202f400 mm wide").first().click();
      await bench.button("Order spec").click();
      assert.deepEqual(await violations(bench), [], "with the order open");
      await bench.close();
    });
  }
}

test("nothing scrolls sideways at 320 px", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 320, height: 700 } });
  const [inner, content] = await bench.page.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
  assert.ok(content <= inner, `${content} px of content in ${inner} px`);
  await bench.close();
});

test("a size is changed and ordered with the keyboard alone", async () => {
  const bench = await Bench.open(chrome);
  const reach = async (locator) => {
    for (let presses = 0; presses < 120; presses += 1) {
      if (await locator.evaluate((element) => element === document.activeElement)) return;
      await bench.page.keyboard.press("Tab");
    }
    assert.fail("not reached by Tab");
  };
  await reach(bench.slider("Width"));
  await bench.page.keyboard.press("ArrowRight");
  assert.match(await bench.drawing(), /1\u202f650\smm wide/);
  assert.equal(await bench.slider("Width").getAttribute("aria-valuetext"), "1\u202f650\u00a0mm");
  await reach(bench.button("Order spec"));
  await bench.page.keyboard.press("Enter");
  const dialog = bench.page.getByRole("dialog", { name: "Order spec" });
  await dialog.waitFor();
  await bench.page.keyboard.press("Escape");
  await dialog.waitFor({ state: "hidden" });
  const focused = await bench.button("Order spec").evaluate((element) => element === document.activeElement);
  assert.ok(focused, "focus returns to what opened the dialog");
  await bench.close();
});

test("a press on a bay of the drawing looks at that bay", async () => {
  const bench = await Bench.open(chrome);
  await bench.button("Sheet").click();
  await bench.page.locator(".drawing [data-bay='3']").first().click();
  await bench.page.getByText("Bay 3 holds", { exact: true }).waitFor();
  await bench.close();
});
