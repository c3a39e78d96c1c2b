// What Lighthouse says of the page on its simulated mid-range phone: the median of several visits, each in a fresh browser.
import { launch } from "chrome-launcher";
import lighthouse from "lighthouse";

const VISITS = 5;

const FIGURES = [
  ["first contentful paint", "first-contentful-paint", " ms", 0],
  ["largest contentful paint", "largest-contentful-paint", " ms", 0],
  ["total blocking time", "total-blocking-time", " ms", 0],
  ["time to interactive", "interactive", " ms", 0],
  ["cumulative layout shift", "cumulative-layout-shift", "", 3],
];

async function visit() {
  const chrome = await launch({
    chromePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    chromeFlags: ["--headless=new", "--no-sandbox", "--disable-background-networking", "--disable-component-update"],
  });
  try {
    const { lhr } = await lighthouse(process.env.SLOTWRIGHT_URL, { port: chrome.port, logLevel: "error" });
    return lhr;
  } finally {
    await chrome.kill();
  }
}

const visits = [];
while (visits.length < VISITS) visits.push(await visit());

/** The middle one of what the visits say. */
function median(read) {
  return visits.map(read).sort((a, b) => a - b)[Math.floor(VISITS / 2)];
}

for (const { id, title } of Object.values(visits[0].categories)) {
  console.log(`Lighthouse, ${title.toLowerCase()}  ${Math.round(median(({ categories }) => categories[id].score * 100))} of 100`);
}
for (const [name, id, unit, digits] of FIGURES) {
  console.log(`Lighthouse, ${name}  ${median(({ audits }) => audits[id].numericValue).toFixed(digits)}${unit}`);
}
// What keeps a category below the whole of its points.
const failed = Object.values(visits[0].audits).filter(({ score, scoreDisplayMode }) => scoreDisplayMode === "binary" && score === 0);
for (const { id, title } of failed) console.log(`not passed: ${id}: ${title}`);
