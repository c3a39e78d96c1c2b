// Browsers of other makers, driven by the protocol that all of them share.
// Source: W3C WebDriver, "Endpoints".
import { spawn } from "node:child_process";
import { createServer } from "node:net";

/** How long a driver or a page may take, in milliseconds. */
const PATIENCE = 120_000;

/** How each of them is started, by its driver, and what it is asked to be. */
const ENGINES = {
  firefox: {
    command: (port) => [process.env.GECKODRIVER, "--port", port],
    capabilities: { browserName: "firefox", "moz:firefoxOptions": { binary: process.env.FIREFOX, args: ["-headless"] } },
  },
  webkit: {
    // It has no way to run without a screen.
    command: (port) => ["xvfb-run", "--auto-servernum", process.env.WEBKITDRIVER, `--port=${port}`],
    capabilities: {
      "webkitgtk:browserOptions": { binary: process.env.WEBKIT, args: ["--automation"] },
    },
  },
};

async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return String(port);
}

const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** One open browser. */
export class Driver {
  static async open(engine) {
    const { command, capabilities } = ENGINES[engine];
    const port = await freePort();
    const [program, ...words] = command(port);
    const child = spawn(program, words, { stdio: "ignore", detached: true });
    const driver = new Driver(`http://127.0.0.1:${port}`, child);
    try {
      await driver.until(async () => (await fetch(`${driver.address}/status`)).ok, "the driver");
      const { sessionId } = await driver.send("POST", "/session", { capabilities: { alwaysMatch: capabilities } });
      driver.address += `/session/${sessionId}`;
      await driver.send("POST", "/timeouts", { script: PATIENCE, pageLoad: PATIENCE });
      return driver;
    } catch (error) {
      driver.kill();
      throw error;
    }
  }

  constructor(address, child) {
    this.address = address;
    this.child = child;
  }

  async send(method, path, body) {
    const headers = { "content-type": "application/json" };
    const answer = await fetch(this.address + path, { method, headers, body: body && JSON.stringify(body) });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value;
  }

  /** Waits until something holds. */
  async until(holds, what) {
    for (const end = Date.now() + PATIENCE; Date.now() < end; await pause(100)) {
      if (await Promise.resolve().then(holds).catch(() => false)) return;
    }
    throw new Error(`waited in vain for ${what}`);
  }

  visit(url) {
    return this.send("POST", "/url", { url });
  }

  /** What a script in the page comes to; it may promise it. */
  run(script, ...args) {
    const wrapped = `const done = arguments[arguments.length - 1];
      Promise.resolve((${script})(...Array.from(arguments).slice(0, -1))).then((value) => done({ value }), (error) => done({ error: String(error) }));`;
    return this.send("POST", "/execute/async", { script: wrapped, args }).then(({ value, error }) => {
      if (error) throw new Error(error);
      return value;
    });
  }

  /** The element of a selector, for presses and texts. */
  async find(selector) {
    const found = await this.send("POST", "/element", { using: "css selector", value: selector });
    return Object.values(found)[0];
  }

  async click(selector) {
    await this.send("POST", `/element/${await this.find(selector)}/click`, {});
  }

  /** Types into a field as a person would, in place of what stands there. */
  async type(selector, text) {
    const element = await this.find(selector);
    await this.send("POST", `/element/${element}/clear`, {});
    await this.send("POST", `/element/${element}/value`, { text });
  }

  /** Presses a key where the focus is. */
  press(value) {
    const actions = [{ type: "keyDown", value }, { type: "keyUp", value }];
    return this.send("POST", "/actions", { actions: [{ type: "key", id: "keys", actions }] });
  }

  async close() {
    await this.send("DELETE", "").catch(() => {});
    this.kill();
  }

  /** What runs under a screen of its own goes with it. */
  kill() {
    process.kill(-this.child.pid);
    this.child.unref();
  }
}
