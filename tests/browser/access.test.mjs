// For every person: automatic rules of WCAG 2.2 in several states, the keyboard, narrow windows.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { ADA, Bench, browser } from "./page.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let chrome;
before(async () => { chrome = await browser(); });
after(() => chrome.close());

async function violations(bench) {
  // Advice that is being renewed is faded for that moment, however long it takes a busy machine.
  await bench.page.waitForFunction(() => document.querySelector(".old .notice:not(.stop)") === null);
  // Evaluated by the debugger, so the page's content security policy stays as it is.
  await bench.page.evaluate(axe);
  const found = await bench.page.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    const { violations } = await globalThis.axe.run(document, { runOnly: tags });
    // What the strip or the picture lies over can be scrolled free of it.
    const over = [...document.querySelectorAll(".tally, .stage")].map((bar) => bar.getBoundingClientRect());
    const isCut = ({ target }) => {
      const own = document.querySelector(target.join(" ")).getBoundingClientRect();
      return over.some((bar) => own.top < bar.bottom && own.bottom > bar.top && own.left < bar.right && own.right > bar.left);
    };
    const told = violations.map(({ id, nodes }) => {
      const broken = nodes.filter((node) => id !== "target-size" || !isCut(node));
      return broken.length > 0 ? `${id}: ${broken.map((node) => node.target.join(" ")).join(", ")}` : "";
    });
    return told.filter((rule) => rule !== "");
  });
  return found;
}

/** The states of the page, each with what leads to it from the one before. */
const STATES = {
  "as it begins": async () => {},
  "an answer explained that does not go alone": async (bench) => {
    await bench.question("Device in bay 1").getByRole("radio", { name: "Receiver", exact: true }).click();
    await bench.page.getByRole("button", { name: /^Take this\b/ }).waitFor();
  },
  "an answer explained that is shut, and kept ones": async (bench) => {
    await bench.button("Keep depth").click();
    await bench.page.locator("[aria-describedby=key-shut]").first().waitFor();
    await bench.question("Device in bay 1").getByRole("radio", { name: "Receiver", exact: true }).click();
    await bench.page.getByText("You keep the depth").waitFor();
    await bench.button("Keep depth").click();
  },
  "notices with their grounds": async (bench) => {
    for (const why of await bench.page.locator("#questions summary").all()) await why.click();
  },
  "a link to skip that has the focus": (bench) => bench.page.locator("#question-place .skip").focus(),
  "the unit going together": async (bench) => {
    if (await bench.button("More").isVisible()) await bench.button("More").click();
    await bench.button("Build it up").click();
    await bench.page.locator(".build p:not(:empty)").waitFor();
  },
  "the drawing": async (bench) => {
    await bench.button("Build it up").click();
    await bench.button("Section").click();
  },
  "the link": async (bench) => {
    await bench.button("Link").click();
    await bench.page.getByRole("dialog").waitFor();
  },
  "an entry that cannot be read": async (bench) => {
    await bench.page.keyboard.press("Escape");
    await bench.type("Height", "tall");
  },
  "findings": async (bench) => {
    await bench.type("Height", "520");
    await bench.type("Width", "5000");
    await bench.page.locator(".notice.stop .remedy").first().waitFor();
  },
  "the order": async (bench) => {
    await bench.button("Make it 2\u202f400 mm wide").first().click();
    await bench.button("Order").click();
    await bench.dialog.waitFor();
  },
  "an order that was not written": async (bench) => {
    const long = { ...ADA, "Address, up to six lines": "1\n2\n3\n4\n5\n6\n7" };
    for (const [label, text] of Object.entries(long)) await bench.dialog.getByLabel(label).fill(text);
    await bench.save();
    await bench.dialog.locator("#order-told.stop").waitFor();
  },
  "a message that stays on the page": async (bench) => {
    await bench.page.keyboard.press("Escape");
    await bench.page.locator("input[type=file]").setInputFiles({ name: "x.bin", mimeType: "application/json", buffer: Buffer.alloc(0) });
    await bench.page.locator(".banner:not(#news) p:not(:empty)").waitFor();
  },
};

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1440, 360, 320]) {
    test(`no automatic rule is broken in any state at ${width} px, ${colorScheme}`, async () => {
      const bench = await Bench.open(chrome, { colorScheme, viewport: { width, height: 900 }, reducedMotion: "reduce" });
      for (const [state, lead] of Object.entries(STATES)) {
        await lead(bench);
        assert.deepEqual(await violations(bench), [], state);
      }
      await bench.close();
    });
  }
}

