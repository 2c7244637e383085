import { describe, expect, it } from 'vitest';
import type { Drawing, Mark } from '../../drawing/drawing.js';
import { describeInChromium } from '../../rendering/chromium.test.support.js';
import { type Block, type JobSheet, type Section, TRUE_PAGE } from '../job-sheet.js';
import {
  type Paper,
  pageTexts,
  printed,
  type Raster,
  rasters,
  topWords,
} from './printed.test.support.js';
import { demoSheet, fileOf, hostileSheet, orderOf, sheetOf } from './sheets.test.support.js';

const PAPERS: readonly Paper[] = ['A4', 'Letter'];

describeInChromium('a printed job sheet', (browser) => {
  describe.each(PAPERS)('on %s', (paper) => {
    const pagesOf = async (sheet: JobSheet) =>
      pageTexts(await printed(browser(), fileOf(sheet), paper));

    it('has the pages that its sections and pictures ask for', async () => {
      const pages = await pagesOf(
        packetOf([
          section('first', false, [words('to begin with')]),
          section('second', true, [words('on a page'), picture('whole', TRUE_PAGE)]),
          section('third', true, [picture('alone', TRUE_PAGE), picture('next', TRUE_PAGE)]),
          section('fourth', false, [words('after pictures')]),
          section('fifth', false, [words('and on the same page')]),
          section('sixth', true, [picture('small', { width: 100, height: 60 }), words('below it')]),
        ]),
      );
      const places = pages.map((lines) => lines.join(' '));
      expect(places).toHaveLength(7);
      expect(places[0]).toMatch(/^JOB SHEET Test .* Title of first to begin with$/);
      expect(places[1]).toBe('Title of second on a page');
      expect(places[2]).toBe('Title of second drawn: whole');
      expect(places[3]).toBe('Title of third drawn: alone');
      expect(places[4]).toBe('Title of third drawn: next');
      expect(places[5]).toBe('Title of fourth after pictures Title of fifth and on the same page');
      expect(places[6]).toBe('Title of sixth drawn: small below it');
    });

    it('repeats the heads of a long table, and splits no row of it', async () => {
      const rows = Array.from({ length: 120 }, (_, index) => [
        `row ${index}`,
        'two lines '.repeat(20),
      ]);
      const columns = ['Heading', 'Other'].map((heading) => ({ heading, align: 'left' as const }));
      const pages = await pagesOf(
        packetOf([section('long', true, [{ kind: 'table', caption: 'Long', columns, rows }])]),
      );
      const ofTable = pages.filter((lines) => lines.some((line) => /^row \d+/.test(line)));
      expect(ofTable.length).toBeGreaterThan(3);
      for (const lines of ofTable) {
        const head = lines.indexOf('Heading Other');
        expect(head).toBeGreaterThanOrEqual(0);
        expect(lines[head + 1]).toMatch(/^row \d+ two lines/);
      }
      const found = ofTable.flat().filter((line) => /^row \d+/.test(line));
      expect(found).toHaveLength(rows.length);
    });

    it('splits no step, no caution and no picture', async () => {
      const numbers = Array.from({ length: 40 }, (_, index) => 100 + index);
      const blocks = numbers.flatMap((number): readonly Block[] => [
        {
          kind: 'steps',
          steps: [{ id: `s${number}`, text: `begin s${number}`, detail: filler(`s${number}`) }],
        },
        { kind: 'caution', lines: [`begin c${number}`, filler(`c${number}`)] },
        picture(`p${number}`, { width: 90, height: number - 30 }, `end p${number}`),
      ]);
      const pages = await pagesOf(packetOf([section('parts', true, blocks)]));
      for (const number of numbers) {
        for (const kind of ['begin s', 'begin c', 'drawn: p']) {
          const [start, end] = [`${kind}${number}`, `end ${kind.slice(-1)}${number}`];
          const own = pages
            .map((lines) => lines.join(' '))
            .filter((text) => text.includes(start) || text.includes(end));
          expect(own).toHaveLength(1);
          expect(own[0]).toContain(start);
          expect(own[0]).toContain(end);
        }
      }
    });

    it.each<[string, () => Promise<JobSheet>]>([
      ['the demo order', () => demoSheet('inch')],
      ['an order of 40 layouts', () => sheetOf(orderOf(40))],
      ['an order of hostile names', hostileSheet],
    ])('begins a page with each cut map, and leaves none empty: %s', async (_name, make) => {
      const sheet = await make();
      const pdf = await printed(browser(), fileOf(sheet), paper);
      const [pages, tops] = [await pageTexts(pdf), await topWords(pdf)];
      expect(pages.filter((lines) => lines.length < 2)).toEqual([]);
      const begun = sheet.sections.filter(({ onNewPage }) => onNewPage);
      expect(begun.length).toBeGreaterThanOrEqual(8);
      // The name of the work stands before the title; names of all kinds come after the colon.
      for (const { title } of begun) {
        const [start = ''] = title.split(':');
        const own = tops.filter((top) =>
          new RegExp(`^(?:\\d+ [A-Z][a-z ]+ )?${start}\\b`).test(top),
        );
        expect([start, own.length > 0]).toEqual([start, true]);
      }
      const maps = sheet.sections.filter(({ id }) => id.startsWith('layout-'));
      expect(maps.length).toBeGreaterThanOrEqual(8);
      maps.forEach((_, index) => {
        const beginning = `Layout ${index + 1} of ${maps.length}: cut \\d+ of `;
        const own = tops.filter((top) => new RegExp(`^(?:\\d+ Shear )?${beginning}`).test(top));
        expect(own).toHaveLength(1);
      });
    });

    it('prints the true millimetre: the check square is 50.0 mm', async () => {
      const blocks = [picture('small', { width: 120, height: 80 }), picture('large', TRUE_PAGE)];
      const pdf = await printed(
        browser(),
        fileOf(packetOf([section('true', true, blocks)])),
        paper,
      );
      const pages = (await rasters(pdf, DPI))
        .map(squareIn)
        .filter((square) => square !== undefined);
      expect(pages).toHaveLength(2);
      const pixel = 25.4 / DPI;
      for (const { width, height } of pages) {
        expect(Math.abs(width - 50)).toBeLessThanOrEqual(pixel);
        expect(Math.abs(height - 50)).toBeLessThanOrEqual(pixel);
      }
    });
  });

  it('prints black on white, whatever the screen is like', async () => {
    const pdf = await printed(browser(), fileOf(await sheetOf(orderOf(1))), 'A4');
    const [first] = await rasters(pdf, 50);
    const white = first?.grey.filter((grey) => grey > 250).length ?? 0;
    expect(white / (first?.grey.length ?? 1)).toBeGreaterThan(0.7);
  });
});

