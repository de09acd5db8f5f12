// HTML papers as a browser shows them: node look.mjs FILE...
// Each page in light and in dark, on a phone and on a wide screen; axe-core says who could not read it. On a phone nothing but what is
// meant to scroll is wider than the screen. One line a fault; the last line sums up. Ends with 1 when there is a fault.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { cpus } from "node:os";
import { basename, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

// The tools lie in the build folder, not beside this file.
const from_tools = createRequire(join(process.env.PAGE_TOOLS, "package.json"));
const { chromium } = from_tools("playwright-core");
const axe = readFileSync(from_tools.resolve("axe-core/axe.min.js"), "utf8");

const kPhone_px = 360;
const kScreens = [
  { name: "phone", width: kPhone_px, height: 740 },
  { name: "wide", width: 1280, height: 900 },
];
const kLeastContrast = 4.5; // to 1, for words of ordinary size: WCAG 2.2, 1.4.3
const kSchemes = ["light", "dark"];

// Runs in the page: how wide it is, and what sticks out without standing in something that scrolls.
function measured(width_px) {
  const scrolls = (element) => {
    for (let up = element; up; up = up.parentElement)
      if (["auto", "scroll"].includes(getComputedStyle(up).overflowX) && up !== document.body) return true;
    return false;
  };
  const wide = [...document.body.querySelectorAll("*")].filter(
    (element) => element.getBoundingClientRect().right > width_px + 0.5 && !scrolls(element) && !element.closest("svg svg, svg *"));
  return {
    page_px: document.scrollingElement.scrollWidth,
    scheme: matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light",
    empty: [...document.images].filter((image) => image.naturalWidth === 0).map((image) => image.alt),
    wide: wide.slice(0, 3).map((element) => element.outerHTML.slice(0, 100)),
  };
}

// Runs in the page, once: the contrast of two colours. WCAG 2.2, 1.4.3, and its definitions of relative luminance and contrast ratio.
function know_contrast() {
  const luminance = (colour) => {
    const parts = colour.match(/[\d.]+/g).slice(0, 3).map((part) => part / 255);
    const [r, g, b] = parts.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  window.contrast = (a, b) => {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };
}

// Runs in the page. axe leaves letters in a drawing undecided, since what lies behind them is a shape: each is held against the page and
// against the filling of every shape it touches.
function unreadable_letters(least) {
  const touch = (a, b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
  const said = [];
  for (const letters of document.querySelectorAll("svg text")) {
    const box = letters.getBoundingClientRect();
    const behind = [getComputedStyle(document.body).backgroundColor];
    for (const shape of letters.ownerSVGElement.querySelectorAll("polygon, polyline")) {
      const fill = getComputedStyle(shape).fill;
      if (fill !== "none" && touch(box, shape.getBoundingClientRect())) behind.push(fill);
    }
    const worst = Math.min(...behind.map((colour) => contrast(getComputedStyle(letters).fill, colour)));
    if (!(worst >= least)) said.push(`${worst.toFixed(2)} to 1: ${letters.outerHTML.slice(0, 100)}`);
  }
  return said;
}

// Runs in the page. Of what axe could not decide, words in a table that is moved sideways can be judged by their colour and the page's.
async function judged(least) {
  const found = await axe.run(document, { resultTypes: ["violations", "incomplete"] });
  const brief = (rule, nodes = rule.nodes) => ({ id: rule.id, help: rule.help, nodes: nodes.map((node) => node.html.slice(0, 120)) });
  const page = getComputedStyle(document.body).backgroundColor;
  const lies_on_the_page = (element) => {
    for (let up = element; up && up !== document.body; up = up.parentElement) {
      const style = getComputedStyle(up);
      if (style.backgroundColor !== "rgba(0, 0, 0, 0)" || style.backgroundImage !== "none" || style.opacity !== "1") return false;
    }
    return true;
  };
  const is_readable = (node) => {
    const element = document.querySelector(node.target.at(-1));
    if (element.closest("svg")) return true; // unreadable_letters
    return element.closest(".scroll") && lies_on_the_page(element) && contrast(getComputedStyle(element).color, page) >= least;
  };
  return {
    rules: found.passes.length,
    violations: found.violations.map((rule) => brief(rule)),
    // A colour that could not be worked out has not been found to be readable.
    undecided: found.incomplete
      .filter((rule) => rule.id === "color-contrast")
      .map((rule) => brief(rule, rule.nodes.filter((node) => !is_readable(node))))
      .filter((rule) => rule.nodes.length > 0),
  };
}

async function look_at(browser, file) {
  const context = await browser.newContext();
  const page = await context.newPage();
  const faults = [];
  let how = "";
  const say = (what) => faults.push(`${basename(file)}${how}: ${what}`);
  page.on("console", (message) => message.type() === "error" && say(`the browser says: ${message.text()}`));
  page.on("request", (request) => /^(file|data):/.test(request.url()) || say(`asks for ${request.url()}`));
  page.on("dialog", (dialog) => (say(`runs a script: ${dialog.message()}`), dialog.dismiss()));
  await page.goto(pathToFileURL(resolve(file)).href);
  await page.evaluate(axe);
  await page.evaluate(know_contrast);
  for (const scheme of kSchemes)
    for (const screen of kScreens) {
      how = ` ${scheme} ${screen.name}`;
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width: screen.width, height: screen.height });
      const size = await page.evaluate(measured, screen.width);
      if (size.scheme !== scheme) say(`shown in ${size.scheme}`);
      if (size.page_px > screen.width) say(`is ${size.page_px} px wide on a screen of ${screen.width}`);
      for (const element of size.wide) say(`sticks out: ${element}`);
      for (const name of size.empty) say(`a picture is not shown: ${name}`);
      for (const letters of await page.evaluate(unreadable_letters, kLeastContrast)) say(`contrast of ${letters}`);
      const found = await page.evaluate(judged, kLeastContrast);
      if (found.rules === 0) say("no rule of axe had anything to look at");
      for (const rule of [...found.violations, ...found.undecided])
        say(`axe ${rule.id}: ${rule.help}; ${rule.nodes.length} times, first ${rule.nodes[0]}`);
    }
  await context.close();
  return faults;
}

const files = process.argv.slice(2);
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--no-first-run"],
});
// One page for each processor at a time, said in the order of the files.
const found = files.map(() => []);
let next = 0;
const look_on = async () => {
  for (let i = next++; i < files.length; i = next++) found[i] = await look_at(browser, files[i]);
};
try {
  await Promise.all(cpus().map(look_on));
} finally {
  await browser.close();
}
const faults = found.flat();
for (const fault of faults) console.log(fault);
console.log(`${files.length} pages in ${kSchemes.length * kScreens.length} ways: ${faults.length} faults`);
process.exit(files.length > 0 && faults.length === 0 ? 0 : 1);
