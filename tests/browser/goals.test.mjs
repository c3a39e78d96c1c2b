// Solving backwards: a goal is named, and one press takes the nearest unit that meets it.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { Bench, browser } from "./page.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

const goals = (bench) => bench.group("Find one that");
const way = (bench) => goals(bench).locator(".notices").last().locator(".remedy");
const price = async (bench) => Number((await bench.tally()).match(/€\D?([\d\D]*?)\.\d\d/)[1].replace(/\D/g, ""));

test("a price is named, and one press meets it", async () => {
  const bench = await Bench.open(chrome);
  const before = await price(bench);
  const most = Math.round(before * 0.85);
  await goals(bench).getByRole("textbox", { name: "costs at most" }).fill(String(most));
  await goals(bench).getByRole("textbox", { name: "costs at most" }).press("Enter");
  await way(bench).waitFor();
  assert.match(await goals(bench).locator(".notice").last().innerText(), /€.*kg, with you by/);
  await way(bench).click();
  await bench.page.waitForFunction(() => !document.querySelector(".goals > .notices:last-child .remedy"));
  assert.ok(await price(bench) <= most, `${await price(bench)} of ${most}`);
  assert.match(await bench.tally(), /Can be made/);
  // As people write it, and what was understood.
  await goals(bench).getByRole("textbox", { name: "costs at most" }).fill("€1,400");
  await goals(bench).getByRole("textbox", { name: "costs at most" }).press("Enter");
  assert.equal(await goals(bench).getByRole("textbox", { name: "costs at most" }).inputValue(), "1\u202f400.00");
  await goals(bench).getByRole("textbox", { name: "costs at most" }).fill("little");
  await goals(bench).getByRole("textbox", { name: "costs at most" }).press("Enter");
  await goals(bench).getByText("This is no price. Write it like").waitFor();
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("as wide as can be, and wide enough for the screen", async () => {
  const bench = await Bench.open(chrome);
  await goals(bench).getByRole("button", { name: "takes the screen" }).click();
  await goals(bench).getByText("Say first which screen stands on it.").waitFor();
  await bench.page.getByRole("textbox", { name: "Screen on top" }).fill("80");
  await bench.page.getByRole("textbox", { name: "Screen on top" }).press("Enter");
  await goals(bench).getByRole("button", { name: "takes the screen" }).click();
  await way(bench).click();
  // 80 inches are 1 771 mm wide.
  await bench.page.waitForFunction(() => document.querySelector(".goals") && [...document.querySelectorAll("input")]
    .some((input) => input.value.replace(/\D/g, "") === "1780"));
  await goals(bench).getByRole("button", { name: "is as wide as can be" }).click();
  await way(bench).click();
  await bench.page.waitForFunction(() => [...document.querySelectorAll("input")]
    .some((input) => input.value.replace(/\D/g, "") === "2400"));
  assert.match(await bench.tally(), /Can be made/);
  await bench.close();
});

test("what cannot be made is offered the nearest that can, unasked", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "9000");
  assert.match(await bench.tally(), /Cannot be made/);
  await goals(bench).getByText("The nearest that can be made: ").waitFor();
  await way(bench).click();
  await bench.page.getByText("Can be made", { exact: true }).waitFor();
  await bench.close();
});

test("a budget or a day that the unit does not keep is said, and exactly the budget is kept", async () => {
  const bench = await Bench.open(chrome);
  const dear = bench.page.getByText(/It costs €.*; you gave €/);
  const late = bench.page.getByText(/It comes on .*; you want it by/);
  const give = async (name, figure) => {
    await goals(bench).getByLabel(name).fill(figure);
    await goals(bench).getByLabel(name).press("Enter");
  };
  const cents = Number((await bench.tally()).match(/€[^\d]*([\d ]+\.\d\d)/)[1].replaceAll(/\D/g, ""));
  const written = (cents) => `${Math.trunc(cents / 100)}.${String(cents % 100).padStart(2, "0")}`;
  await give("costs at most", written(cents - 1));
  await dear.waitFor();
  assert.match(await bench.tally(), /Can be made/, "it only warns");
  await give("costs at most", written(cents));
  await dear.waitFor({ state: "hidden" });
  const day = (ahead) => new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10);
  await give("is there by", day(1));
  await late.waitFor();
  assert.equal(await dear.count(), 0);
  await give("is there by", day(300));
  await late.waitFor({ state: "hidden" });
  // Let go, neither is said any more.
  await give("costs at most", written(cents - 1));
  await dear.waitFor();
  await give("costs at most", "");
  await dear.waitFor({ state: "hidden" });
  // So it is by the way out that is offered, and the field is empty then.
  await give("costs at most", written(cents - 1));
  await bench.button("Let the budget go").click();
  await dear.waitFor({ state: "hidden" });
  assert.equal(await goals(bench).getByLabel("costs at most").inputValue(), "");
  await give("is there by", day(-400));
  await bench.page.getByText(/is in the past; it comes on .* at the earliest\./).first().waitFor();
  await bench.button("Let the day go").click();
  await bench.button("Let the day go").waitFor({ state: "hidden" });
  assert.equal(await goals(bench).getByLabel("is there by").inputValue(), "");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("the cheapest that is found is told and taken, and is offered where a price is out of reach", async () => {
  const bench = await Bench.open(chrome);
  const before = await price(bench);
  await bench.button("Keep number of bays").click();
  await bench.rest();
  await goals(bench).getByRole("button", { name: "costs as little as can be" }).click();
  const found = goals(bench).getByText(/The cheapest found: €/);
  await found.waitFor();
  const told = await found.innerText();
  await goals(bench).getByLabel("costs at most").fill("1");
  await goals(bench).getByLabel("costs at most").press("Enter");
  const none = goals(bench).getByText(/At most €\u202f1\.00: no way to it was found .* The cheapest found: €/);
  await none.waitFor();
  assert.ok((await none.innerText()).includes(told.match(/€[^,]*/)[0]), "the same one");
  await way(bench).click();
  await bench.page.waitForFunction(() => !document.querySelector(".goals > .notices:last-child .remedy"));
  assert.ok(await price(bench) < before, `${await price(bench)} of ${before}`);
  assert.match(await bench.drawing(), /From the left: [^;]+; [^;]+; [^;.]+\./, "three bays are kept");
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test("what is kept has a goal answered anew, and a budget's warning stands where the budget was given", async () => {
  const bench = await Bench.open(chrome);
  await goals(bench).getByLabel("costs at most").fill("900");
  await goals(bench).getByLabel("costs at most").press("Enter");
  await way(bench).first().waitFor();
  await goals(bench).getByText(/It costs €.*; you gave €/).waitFor();
  assert.equal(await bench.page.locator("#question-place .notice").count(), 0);
  await bench.button("Keep number of bays").click();
  await bench.rest();
  await goals(bench).getByText(/At most €\u202f900\.00: /).waitFor();
  await bench.close();
});

test("a wish that cannot be read says nothing of the unit that is there", async () => {
  const bench = await Bench.open(chrome);
  await bench.page.getByText(/^\d+ hints$/).waitFor();
  const before = await bench.tally();
  await goals(bench).getByLabel("costs at most").fill("cheap");
  await goals(bench).getByLabel("costs at most").press("Enter");
  await goals(bench).getByText("This is no price. Write it like").waitFor();
  assert.equal(await bench.tally(), before);
  assert.equal(await bench.isShut("Order"), false);
  await bench.header("Undo").click();
  assert.equal(await goals(bench).getByLabel("costs at most").inputValue(), "");
  await bench.close();
});
