// How long a change takes from the event to the painted frame, and what a picture of the stage costs.
import { Bench, browser, word } from "./page.mjs";

const CHANGES = 240;
const DRAG = 120;
const TURNS = 20;
const ADVICE = 60;

const chrome = await browser();
const bench = await Bench.open(chrome);
const stage = await bench.stage();

/** Prints a row of times. */
function row(name, times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))].toFixed(1);
  console.log(`${name}, ${times.length} times  median ${at(0.5)} ms, 98th percentile ${at(0.98)} ms, longest ${at(1)} ms`);
}

// Processor time of the page's own thread: what it computes, whatever else the machine does meanwhile.
const devtools = await bench.page.context().newCDPSession(bench.page);
await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
async function spent(...names) {
  const { metrics } = await devtools.send("Performance.getMetrics");
  return metrics.filter(({ name }) => names.includes(name)).reduce((sum, { value }) => sum + value * 1000, 0);
}
const busy = () => spent("TaskDuration");
// What our code does, and the layout and style that come of it; the rest is the browser's painting and the measuring.
const ours = () => spent("ScriptDuration", "LayoutDuration", "RecalcStyleDuration");

await bench.page.evaluate(() => {
  const slider = (name) => document.querySelector(`input[type=range][aria-label=${name}]`);
  const buttons = [...document.querySelectorAll(".swatches .choice, .short .choice")];
  const painted = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
  const channel = new MessageChannel();
  const computed = () => new Promise((resolve) => { channel.port1.onmessage = resolve; channel.port2.postMessage(0); });
  const width = slider("Width");
  const start = Number(width.value);
  window.drag = async (step) => {
    const way = step % 60;
    width.value = String(start + (way < 30 ? way : 60 - way) - 15);
    width.dispatchEvent(new Event("input", { bubbles: true }));
    await painted();
  };
  /** One change; its time to the end of the computation and to the painted frame. */
  window.change = async (round) => {
    const began = performance.now();
    if (round === null) {
      // Nothing is changed: what asking and painting cost by themselves.
    } else if (round % 4 === 3) {
      const open = buttons.filter((button) => !button.matches(".shifts, .shut"));
      open[(round * 7) % open.length].click();
    } else {
      const input = slider(["Width", "Height", "Depth"][round % 3]);
      input.value = String((round * 37) % (Number(input.max) + 1));
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }
    await computed();
    const work = performance.now() - began;
    await painted();
    return { work, paint: performance.now() - began };
  };
});

// The adviser's questions, to be asked once more when nothing else is done.
const adviser = bench.page.workers().find((worker) => worker.url().endsWith("#adviser"));
await adviser.evaluate(`self.word = ${word}`);
await adviser.evaluate(() => {
  self.asked = [];
  self.addEventListener("message", ({ data }) => self.word(data) === "states" && self.asked.push(data));
});

// The starting unit made wider and narrower again, step by step, as with a hand on the slider.
const [dragged, scripted] = [[], []];
for (let step = 0; step < DRAG; step += 1) {
  const before = [await busy(), await ours()];
  await bench.page.evaluate((step) => window.drag(step), step);
  dragged.push((await busy()) - before[0]);
  scripted.push((await ours()) - before[1]);
}
row("processor time of the page for a step of the width while it is dragged, its picture included", dragged);
row("of that our own: scripts, layout and style", scripted);

const [paint, work, own, idle] = [[], [], [], []];
for (let round = 0; round < CHANGES; round += 1) {
  const before = await busy();
  const times = await bench.page.evaluate((round) => window.change(round), round);
  own.push((await busy()) - before);
  paint.push(times.paint);
  work.push(times.work);
}
for (let round = 0; round < 40; round += 1) {
  const before = await busy();
  await bench.page.evaluate(() => window.change(null));
  idle.push((await busy()) - before);
}
row("change to paint", paint);
row("change to computed, by the clock", work);
row("processor time of the page for a change, its picture included", own);
row("the same for no change: what measuring costs", idle);

// It is asked once nothing has moved for a moment.
for (let round = 0; round < ADVICE; round += 1) {
  await bench.page.evaluate((round) => window.change(round), round * 5);
  await new Promise((resolve) => setTimeout(resolve, 200));
}
row("all states of all answers, with their shifts, in the adviser", await adviser.evaluate(() =>
  [...self.asked].map((data) => {
    const began = performance.now();
    self.dispatchEvent(new MessageEvent("message", { data }));
    return performance.now() - began;
  })));

// The stage: counted and timed where it draws.
await stage.evaluate(() => {
  const measured = { frames: [], draws: 0, triangles: 0, waits: 0 };
  self.measured = measured;
  const context = WebGL2RenderingContext.prototype;
  const [draw, read] = [context.drawElements, context.readPixels];
  context.drawElements = function (mode, count, ...rest) {
    measured.draws += 1;
    if (mode === this.TRIANGLES) measured.triangles += count / 3;
    return draw.call(this, mode, count, ...rest);
  };
  // Our code waits here for the graphics card; by software the processor draws meanwhile.
  context.readPixels = function (...rest) {
    const began = performance.now();
    const result = read.apply(this, rest);
    measured.waits += performance.now() - began;
    return result;
  };
  const ask = self.requestAnimationFrame.bind(self);
  self.requestAnimationFrame = (picture) => ask((now) => {
    Object.assign(measured, { draws: 0, triangles: 0, waits: 0 });
    const began = performance.now();
    picture(now);
    const whole = performance.now() - began;
    measured.frames.push({ own: whole - measured.waits, whole, draws: measured.draws, triangles: measured.triangles });
  });
});
// Drawing by software takes far longer than a frame, so each turn waits for its picture.
const pictures = () => stage.evaluate(() => self.measured.frames.length);
async function drawn(act) {
  const before = await pictures();
  await act();
  while ((await pictures()) === before) await new Promise((resolve) => setTimeout(resolve, 20));
}
await drawn(() => bench.button("Doors open").click());
for (let turn = 0; turn < TURNS; turn += 1) await drawn(() => bench.page.locator("canvas").press("ArrowRight"));
const turned = await pictures();
await drawn(() => bench.button("Begin afresh").click());
for (let step = 0; step < TURNS; step += 1) await drawn(() => bench.page.evaluate((step) => window.drag(step), step));
const { frames } = await stage.evaluate(() => self.measured);
const most = (pick) => Math.max(...frames.map(pick));
const other = frames.splice(turned).slice(1);
row("our own work for a picture of the stage, in its worker", frames.map(({ own }) => own));
row("that picture with its drawing by software", frames.map(({ whole }) => whole));
row("our own work for the picture of another unit, in the same worker", other.map(({ own }) => own));
console.log(`most in a picture with shadows anew  ${most(({ triangles }) => triangles)} triangles, ${most(({ draws }) => draws)} draw calls`);
const turning = frames.at(-1);
console.log(`in a picture while turning  ${turning.triangles} triangles, ${turning.draws} draw calls`);
if (bench.errors.length) console.log(`errors of the page: ${bench.errors.join("; ")}`);
await chrome.close();
