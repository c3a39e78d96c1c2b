// How long a change takes from the event to the painted frame, over many scripted changes.
import { Bench, browser } from "./page.mjs";

const chrome = await browser();
const bench = await Bench.open(chrome);
const times = await bench.page.evaluate(async () => {
  const slider = (name) => document.querySelector(`input[type=range][aria-label=${name}]`);
  const buttons = [...document.querySelectorAll(".swatches .choice, .short .choice")];
  const painted = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
  const channel = new MessageChannel();
  const computed = () => new Promise((resolve) => { channel.port1.onmessage = resolve; channel.port2.postMessage(0); });
  const [times, work] = [[], []];
  for (let round = 0; round < 240; round += 1) {
    const began = performance.now();
    if (round % 4 === 3) {
      const open = buttons.filter((button) => button.getAttribute("aria-disabled") === "false");
      open[(round * 7) % open.length].click();
    } else {
      const input = slider(["Width", "Height", "Depth"][round % 3]);
      input.value = String((round * 37) % (Number(input.max) + 1));
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }
    await computed();
    work.push(performance.now() - began);
    await painted();
    times.push(performance.now() - began);
  }
  return { paint: times.sort((a, b) => a - b), work: work.sort((a, b) => a - b) };
});
function row(name, times) {
  const at = (share) => times[Math.min(times.length - 1, Math.floor(times.length * share))].toFixed(1);
  console.log(`${name}, ${times.length} changes  median ${at(0.5)} ms, 98th percentile ${at(0.98)} ms, longest ${at(1)} ms`);
}
row("change to paint", times.paint);
row("of it our own work: derive, all answers, page", times.work);
if (bench.errors.length) console.log(`errors of the page: ${bench.errors.join("; ")}`);
await chrome.close();
