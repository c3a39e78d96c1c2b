// A cut pack as readers that are not ours find it: labels whose codes lead back to their parts, documents with their
// texts, on the paper that was asked for.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";

const folder = mkdtempSync(join(tmpdir(), "slotwright-pack-"));
after(() => rmSync(folder, { recursive: true }));
const run = (program, args, input) => execFileSync(program, args, { cwd: folder, encoding: "utf8", input, maxBuffer: 1 << 26, stdio: ["pipe", "pipe", "ignore"] });
const tool = (args, input) => run(process.env.SLOTWRIGHT_BIN, args, input);
const text = (...path) => run("pdftotext", ["-layout", join(folder, ...path), "-"]);

let orders;
let rows;
before(() => {
  const choices = tool(["sample", "--count", "3", "--seed", "11"]).trim().split("\n");
  const names = choices.map((choice, at) => {
    const name = `o${at + 1}.json`;
    const person = ["--name", `Ana Žižka ${at + 1}`, "--address", `${at + 1} Dyke Lane`, "--address", "Ely"];
    tool(["order", "--today", "2026-11-25", "--choice", "-", "--out", name, "--remark", "Ring twice", ...person], choice);
    return name;
  });
  orders = names.map((name) => JSON.parse(readFileSync(join(folder, name), "utf8")));
  tool(["pack", ...names, "--effort", "0", "--out", "pack"]);
  tool(["pack", ...names, "--effort", "0", "--paper", "letter", "--labels", "62x29", "--out", "letter"]);
  const [head, ...lines] = readFileSync(join(folder, "pack", "parts.csv"), "utf8").trim().split("\r\n");
  const keys = head.split(",");
  rows = lines.map((line) => Object.fromEntries(line.split(",").map((value, at) => [keys[at], value])));
});

/** What zbar reads of a document's pages. */
function codes(...path) {
  const stem = join(folder, `page-${path.join("-")}`);
  run("pdftoppm", ["-r", "300", "-gray", "-png", join(folder, ...path), stem]);
  const pages = readdirSync(folder).filter((name) => name.startsWith(`page-${path.join("-")}`)).map((name) => join(folder, name));
  return run("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", ...pages]).trim().split("\n").sort();
}

for (const pack of ["pack", "letter"]) {
  test(`${pack}: a label for each part and each offcut, whose code leads back to it`, () => {
    const offcuts = readFileSync(join(folder, pack, "offcuts.csv"), "utf8").trim().split("\r\n").slice(1).map((line) => line.split(","));
    const wanted = rows.map((row) => `${orders[row.order - 1].digest.slice(0, 8)}/${row.part}`);
    assert.ok(offcuts.length > 0);
    assert.deepEqual(codes(pack, "labels.pdf"), [...wanted, ...offcuts.map(([name]) => name)].sort());
    const labels = text(pack, "labels.pdf");
    for (const { mark } of rows) assert.match(labels, new RegExp(`(^|\\s)${mark}(\\s|$)`, "m"));
    for (const [name] of offcuts) assert.ok(labels.includes(name), name);
    // Each says where it is stuck; of an offcut its grain, and what the batch measured.
    assert.equal(labels.match(/Stick on: /g).length, rows.length);
    assert.equal(labels.match(/grain along the first/g).length, offcuts.length);
    assert.equal(labels.match(/batch of \d/g).length, offcuts.filter((offcut) => offcut.at(-1) !== "").length);
  });
}

