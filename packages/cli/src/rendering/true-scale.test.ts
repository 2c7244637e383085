import { describe, expect, it } from 'vitest';
import { writeSvg } from '../drawing/svg-sink.js';
import type { JobSheet } from '../job-sheet/job-sheet.js';
import { writePdf } from '../pdf/write-pdf.js';
import { seventeenInches } from '../template/seventeen-inches.test.support.js';
import { templatePages } from '../template/template-pages.js';
import { findCheckMarks } from './check-marks.test.support.js';
import { describeInChromium } from './chromium.test.support.js';
import type { GreyImage } from './image.test.support.js';
import { hasPoppler, renderPdf, renderPdfOnWholePixels } from './poppler.test.support.js';
import { findStripPiece } from './strip-piece.test.support.js';
import { renderSvg } from './svg-in-chromium.test.support.js';

// The figures below are measured in the pixels of rendered pages, at a resolution that is chosen
// here; nothing of how the pages were drawn is read. 50 mm, 2 in = 50.8 mm and 17 in = 431.8 mm.

const mustRun = process.env.CI !== undefined;
const RESOLUTION = 300;
const SCREEN_SCALE = 4;

const drawings = templatePages(seventeenInches());

const sheet: JobSheet = {
  title: 'Seventeen inches',
  summary: [],
  key: 'none',
  sections: [
    {
      id: 'template-1',
      title: 'Template',
      onNewPage: true,
      blocks: drawings.map((drawing) => ({ kind: 'picture', drawing, trueScale: true })),
    },
  ],
};

/** What a length comes out as may be off by half a pixel. */
function expectWithin(measured: number, length: number, image: GreyImage, pixels = 0.5): void {
  expect(Math.abs(measured - length)).toBeLessThan(pixels / image.dotsPerMillimetre);
}

function expectTrueMarks(image: GreyImage, pixels = 0.5): void {
  const { wide, high, bar } = findCheckMarks(image);
  expectWithin(wide, 50, image, pixels);
  expectWithin(high, 50, image, pixels);
  expectWithin(bar, 50.8, image, pixels);
}

/** Two pages laid join on join. Each of the two pieces may be off by half a pixel. */
function expectSeventeenInches([first, second]: readonly GreyImage[]): void {
  if (first === undefined || second === undefined) throw new Error('expected two pages');
  const [one, other] = [findStripPiece(first), findStripPiece(second)];
  const upToJoin = (one.joins.at(-1) ?? Number.NaN) - (one.ends[0] ?? Number.NaN);
  const fromJoin = (other.ends.at(-1) ?? Number.NaN) - (other.joins[0] ?? Number.NaN);
  expectWithin(upToJoin + fromJoin, 431.8, first, 1);
  // Bends inward are whole lines; here they are 1 5/8 in apart.
  const bends = one.ends.slice(0, 6);
  expect(bends).toHaveLength(6);
  bends.slice(1).forEach((bend, index) => {
    expectWithin(bend - (bends[index] ?? Number.NaN), 1.625 * 25.4, first);
  });
}

describe.skipIf(!hasPoppler && !mustRun)('a PDF rendered by Poppler', () => {
  it.each(['a4', 'letter'] as const)('is true to scale on %s', async (paper) => {
    const pages = renderPdf(await writePdf(sheet, paper), RESOLUTION);
    const [width, height] = paper === 'a4' ? [210, 297] : [215.9, 279.4];
    // Of the title, and of the section, whose pages are whole.
    const templates = pages.slice(-2);
    expect(pages.length).toBeGreaterThan(2);
    for (const image of templates) {
      expect(image.width / image.dotsPerMillimetre).toBeCloseTo(width, 0);
      expect(image.height / image.dotsPerMillimetre).toBeCloseTo(height, 0);
      expectTrueMarks(image);
    }
    expectSeventeenInches(templates);
  });

  it.each(['a4', 'letter'] as const)(
    'is so on %s where lines are moved to whole pixels',
    async (paper) => {
      const pages = renderPdfOnWholePixels(await writePdf(sheet, paper), RESOLUTION);
      // Each of the two lines is moved by half a pixel at most.
      for (const image of pages.slice(-2)) expectTrueMarks(image, 1);
    },
  );
});

describeInChromium('an SVG shown by Chromium', (browser) => {
  it('is true to scale', async () => {
    const images: GreyImage[] = [];
    for (const drawing of drawings) {
      images.push(await renderSvg(browser(), writeSvg(drawing), SCREEN_SCALE));
    }
    expect(images).toHaveLength(2);
    for (const image of images) expectTrueMarks(image);
    expectSeventeenInches(images);
  });
});