test("what stands in an empty field can be read", async () => {
  for (const colorScheme of ["light", "dark"]) {
    const bench = await Bench.open(chrome, { colorScheme });
    const contrast = await bench.page.getByRole("textbox", { name: "Free wall" }).evaluate((input) => {
      const light = (colour) => {
        const parts = colour.match(/[\d.]+/g).slice(0, 3).map((part) => part / 255);
        const [red, green, blue] = parts.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05;
      };
      const own = getComputedStyle(input, "::placeholder");
      const [ink, paper] = [light(own.color), light(getComputedStyle(input).backgroundColor)];
      return own.opacity === "1" ? Math.max(ink, paper) / Math.min(ink, paper) : 0;
    });
    assert.ok(contrast >= 4.5, `${contrast} to 1, ${colorScheme}`);
    await bench.close();
  }
});

test("names say each thing once, units and problems are descriptions, headings go down in order", async () => {
  const bench = await Bench.open(chrome);
  await bench.type("Width", "wide");
  const client = await bench.page.context().newCDPSession(bench.page);
  const { nodes } = await client.send("Accessibility.getFullAXTree");
  const tree = nodes.filter((node) => !node.ignored).map(({ role, name, description, properties = [] }) => ({
    role: role.value, name: name?.value ?? "", description: description?.value ?? "",
    level: properties.find((property) => property.name === "level")?.value.value,
  }));
  const find = (role, name) => tree.find((node) => node.role === role && node.name === name) ?? assert.fail(`no ${role} ${name}`);
  assert.match(find("textbox", "Width").description, /^mm This is no size\./);
  assert.equal(find("textbox", "Free wall").description, "mm");
  assert.equal(find("textbox", "costs at most").description, "EUR");
  assert.equal(find("slider", "Width").description, "");
  // What the browser puts into a field for days is its own.
  for (const { name } of tree.filter(({ name }) => !/date picker|^(Day|Month|Year)\b/.test(name)).filter(({ role }) => !["StaticText", "InlineTextBox", "image", "paragraph"].includes(role))) {
    const words = name.toLowerCase().replaceAll(/[^a-z ]/g, "").split(" ").filter((word) => word.length > 4);
    assert.ok(words.length > 12 || new Set(words).size === words.length, name);
  }
  const levels = tree.filter(({ role }) => role === "heading").map(({ level }) => level);
  assert.equal(levels.filter((level) => level === 1).length, 1);
  levels.forEach((level, at) => assert.ok(level <= (levels[at - 1] ?? 0) + 1, levels.join()));
  for (const role of ["banner", "main", "contentinfo"]) assert.equal(tree.filter((node) => node.role === role).length, 1, role);
  assert.deepEqual(tree.filter(({ role }) => role === "region").map(({ name }) => name), ["Drawing", "Questions"]);
  await bench.close();
});

test("nothing scrolls sideways at 320 px", async () => {
  const bench = await Bench.open(chrome, { viewport: { width: 320, height: 700 } });
  const [inner, content] = await bench.page.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
  assert.ok(content <= inner, `${content} px of content in ${inner} px`);
  await bench.close();
});

test("the focus returns to what opened the order", async () => {
  const bench = await Bench.open(chrome);
  await bench.button("Order").press("Enter");
  await bench.dialog.waitFor();
  await bench.page.keyboard.press("Escape");
  await bench.dialog.waitFor({ state: "hidden" });
  assert.ok(await bench.button("Order").evaluate((element) => element === document.activeElement));
  await bench.close();
});

test("a press on a bay of the drawing looks at that bay", async () => {
  const bench = await Bench.open(chrome);
  await bench.button("Sheet").click();
  await bench.page.locator(".drawing [data-bay='3']").first().click();
  await bench.page.getByText("Bay 3 holds", { exact: true }).waitFor();
  await bench.close();
});
