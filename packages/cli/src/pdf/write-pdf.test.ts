import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askPoppler, hasPoppler } from '../rendering/poppler.test.support.js';
import { anyName } from '../template/random-template.test.support.js';
import { sampleSheet } from './sample-sheet.test.support.js';
import { writePdf } from './write-pdf.js';

const mustRun = process.env.CI !== undefined;

describe('the PDF of a job sheet', () => {
  it('is the same bytes each time', async () => {
    const [one, other] = [
      await writePdf(sampleSheet('Heart'), 'a4'),
      await writePdf(sampleSheet('Heart'), 'a4'),
    ];
    expect(Buffer.compare(one, other)).toBe(0);
  });

  it('has no date', async () => {
    const text = Buffer.from(await writePdf(sampleSheet('Heart'), 'a4')).toString('latin1');
    expect(text).not.toMatch(/CreationDate|ModDate|\(D:/);
  });
});

describe.skipIf(!hasPoppler && !mustRun)('the PDF of a job sheet, as Poppler reads it', () => {
  it.each([
    ['a4', /^Page size: +595\.27\d x 841\.8\d+ pts \(A4\)$/m],
    ['letter', /^Page size: +612 x 792 pts \(letter\)$/m],
  ] as const)('is on %s, and has its title', async (paper, size) => {
    const info = askPoppler('info', await writePdf(sampleSheet('Heart & “Żółć”'), paper));
    expect(info).toMatch(size);
    expect(info).toMatch(/^Title: +Heart & “Żółć”$/m);
  });

  it('brings its fonts', async () => {
    const fonts = askPoppler('fonts', await writePdf(sampleSheet('Heart'), 'a4'));
    const rows = fonts.trim().split('\n').slice(2);
    expect(rows).toHaveLength(2);
    // Embedded, a subset, and with a map back to letters.
    for (const row of rows) expect(row).toMatch(/DejaVuSans.* yes yes yes /);
  });

  it('says its headings again on each page of a table, and numbers its pages', async () => {
    const text = askPoppler('text', await writePdf(sampleSheet('Heart'), 'a4'));
    const pages = text.split('\f').slice(0, -1);
    const withRows = pages.filter((page) => /Heart \d+ +\d+$/m.test(page));
    expect(withRows.length).toBeGreaterThan(1);
    for (const page of withRows) expect(page).toMatch(/^ *Sheet +Count$/m);
    pages.forEach((page, index) => {
      expect(page).toContain(`page ${index + 1} of ${pages.length}`);
    });
    const counts = [...text.matchAll(/^ *Heart (\d+) +\1$/gm)].map((match) => Number(match[1]));
    expect(counts).toEqual(Array.from({ length: 120 }, (_, row) => row));
  });

  it('parts no sum from the last rows of its table, and no title from the table below its caution', async () => {
    const seen = { parted: 0, moved: 0 };
    for (let length = 36; length < 62; length++) {
      const rows = Array.from({ length }, (_, row) => [`Row ${row}`, `${row}`]);
      const columns = [
        { heading: 'Sheet', align: 'left' },
        { heading: 'Count', align: 'right' },
      ] as const;
      const long = { kind: 'table', columns, rows: [...rows, ['Total', '']], sums: 1 } as const;
      const short = { kind: 'table', columns, rows: [['Below', '1']] } as const;
      const caution = { kind: 'caution', lines: ['Edges cut.'] } as const;
      const sections = [
        { id: 'long', title: 'Long', onNewPage: true, blocks: [long] },
        { id: 'short', title: 'Titled', onNewPage: false, blocks: [caution, short] },
      ];
      const sheet = { title: 'Rows', summary: [], key: 'key', sections };
      const pages = askPoppler('text', await writePdf(sheet, 'a4')).split('\f');
      const pageOf = (word: string) => pages.findIndex((page) => page.includes(word));
      const rowsOn = (page: number) => pages[page]?.match(/^ *Row /gm)?.length ?? 0;
      expect(rowsOn(pageOf('Total'))).toBeGreaterThanOrEqual(2);
      expect(pageOf('Below')).toBe(pageOf('Titled'));
      if (pageOf('Total') !== pageOf('Row 0 ')) seen.parted++;
      if (pageOf('Titled') !== pageOf('Total')) seen.moved++;
    }
    expect(seen.parted).toBeGreaterThan(3);
    expect(seen.moved).toBeGreaterThan(1);
  });

  it.each([
    ['nearly as high as a page', 255, 0, 0],
    ['wide and low', 60, 0, 0],
    ['that would be much smaller below long words', 255, 20, 1],
  ])('puts a picture %s below its title where it can', async (_, height, lines, pagesOn) => {
    const words = Array.from({ length: lines }, () => ({ kind: 'words', text: 'words' }) as const);
    const drawing = { title: 'map', description: '', hatches: [], layers: [] };
    const picture = {
      kind: 'picture',
      trueScale: false,
      caption: 'Below the picture',
      drawing: { ...drawing, page: { x: 0, y: 0, width: 190, height } },
    } as const;
    const section = { id: 'map', title: 'Above the picture', onNewPage: true };
    const sections = [{ ...section, blocks: [...words, picture] }];
    const sheet = { title: '', summary: [], key: 'key', sections };
    const pages = askPoppler('text', await writePdf(sheet, 'letter')).split('\f');
    const above = pages.findIndex((text) => text.includes('Above the picture'));
    const below = pages.findIndex((text) => text.includes('Below the picture'));
    expect(above).toBeGreaterThan(0);
    expect(below - above).toBe(pagesOn);
  });

  it.each([
    ['accents', 'Żółć łąka Ångström'],
    ['Greek', 'Καρδιά μεγάλη'],
    ['Cyrillic', 'Пряник большой'],
  ])('shows %s', async (_, name) => {
    const text = askPoppler('text', await writePdf(sampleSheet(name), 'letter'));
    expect(text).toContain(`What to buy for ${name}`);
    expect(text).not.toContain('\uFFFD');
  });

  it.each([
    ['Hebrew', 'עוגיה'],
    ['Arabic', 'قلب'],
    ['its numbers', '١٢'],
  ])('shows %s', async (_, name) => {
    const text = askPoppler('text', await writePdf(sampleSheet(`قلب ${name} heart`), 'letter'));
    // Poppler puts what reads from right to left back in the order it is spoken.
    expect(text.normalize('NFKC')).toContain(name);
  });

  it('shows in place of a letter that it has not that it is missing', async () => {
    const text = askPoppler('text', await writePdf(sampleSheet('日本 heart'), 'letter'));
    expect(text).toContain('\uFFFD\uFFFD heart');
  });

  it('keeps every word on its page, whatever the order is called', {
    timeout: 600_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(anyName, fc.constantFrom('a4', 'letter'), async (name, paper) => {
        const boxes = askPoppler('boxes of words', await writePdf(sampleSheet(name), paper));
        let [pageWidth, pageHeight] = [0, 0];
        let words = 0;
        for (const line of boxes.split('\n')) {
          const page = /<page width="([\d.]+)" height="([\d.]+)">/.exec(line);
          if (page !== null) [pageWidth, pageHeight] = [Number(page[1]), Number(page[2])];
          const word = /<word xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">/.exec(line);
          if (word === null) continue;
          words++;
          const [left = 0, top = 0, right = 0, foot = 0] = word.slice(1).map(Number);
          // Points; the margins are wider.
          const text = [line, left > 15, right < pageWidth - 15, top > 15, foot < pageHeight - 10];
          expect(text).toEqual([line, true, true, true, true]);
        }
        expect(words).toBeGreaterThan(100);
      }),
      { numRuns: 40 },
    );
  });
});
