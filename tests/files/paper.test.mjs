// Documents as poppler and zbar read them: paper, faces, text in its order, tables over pages, tags, codes.
//
// SLOTWRIGHT_PAPER writes the documents of slotwright_tests::paper into a folder.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";

const folder = mkdtempSync(join(tmpdir(), "slotwright-paper-"));
after(() => rmSync(folder, { recursive: true }));
let told;
before(() => {
  execFileSync(process.env.SLOTWRIGHT_PAPER, [folder]);
  told = JSON.parse(readFileSync(join(folder, "told.json"), "utf8"));
});

const file = (name) => join(folder, `${name}.pdf`);
const read = (program, ...args) => execFileSync(program, args, { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"], maxBuffer: 1 << 26 });
const text = (name, ...how) => read("pdftotext", ...how, file(name), "-");

/** Width and height of each page in millimetres. */
function sizes(name) {
  const lines = read("pdfinfo", "-l", "999", file(name)).matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+) pts/gm);
  return [...lines].map(([, width, height]) => [width, height].map((points) => (points * 25.4) / 72));
}

const A4 = [210, 297];
const LETTER = [215.9, 279.4];
const documents = [
  ["pack-a4", A4],
  ["pack-letter", LETTER],
  ["long-a4", A4],
  ["long-letter", LETTER],
  ["labels-a4-3-by-8", A4],
  ["labels-a4-2-by-7", A4],
  ["labels-letter-3-by-10", LETTER],
  ["label-100-by-50", [100, 50]],
  ["label-62-by-29", [62, 29]],
];

test("each document has its paper, its title, its tags, and embedded faces that are outlines", () => {
  for (const [name, paper] of documents) {
    const pages = sizes(name);
    assert.ok(pages.length > 0, name);
    for (const page of pages) page.forEach((mm, at) => assert.ok(Math.abs(mm - paper[at]) < 0.01, `${name}: ${page}`));
    const info = read("pdfinfo", file(name));
    assert.match(info, /^Tagged: +yes$/m, name);
    assert.match(info, /^Title: +\S/m, name);
    assert.doesNotMatch(info, /^(CreationDate|ModDate):/m, "no clock");
    const faces = read("pdffonts", file(name)).trimEnd().split("\n").slice(2);
    assert.ok(faces.length >= 2 && faces.length <= 3, `${name}: ${faces}`);
    // Type, then embedded, subset, and with a map to Unicode.
    for (const face of faces) assert.match(face, / CID TrueType +Identity-H +yes yes yes /, name);
  }
});

for (const name of ["long-a4", "long-letter"]) {
  test(`${name}: 200 rows, each whole and on one page, and the head on every page`, (t) => {
    const pages = text(name, "-layout").split("\f").slice(0, -1);
    assert.equal(pages.length, sizes(name).length);
    const rows = [];
    pages.forEach((page, at) => {
      assert.equal(page.match(/^ *Row +Part +Remark +Length +Done$/gm)?.length, 1, `the head on page ${at + 1}`);
      assert.match(page, new RegExp(`page ${at + 1} of ${pages.length}`));
      assert.match(page, /Odd Lintel Workshop +Batch 12 · birch, white oil/);
      for (const [, row, rest] of page.matchAll(/^ *R(\d{3}) +(.*)$/gm)) {
        rows.push(Number(row));
        assert.ok(rest.startsWith(`Upright ${Number(row)} `) && rest.includes(`${300 + Number(row)} mm`), rest);
        const lines = page.slice(page.indexOf(`R${row}`)).split("\n");
        // The second line of a remark stands on the page of its first.
        if (Number(row) % 7 === 0) assert.match(lines.slice(0, 4).join(" ").replaceAll(/\s+/g, " "), /whatever the nest/);
      }
    });
    assert.deepEqual(rows, Array.from({ length: 200 }, (_, at) => at + 1));
    assert.ok(pages.length > 3);
    t.diagnostic(`${pages.length} pages`);
  });
}

