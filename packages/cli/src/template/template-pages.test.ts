import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drawing, Mark, TextMark } from '../drawing/drawing.js';
import { holds, overlaps, readSvg } from '../drawing/read-svg.test.support.js';
import { writeSvg } from '../drawing/svg-sink.js';
import { TRUE_PAGE } from '../job-sheet/job-sheet.js';
import { describeInChromium } from '../rendering/chromium.test.support.js';
import { measureInChromium } from '../rendering/svg-in-chromium.test.support.js';
import { anyTemplate } from './random-template.test.support.js';
import { templatePages } from './template-pages.js';

const marksOf = ({ layers }: Drawing): readonly Mark[] => layers.flatMap(({ marks }) => marks);
const textsOf = (drawing: Drawing): readonly TextMark[] =>
  marksOf(drawing).filter((mark): mark is TextMark => mark.kind === 'text');

describe('templates of any cutter', () => {
  it('keep all words apart and on the page, by the widths of a wide face', () => {
    fc.assert(
      fc.property(anyTemplate, (template) => {
        for (const drawing of templatePages(template)) {
          const { page } = drawing;
          expect(page.width).toBeLessThanOrEqual(TRUE_PAGE.width);
          expect(page.height).toBeLessThanOrEqual(TRUE_PAGE.height);
          const texts = textsOf(drawing);
          const boxes = texts.map(({ box }) => box);
          expect(overlaps(boxes, 0.01).map((pair) => pair.map((at) => texts[at]?.text))).toEqual(
            [],
          );
          for (const { box, text } of texts)
            expect([text, holds(page, box, 0.01)]).toEqual([text, true]);
          const frames = marksOf(drawing).flatMap((mark) =>
            mark.kind === 'rect' && mark.role?.endsWith('-frame') === true ? [mark.box] : [],
          );
          expect(overlaps(frames, 0.01)).toEqual([]);
          for (const frame of frames) expect(holds(page, frame, 0.2)).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('tell every bend and every curve end once among their labels', () => {
    fc.assert(
      fc.property(anyTemplate, (template) => {
        const { strip } = template.shape;
        const pages = templatePages(template);
        const across = new Set(pages.flatMap((page) => textsOf(page)));
        const labels = [...across].filter(({ role }) => role === 'mark').map(({ text }) => text);
        // A strip that takes several pages side by side is labelled on each.
        const columns = labels.filter((text) => text === 'far end').length;
        const folds = labels.filter((text) => text.startsWith('fold '));
        expect(folds).toHaveLength(columns * strip.bends.length);
        const ends = labels.filter((text) => / ends$/.test(text) && text.startsWith('c'));
        expect(ends).toHaveLength(columns * strip.curves.length);
      }),
    );
  });

  it('are well-formed, with title and description', () => {
    fc.assert(
      fc.property(anyTemplate, (template) => {
        for (const drawing of templatePages(template)) {
          const [root, title, description] = readSvg(writeSvg(drawing));
          expect([root?.name, title?.name, description?.name]).toEqual(['svg', 'title', 'desc']);
          expect(title?.text).toContain(`Template ${template.number}: `);
          expect(description?.text).toContain(`${template.shape.strip.bends.length} bends`);
        }
      }),
    );
  });
});

describeInChromium('in Chromium', (browser) => {
  it('keep all words apart and on the page, as it sets them', async () => {
    const page = await browser().newPage();
    const templates = fc.sample(anyTemplate, 300);
    const faults: unknown[] = [];
    for (const template of templates) {
      for (const drawing of templatePages(template)) {
        const measured = await measureInChromium(page, writeSvg(drawing));
        const boxes = measured.map(({ box }) => box);
        for (const [one = 0, other = 0] of overlaps(boxes, 0.05)) {
          faults.push([template.name, measured[one]?.text, measured[other]?.text]);
        }
        for (const { text, box } of measured) {
          if (!holds(drawing.page, box, 0.05)) faults.push([template.name, text, box]);
        }
      }
    }
    expect(faults).toEqual([]);
    // Some six hundred pages, in a browser.
  }, 600_000);
});
