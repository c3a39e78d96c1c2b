// The customer's way in other engines: the same unit, the same price, the same order as the workshop's own tool derives.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { Driver } from "./driver.mjs";

const TAB = "\uE004";
const folder = mkdtempSync(join(tmpdir(), "slotwright-engines-"));
after(() => rmSync(folder, { recursive: true }));

const range = new URL("../../web/ranges/fenland.toml", import.meta.url).pathname;

/** The price as the strip says it, in minor units. */
const price = (driver) => driver.run(`() => Number(document.querySelector("#page .tally dd").textContent.replace(/\\D/g, ""))`);

/** Orders a unit of another width and finish, and gives the file. */
async function ordered(driver) {
  await driver.visit(process.env.SLOTWRIGHT_URL);
  await driver.until(() => driver.run(`() => document.querySelector("#page #question-looks") !== null`), "the live page");
  await driver.type("#question-size .size input[type=text]", "1720");
  await driver.press(TAB);
  await driver.run(`() => [...document.querySelectorAll("#question-looks [role=radio]")].find((answer) => answer.textContent === "Chalk").click()`);
  await driver.until(() => driver.run(`() => document.querySelector("#page .state.good") !== null`), "a unit that can be made");
  // The adviser has judged it.
  await driver.until(() => driver.run(`() => document.querySelector(".notice details") !== null`), "advice");
  await driver.click("#order");
  for (const [name, text] of [["name", "Ada Reed"], ["contact", "ada@example.org"], ["address", "1 Dyke Lane"]]) {
    await driver.type(`dialog[open] [name=${name}]`, text);
  }
  await driver.run(`() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make.call(URL, blob); }; }`);
  await driver.run(`() => document.querySelector("dialog[open] form .main").click()`);
  await driver.until(() => driver.run(`() => window.saved !== undefined`), "the order");
  return driver.run(`() => window.saved.text()`);
}

for (const engine of ["firefox", "webkit"]) {
  test(`${engine} computes and saves the order that the workshop's tool finds right`, async () => {
    const driver = await Driver.open(engine);
    try {
      const file = join(folder, `${engine}.order.json`);
      writeFileSync(file, await ordered(driver));
      const order = JSON.parse(readFileSync(file, "utf8"));
      assert.deepEqual([order.choice.width_mm, order.choice.finish], [1720, "chalk"]);
      assert.equal(await price(driver), order.promised.price_minor);
      // It derives all of it anew and compares every figure.
      execFileSync(process.env.SLOTWRIGHT_BIN, ["check", file, "--range", range]);
      // It is drawn once all else is there.
      await driver.until(() => driver.run(`() => document.querySelector(".dims text, .paper svg") !== null`), "the picture");
    } finally {
      await driver.close();
    }
  });
}