test("text comes back in the order in which it is read, with the signs that are printed", () => {
  // Poppler makes a plain space of every kind of space.
  for (const name of ["pack-a4", "pack-letter"]) {
    const all = text(name, "-raw").replaceAll(/[\n\f]+/g, " ");
    const order = ["Cut list", "2611-0042", "Ōtani Łucja", "14 December 2026", "1 220 × 2 440", "−0.39 mm", "€ 412.50",
      "the grain runs along the arrow ↑ on every part.", "Keep hands ≥ 150 mm", "Parts", "Birch 18 mm, white oil", "Shelf of bay 2, upper row",
      "27.4", "Before you begin", "☐ Measure the batch", "Reliefs", "• in tabs", "The unit", "Scale 1:20", "Putting it together", "1 of 15", "15 of 15"];
    let from = 0;
    for (const words of order) {
      const at = all.indexOf(words, from);
      assert.ok(at >= from, `${name}: "${words}" behind "${all.slice(Math.max(0, from - 60), from)}"`);
      from = at + words.length;
    }
  }
});

test("a letter that no face has is told, shown by a box, and found again", () => {
  assert.deepEqual(told.documents["pack-a4"].lacking.map(([letter]) => letter).sort(), ["⅓", "李"].sort());
  const all = text("pack-a4");
  assert.match(all, /李 and the café/);
  assert.match(all, /only where the cutter is ⅓ too thick/);
  assert.deepEqual(told.documents["long-a4"].lacking, []);
});

test("headings, tables, lists and pictures are tagged as what they are", () => {
  const tree = read("pdfinfo", "-struct-text", file("pack-a4"));
  const count = (kind) => tree.match(new RegExp(`^ *${kind}\\b`, "gm"))?.length ?? 0;
  assert.deepEqual([count("H1"), count("H2"), count("H3"), count("Table")], [1, 4, 1, 1], tree.slice(0, 2000));
  // The head, two groups, eleven parts, their sum.
  assert.deepEqual([count("TR"), count("TH")], [15, 8]);
  assert.equal(count("TD"), 12 * 8 + 2);
  assert.ok(count("L") >= 3 && count("LI") === 8 + 3 + 3, `${count("LI")} items`);
  // Eleven outlines, the drawing, and a picture for each of fifteen steps.
  assert.equal(count("Figure"), 11 + 1 + 15);
  assert.match(tree, /H1[^\n]*\n\s+"Cut list"/);
});

test("codes are read back from the rendered page, and none is missing", (t) => {
  let read_ = 0;
  for (const [name, count] of [["labels-a4-3-by-8", 30], ["labels-a4-2-by-7", 9], ["labels-letter-3-by-10", 12], ["label-100-by-50", 2], ["label-62-by-29", 2]]) {
    // 300 dots an inch: what an office printer does at least.
    execFileSync("pdftoppm", ["-r", "300", "-gray", "-png", file(name), join(folder, name)], { stdio: "ignore" });
    const found = [];
    for (let page = 1; page <= sizes(name).length; page += 1) {
      const image = [`${name}-${page}.png`, `${name}-0${page}.png`].map((png) => join(folder, png));
      const png = image.find((path) => { try { return readFileSync(path).length > 0; } catch { return false; } });
      found.push(...read("zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", png).trimEnd().split("\n"));
    }
    assert.deepEqual(found.sort(), told.codes.slice(0, count), name);
    read_ += found.length;
  }
  t.diagnostic(`${read_} codes`);
});

test("the same bytes twice", () => {
  const again = mkdtempSync(join(tmpdir(), "slotwright-paper-"));
  execFileSync(process.env.SLOTWRIGHT_PAPER, [again]);
  for (const [name] of documents) {
    assert.ok(readFileSync(file(name)).equals(readFileSync(join(again, `${name}.pdf`))), name);
  }
  rmSync(again, { recursive: true });
});
