// Units of several steps, as tests of steps and of what outlives a reload take them.
import assert from "node:assert/strict";

/** Width, height, depth and finish, as the drawing says them. */
export async function unit(bench) {
  const words = (await bench.drawing()).replaceAll(/[\u202f\u00a0]/g, "");
  const [, width, height, depth] = words.match(/(\d+) ?mm wide, (\d+)[ m]* high, (\d+)[ m]* deep/);
  return [Number(width), Number(height), Number(depth), words.match(/Finish (\w+)/)[1]].join(" ");
}

/** Waits until the unit is that one. */
export async function is(bench, wanted) {
  for (let tries = 0; tries < 40 && (await unit(bench)) !== wanted; tries += 1) await bench.page.waitForTimeout(50);
  assert.equal(await unit(bench), wanted);
}

export const finish = (bench, name) => bench.question("Finish").getByRole("radio", { name }).click();

/** Takes three steps; the units from the first to the last. */
export async function steps(bench) {
  await bench.type("Width", "1700");
  await bench.rest();
  await bench.type("Height", "600");
  await bench.rest();
  await finish(bench, "Brick");
  await bench.rest();
  const [, , depth] = (await unit(bench)).split(" ");
  return ["1640 520 Clear", "1700 520 Clear", "1700 600 Clear", "1700 600 Brick"].map((unit) => unit.replace(/ (?=[A-Z])/, ` ${depth} `));
}

/** Whether there is something to undo, and something to do again. */
export const able = async (bench) => Promise.all(
  ["Undo", "Redo"].map(async (name) => (await bench.header(name).getAttribute("aria-disabled")) === "false"));
