import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readSvg } from '../drawing/read-svg.test.support.js';
import { cutMaps } from '../packet/cut-maps.js';
import { anyLayoutPlan } from '../plan-file/random-plan.test.support.js';
import { describeInChromium } from '../rendering/chromium.test.support.js';
import { drawCutMap } from './draw-cut-map.js';
import { measureChanged, measureLabels } from './rendered-map.test.support.js';

const NONE = { overlapping: [], outOfTheirBox: [], offThePage: [] };

/** At so many CSS pixels to the inch (CSS Values and Units 3, 5.2) a millimetre is 3.78 of them. */
const VIEW = { width: 1200, height: 1600 };

describeInChromium('a cut map as Chromium draws it', (browser) => {
  it('has no label on another, out of its box or off the page, for 300 random plans', async () => {
    const page = await browser().newPage({ viewport: VIEW });
    let measured = 0;
    await fc.assert(
      fc.asyncProperty(anyLayoutPlan, async (file) => {
        for (const map of cutMaps(file)) {
          const svg = drawCutMap(map);
          // Well-formed by a parser that is not the browser's, with a title and a description.
          const [root, title, description] = readSvg(svg);
          expect([root?.name, title?.name, description?.name]).toEqual(['svg', 'title', 'desc']);
          expect(title?.text.trim()).not.toBe('');
          expect(description?.text.trim()).not.toBe('');
          const { texts, ...faults } = await measureLabels(page, svg);
          expect(faults).toEqual(NONE);
          measured += texts;
        }
      }),
      { numRuns: Number(process.env.RUNS ?? 300), endOnFailure: true },
    );
    await page.close();
    // Had the texts not been found, nothing could overlap.
    expect(measured).toBeGreaterThan(300 * 20);
  }, 600_000);

  it('is found out where a label lies on another, out of its box, or off the page', async () => {
    const file = fc
      .sample(anyLayoutPlan, { numRuns: 50, seed: 1 })
      .find(({ layouts }) => (layouts[0]?.pieces.length ?? 0) > 30);
    const [map] = file === undefined ? [] : cutMaps(file);
    if (map === undefined) throw new Error('no map was drawn');
    const page = await browser().newPage({ viewport: VIEW });
    const svg = drawCutMap(map);
    const { texts, ...faults } = await measureLabels(page, svg);
    expect(faults).toEqual(NONE);
    expect(texts).toBeGreaterThan(20);

    const onto = await measureChanged(
      page,
      `{ const [one, other] = document.querySelectorAll('text.cut-distance, text.number');
         for (const name of ['x', 'y', 'transform', 'text-anchor']) {
           const value = other.getAttribute(name);
           if (value === null) one.removeAttribute(name); else one.setAttribute(name, value);
         } }`,
    );
    expect(onto.overlapping.length).toBeGreaterThan(0);

    await measureLabels(page, svg);
    const out = await measureChanged(
      page,
      `{ const text = document.querySelector('text.number');
         const piece = document.querySelector('rect.piece');
         text.setAttribute('x', Number(piece.getAttribute('x')) - 200); }`,
    );
    expect(out.outOfTheirBox.length).toBe(1);

    await measureLabels(page, svg);
    const off = await measureChanged(
      page,
      `document.querySelector('text.title').setAttribute('x', -5000)`,
    );
    expect(off.offThePage.length).toBe(1);
    await page.close();
  });
});
