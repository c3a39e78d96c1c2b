// How the page answers where the processor is four times as slow, and what it keeps after many changes.
import { Bench, browser } from "./page.mjs";

const SLOW = 4;
const PRESSES = 60;
const DRAG = 60;
const [FEW, MANY] = [100, 1000];

const chrome = await browser();
const bench = await Bench.open(chrome);
const { page } = bench;
const devtools = await page.context().newCDPSession(page);
await bench.stage();
// The start is measured elsewhere: it ends with the adviser's first answers and its practice.
await page.waitForTimeout(5000);

await page.evaluate(() => {
  window.waits = [];
  window.tasks = [];
  const channel = new MessageChannel();
  const waiting = [];
  channel.port1.onmessage = () => {
    const now = performance.now();
    window.waits.push(...waiting.splice(0).map((began) => now - began));
  };
  // From the moment of the input to the frame that comes after it.
  const hear = ({ timeStamp }) => {
    waiting.push(timeStamp);
    if (waiting.length === 1) requestAnimationFrame(() => channel.port2.postMessage(0));
  };
  window.listenTo = (kind) => addEventListener(kind, hear, true);
  window.leave = (kind) => removeEventListener(kind, hear, true);
  new PerformanceObserver((list) => window.tasks.push(...list.getEntries().map(({ duration }) => duration)))
    .observe({ type: "longtask" });
});

/** Does something and gives the times from each input of that kind to its frame. */
async function waits(kind, act) {
  await page.evaluate((kind) => { window.waits = []; window.listenTo(kind); }, kind);
  await act();
  await page.waitForTimeout(1000);
  return page.evaluate((kind) => { window.leave(kind); return window.waits; }, kind);
}

function row(name, times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))].toFixed(0);
  console.log(`${name}, ${times.length} times  median ${at(0.5)} ms, 98th percentile ${at(0.98)} ms, longest ${at(1)} ms`);
}

await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOW });

const open = page.locator("#questions [role=radio]:not(.shut, .shifts)");
row(`input to next frame at ${SLOW}x slow-down, answers pressed`, await waits("click", async () => {
  for (let press = 0; press < PRESSES; press += 1) {
    // By the mouse, as a person: what is scrolled to is none of the measure.
    const answer = open.nth((press * 7) % await open.count());
    await answer.scrollIntoViewIfNeeded();
    const box = await answer.boundingBox();
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await page.waitForTimeout(200);
  }
}));

const slider = bench.slider("Width");
await slider.scrollIntoViewIfNeeded();
const box = await slider.boundingBox();
row(`input to next frame at ${SLOW}x slow-down, width dragged`, await waits("input", async () => {
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  for (let step = 0; step < DRAG; step += 1) {
    const way = step % 30 < 15 ? step % 15 : 15 - (step % 15);
    await page.mouse.move(box.x + box.width * (0.5 + way * 0.02), box.y + box.height / 2);
    await page.waitForTimeout(60);
  }
  await page.mouse.up();
}));
const tasks = await page.evaluate(() => window.tasks);
const longest = tasks.length ? `${Math.max(...tasks).toFixed(0)} ms` : "50 ms at most";
console.log(`longest task of the page after the start at ${SLOW}x slow-down  ${longest}, ${tasks.length} above 50 ms`);
await devtools.send("Emulation.setCPUThrottlingRate", { rate: 1 });

/** Bytes of the page's own heap after all that can be collected is. */
async function heap() {
  await page.waitForTimeout(1000);
  for (let time = 0; time < 2; time += 1) await devtools.send("HeapProfiler.collectGarbage");
  return (await devtools.send("Runtime.getHeapUsage")).usedSize;
}

/** Each one a step: another question is answered every time. */
const change = (from, to) => page.evaluate(async ([from, to]) => {
  for (let number = from; number < to; number += 1) {
    const input = document.querySelector(`input[type=range][aria-label=${["Width", "Height", "Depth"][number % 3]}]`);
    input.value = String((number * 37) % (Number(input.max) + 1));
    input.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => setTimeout(resolve, 60));
  }
}, [from, to]);

await change(0, FEW);
const few = await heap();
await change(FEW, MANY);
const many = await heap();
const more = ((many / few - 1) * 100).toFixed(1);
console.log(`heap of the page after ${FEW} changes ${(few / 1e6).toFixed(2)} MB, after ${MANY} ${(many / 1e6).toFixed(2)} MB: ${more} % more`);
if (bench.errors.length) console.log(`errors of the page: ${bench.errors.join("; ")}`);
await chrome.close();
