// The page brings its content security policy along, for hosts that send no headers of their own.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

test("the page says itself what its header says, but who may frame it", async () => {
  const bench = await Bench.open(chrome);
  const own = await bench.page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
  const header = (await fetch(process.env.SLOTWRIGHT_URL)).headers.get("content-security-policy");
  assert.equal(header, `${own}; frame-ancestors 'none'`);
  await bench.close();
});

test("where no header is sent, the page works and its policy holds", async () => {
  const bench = await Bench.routed(chrome);
  await bench.page.route("**/*", async (route) => {
    const response = await route.fetch();
    const headers = response.headers();
    for (const name of ["content-security-policy", "content-encoding", "content-length"]) delete headers[name];
    await route.fulfill({ response, headers });
  });
  await bench.visit();
  await bench.stage();
  await bench.order();
  assert.deepEqual(bench.errors, [], "nothing of the page is stopped");
  const stopped = await bench.page.evaluate(() => new Promise((resolve) => {
    document.addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
    const script = document.createElement("script");
    script.textContent = "globalThis.smuggled = true";
    document.body.append(script);
    setTimeout(() => resolve(`nothing stopped it: ${globalThis.smuggled}`), 2000);
  }));
  assert.equal(stopped, "script-src-elem");
  await bench.close();
});
