import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import type { GreyImage } from './image.test.support.js';
import { readPng } from './png.test.support.js';

/** CSS has 96 px to the inch (CSS Values and Units 3, 5.2). */
const PIXELS = 96 / 25.4;

/** An SVG file as Chromium shows it. @param scale pixels of the screen for one of CSS */
export async function renderSvg(browser: Browser, svg: string, scale: number): Promise<GreyImage> {
  const viewport = { width: Math.ceil(190 * PIXELS), height: Math.ceil(255 * PIXELS) };
  const page = await browser.newPage({ deviceScaleFactor: scale, viewport });
  try {
    await openSvg(page, svg);
    return readPng(await page.screenshot(), PIXELS * scale);
  } finally {
    await page.close();
  }
}

async function openSvg(page: Page, svg: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'stripwright-'));
  try {
    const file = join(folder, 'drawing.svg');
    writeFileSync(file, svg);
    await page.goto(pathToFileURL(file).href);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Boxes of the texts of an SVG as Chromium sets them, in its millimetres. */
export async function measureInChromium(page: Page, svg: string) {
  await page.setContent(`<body style="margin:0">${svg.replace(/^<\?xml.*\?>\s*/u, '')}`);
  const boxes = await page.evaluate(TEXT_BOXES);
  return boxes.map(({ text, box }) => {
    const [x = 0, y = 0, width = 0, height = 0] = box.map((pixels) => pixels / PIXELS);
    return { text, box: { x, y, width, height } };
  });
}

/** Runs in the page, where there are types of the DOM that Node has not. */
const TEXT_BOXES = `[...document.querySelectorAll('svg text')].map((element) => {
  const { x, y, width, height } = element.getBoundingClientRect();
  return { text: element.textContent ?? '', box: [x, y, width, height] };
})` as unknown as () => readonly { readonly text: string; readonly box: readonly number[] }[];