test("documents hold what they are for, and names of people only where they belong", () => {
  const cut = text("pack", "cut-list.pdf");
  for (const { mark } of rows) assert.ok(cut.includes(mark), mark);
  assert.ok(cut.includes("Birch dust can cause cancer"), "cautions");
  const finishing = text("pack", "finishing.pdf");
  assert.match(finishing, /Tabs:\s+both\s+narrow\s+sides/);
  // Tabs that have to find their slots in the top: of uprights and all that stands free.
  assert.match(finishing, /Chamfer the ends of tabs that the table names by 2\u00a0?\s?mm/);
  const led = rows.filter(({ part }) => /^(upright|stile|stop|stave)-/.test(part));
  assert.equal(finishing.match(/top: 2\u00a0?\s?mm/g).length, led.length);
  assert.match(finishing, /front and rear:[^]{0,200}?[\d.]+\s?m\s\u00d7\s1/);
  for (const [at, { customer }] of orders.entries()) {
    const of = (name) => text("pack", "orders", `0${at + 1}-${name}.pdf`);
    const note = of("delivery");
    for (const line of [customer.name, ...customer.address]) assert.ok(note.includes(line), line);
    assert.match(of("job-card"), /By stage[^]*Promised end/);
    // Each stage is ticked once.
    assert.equal(of("job-card").match(/\u2610/g).length, 4);
    // What was said is often for the driver.
    assert.ok(note.includes("Ring twice") && of("job-card").includes("Ring twice"));
    // Whoever has one paper of an order finds the others by its number or its digest.
    const both = `Order ${at + 1} \u00b7 ${orders[at].digest.slice(0, 8)}`;
    for (const name of ["packing-list", "delivery", "assembly", "job-card"]) assert.ok(of(name).includes(both), name);
    // Each package has a sheet with its address, and is laid flat.
    assert.equal(note.match(/^ *Package \d+ of \d+ \u00b7 /gm).length, note.match(/Lay it flat/g).length);
    assert.ok(of("packing-list").includes(customer.name));
    const marks = rows.filter((row) => row.order === `${at + 1}`).map((row) => row.mark);
    for (const mark of marks) assert.ok(of("packing-list").includes(mark), mark);
    assert.ok(!of("job-card").includes(customer.name) && !of("assembly").includes(customer.name));
    assert.match(of("assembly"), /guidance and no certificate/);
    for (const name of ["cut-list.pdf", "batch.pdf", "labels.pdf", "finishing.pdf"]) {
      assert.ok(!text("pack", name).includes(customer.name), name);
    }
  }
  writeFileSync(join(folder, "all.txt"), ["parts.csv", "sheets.csv", "offcuts.csv", "manifest.json"].map((name) => readFileSync(join(folder, "pack", name), "utf8")).join("\n"));
  assert.ok(!readFileSync(join(folder, "all.txt"), "utf8").includes("Žižka"));
});

test("all papers and drawings of a pack say to which one they belong", () => {
  const names = ["pack", "letter"].map((pack) => {
    const { name, plan, program } = JSON.parse(readFileSync(join(folder, pack, "manifest.json"), "utf8"));
    const files = readdirSync(join(folder, pack), { recursive: true }).filter((file) => /\.(pdf|dxf|svg)$/.test(file));
    for (const file of files) {
      const said = file.endsWith(".pdf") ? text(pack, file) : readFileSync(join(folder, pack, file), "utf8");
      // Labels have room for what is cut alone.
      assert.ok(said.includes(file === "labels.pdf" ? name : `${name}-${plan}`), file);
      if (file.endsWith(".pdf") && file !== "labels.pdf") {
        const pages = said.split("\f").slice(0, -1);
        assert.equal(pages.filter((page) => page.includes(`Pack ${name}-${plan}`)).length, pages.length, file);
      }
      if (file.endsWith(".dxf")) assert.match(said, new RegExp(`^999\r\n\\S+ ${program} ${name}-${plan}/`), file);
    }
    assert.ok(files.length > 40, `${files.length}`);
    return [name, plan];
  });
  // The same parts on the same sheets, on other paper.
  assert.equal(names[0][0], names[1][0]);
  assert.notEqual(names[0][1], names[1][1]);
});

test("the paper is the one that was asked for", () => {
  const size = (...path) => run("pdfinfo", [join(folder, ...path)]).match(/Page size: +([\d.]+) x ([\d.]+)/).slice(1).map(Number);
  const near = (found, wanted) => found.every((points, at) => Math.abs((points * 25.4) / 72 - wanted[at]) < 0.02);
  assert.ok(near(size("pack", "batch.pdf"), [210, 297]) && near(size("letter", "orders", "01-assembly.pdf"), [215.9, 279.4]));
  assert.ok(near(size("pack", "labels.pdf"), [210, 297]) && near(size("letter", "labels.pdf"), [62, 29]));
});
