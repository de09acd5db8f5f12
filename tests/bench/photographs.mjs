// Twelve photographs as a phone makes them, drawn: node photographs.mjs FOLDER
// WIDE_PX wide (1600) and three quarters as high, JPEG: boards in perspective light with noise on them, since a smooth picture would be too small for its size.
import { createRequire } from "node:module";
import { join } from "node:path";

const { chromium } = createRequire(join(process.env.PAGE_TOOLS, "package.json"))("playwright-core");
const kWide_px = Number(process.env.WIDE_PX ?? 1600), kHigh_px = Math.round(kWide_px * 0.75), kCount = 12;

function draw(number) {
  const canvas = document.querySelector("canvas");
  const pen = canvas.getContext("2d");
  const picture = pen.createImageData(canvas.width, canvas.height);
  let state = number * 2654435761 + 1;
  const chance = () => ((state = (state * 1664525 + 1013904223) >>> 0) / 4294967296);
  for (let y = 0; y < canvas.height; ++y)
    for (let x = 0; x < canvas.width; ++x) {
      const board = (x + number * 37) % 400 < 6 ? -60 : 0;
      const grey = 150 + board + 40 * Math.sin(x / 90 + number) + 25 * Math.cos(y / 70) + 24 * chance();
      picture.data.set([grey + 30, grey + 10, grey - 25, 255], 4 * (y * canvas.width + x));
    }
  pen.putImageData(picture, 0, 0);
}

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: process.env.CHROMIUM_ARGS.split(" ") });
try {
  const page = await browser.newPage({ viewport: { width: kWide_px, height: kHigh_px } });
  await page.setContent(`<canvas width="${kWide_px}" height="${kHigh_px}" style="position:fixed;inset:0"></canvas>`);
  for (let number = 1; number <= kCount; ++number) {
    await page.evaluate(draw, number);
    await page.screenshot({ path: join(process.argv[2], `view_${number}.jpg`), type: "jpeg", quality: 75 });
  }
} finally {
  await browser.close();
}
