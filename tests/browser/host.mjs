// A host of its own for the built app: it can be taken away, and what it serves can be changed.
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { Bench } from "./page.mjs";

const BUILT = join(import.meta.dirname, "../../dist");
const TYPES = {
  ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm", ".svg": "image/svg+xml",
  ".png": "image/png", ".woff2": "font/woff2", ".webmanifest": "application/manifest+json",
};

const hash = (text) => createHash("sha256").update(text).digest("hex").slice(0, 16);

/** The app in a folder of its own, served below `base` until it is stopped. */
export class Host {
  /** What was asked for, by path. */
  asked = [];
  /** Answers these paths never, while they are here. */
  silent = new Set();
  port = 0;

  static async open(base = "/") {
    const host = new Host();
    host.base = base;
    host.folder = mkdtempSync(join(tmpdir(), "slotwright-host-"));
    cpSync(BUILT, host.folder, { recursive: true });
    await host.start();
    return host;
  }

  get url() {
    return `http://127.0.0.1:${this.port}${this.base}`;
  }

  async start() {
    this.server = createServer((request, response) => this.answer(request, response));
    await new Promise((resolve) => this.server.listen(this.port, "127.0.0.1", resolve));
    this.port = this.server.address().port;
  }

  /** From now on nobody answers. */
  async stop() {
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }

  async close() {
    if (this.server.listening) await this.stop();
    rmSync(this.folder, { recursive: true });
  }

  /** As the README asks of a host. */
  answer(request, response) {
    const { pathname } = new URL(request.url, "http://host");
    const beside = pathname.startsWith(this.base) ? pathname.slice(this.base.length) : undefined;
    // A folder stands for its page.
    const path = beside === undefined ? "" : beside.replace(/(^|\/)$/, "$1index.html");
    this.asked.push(path);
    if (this.silent.has(path)) return;
    const file = join(this.folder, path);
    if (!path || !existsSync(file)) return response.writeHead(404).end();
    const policy = this.read("index.html").match(/http-equiv="Content-Security-Policy" content="([^"]+)"/)[1];
    response.writeHead(200, {
      "Content-Type": TYPES[extname(file)] ?? "text/plain",
      "Content-Security-Policy": policy,
      "Cache-Control": path.startsWith("app-") ? "public, max-age=31536000, immutable" : "no-cache",
    });
    response.end(readFileSync(file));
  }

  read(path) {
    return readFileSync(join(this.folder, path), "utf8");
  }

  /** Writes a file anew; what it was before. */
  edit(path, edit) {
    const before = this.read(path);
    writeFileSync(join(this.folder, path), edit(before));
    return before;
  }

  /** The folder of the program. */
  get program() {
    return readdirSync(this.folder).find((name) => name.startsWith("app-"));
  }

  /** Makes it another build, as `cargo xtask build` would: another program, and a page that names it. */
  rebuild() {
    const before = this.program;
    const after = `app-${hash(before)}`;
    renameSync(join(this.folder, before), join(this.folder, after));
    const page = this.edit("index.html", (html) => html.replaceAll(before, after));
    const list = (script) => script.replaceAll(before, after).replace(hash(page), hash(this.read("index.html")));
    this.edit("sw.js", (script) => list(script).replace(/(?<=PREFIX\+")[0-9a-f]{16}/, hash(after)));
  }
}

/** A host, and a page of it that is kept by now; both go when the test ends. */
export async function visited(browser, context, base) {
  const host = await Host.open(base);
  const bench = await Bench.open(browser, { url: host.url });
  context.after(async () => {
    await bench.close();
    await host.close();
  });
  await bench.cached();
  return { host, bench };
}