const DPI = 300;

const words = (text: string): Block => ({ kind: 'words', text });

const section = (id: string, onNewPage: boolean, blocks: readonly Block[]): Section => ({
  id,
  title: `Title of ${id}`,
  onNewPage,
  blocks,
});

/** Some lines, so that a page may end within. */
const filler = (name: string): string => `${'many words '.repeat(60)}end ${name}`;

const packetOf = (sections: readonly Section[]): JobSheet => ({
  title: 'Test',
  summary: [],
  key: 'k',
  sections,
});

/** At true scale: its name, and a black square of 50 mm with its left upper corner 20 mm inside. */
function picture(
  name: string,
  size: { readonly width: number; readonly height: number },
  foot = '',
): Block {
  const page = { x: 0, y: 0, ...size };
  const text = (said: string, y: number): Mark => ({
    kind: 'text',
    role: 'name',
    text: said,
    at: { x: 20, y },
    anchor: 'start',
    size: 4,
    bold: false,
    upright: false,
    colour: '#000000',
    box: page,
    room: page,
  });
  const drawing: Drawing = {
    title: name,
    description: name,
    page,
    hatches: [],
    layers: [
      {
        name: 'all',
        marks: [
          { kind: 'rect', box: { x: 20, y: 20, width: 50, height: 50 }, fill: '#000000' },
          text(`drawn: ${name}`, 15),
          text(foot, size.height - 0.5),
        ],
      },
    ],
  };
  return { kind: 'picture', drawing, trueScale: true };
}

/**
 * The black square of a page in millimetres, from its pixels: the runs of black through its
 * middle, with the grey pixels at their ends counted by their darkness.
 */
function squareIn({ width, height, grey }: Raster) {
  const at = (x: number, y: number) => (255 - (grey[y * width + x] ?? 255)) / 255;
  const least = (40 / 25.4) * DPI;
  const longest = (length: number, ink: (index: number) => number) => {
    let best = { sum: 0, middle: 0 };
    let sum = 0;
    for (let index = 0; index <= length; index += 1) {
      const dark = index < length ? ink(index) : 0;
      sum += dark;
      if (dark > 0.02) continue;
      if (sum > best.sum) best = { sum, middle: Math.round(index - sum / 2) };
      sum = 0;
    }
    return best;
  };
  for (let y = 0; y < height; y += 50) {
    const across = longest(width, (x) => at(x, y));
    if (across.sum < least || across.sum > 1.5 * least) continue;
    const down = longest(height, (row) => at(across.middle, row));
    if (down.sum < least) continue;
    return { width: (across.sum / DPI) * 25.4, height: (down.sum / DPI) * 25.4 };
  }
  return undefined;
}
