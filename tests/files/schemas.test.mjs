// What the tool prints keeps to the published schemas, by a validator that is not ours.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { Ajv2020 } from "ajv/dist/2020.js";

const here = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "slotwright-schemas-"));
after(() => rmSync(folder, { recursive: true }));

const tool = (...args) => spawnSync(process.env.SLOTWRIGHT_BIN, args, { encoding: "utf8", maxBuffer: 1 << 28 }).stdout;
const today = ["--today", "2026-11-25"];

/** The validator of a published schema: its faults of a document, each with its place. */
function schema(name) {
  // Names of formats, as of integers of some width, only say more; no keyword may be one that nobody knows.
  const ajv = new Ajv2020({ allErrors: true, validateFormats: false, strict: true, strictTypes: false });
  const validate = ajv.compile(JSON.parse(readFileSync(here(`crates/shop/schemas/${name}.schema.json`), "utf8")));
  return (document) => (validate(document) ? [] : validate.errors.map((fault) => `${fault.instancePath}: ${fault.message}`));
}

function check(name, text) {
  assert.deepEqual(schema(name)(JSON.parse(text)), [], name);
}

test("documents keep to their schemas", () => {
  const order = tool("order", ...today, "--remark", "by the window");
  const path = join(folder, "order.json");
  writeFileSync(path, order);
  check("order-spec", order);
  check("derived", tool("derive", ...today));
  check("assembly", tool("assembly"));
  check("options", tool("options", "--json", "--pin", "width", "--pin", "bays"));
  check("fit", tool("fit", "--json", "--measured", `birch-12=${"12.1 ".repeat(8)}`));
  check("check-report", tool("check", "--json", path, "absent.json"));
  check("range-report", tool("range", "--json", here("web/ranges/fenland.toml")));
  const choices = tool("sample", "--any", "--count", "60", "--seed", "8").trimEnd().split("\n");
  assert.equal(choices.length, 60);
  const faults = schema("choice");
  choices.forEach((choice) => assert.deepEqual(faults(JSON.parse(choice)), [], choice));
});

test("the order schema refuses what the reader refuses", () => {
  const faults = schema("order-spec");
  const order = tool("order", ...today);
  assert.deepEqual(faults(JSON.parse(order)), []);
  for (const [name, spoil] of [
    ["another version", (order) => { order.version = 3; }],
    ["a digest that is none", (order) => { order.digest = "short"; }],
    ["a fit-out that nobody knows", (order) => { order.choice.bays[0].fill = "closed"; }],
    ["a width in words", (order) => { order.choice.width_mm = "wide"; }],
    ["nobody's name", (order) => { order.customer = { ...order.customer, name: "" }; }],
    ["a day in words", (order) => { order.ordered_on = "tomorrow"; }],
    ["a range without its digest", (order) => { order.range = { key: "fenland" }; }],
  ]) {
    const spoiled = JSON.parse(order);
    spoil(spoiled);
    assert.notDeepEqual(faults(spoiled), [], `${name} passes`);
    const path = join(folder, "spoiled.json");
    writeFileSync(path, JSON.stringify(spoiled));
    const { files: [{ result, reason }] } = JSON.parse(tool("check", "--json", path));
    assert.equal(result, "unreadable", `the reader takes ${name}`);
    // The member itself, not only that the digest is no longer its own.
    assert.doesNotMatch(reason, /the file says/, name);
  }
});
