import axe from 'axe-core';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { describeInChromium } from '../../rendering/chromium.test.support.js';
import type { JobSheet } from '../job-sheet.js';
import {
  demoSheet,
  fileOf,
  HOSTILE_NAMES,
  hostileSheet,
  orderOf,
  sheetOf,
} from './sheets.test.support.js';

const WIDTHS = [360, 768, 1280];

describeInChromium('a job sheet in Chromium', (browser) => {
  const open = async (url: string, options: BrowserContextOptions = {}): Promise<Page> => {
    const context = await browser().newContext(options);
    const page = await context.newPage();
    await page.goto(url);
    return page;
  };

  describe.each<[string, () => Promise<JobSheet>]>([
    ['the demo order in inches', () => demoSheet('inch')],
    ['the demo order in millimetres', () => demoSheet('metric')],
    ['an order of one layout', () => sheetOf(orderOf(1))],
    ['an order of 40 layouts', () => sheetOf(orderOf(40))],
    ['an order of hostile names', hostileSheet],
  ])('of %s', (_name, make) => {
    let made: Promise<{ readonly sheet: JobSheet; readonly url: string }> | undefined;
    const given = () => {
      made ??= make().then((sheet) => ({ sheet, url: fileOf(sheet) }));
      return made;
    };

    it('opens with no word on the console and asks the network for nothing', async () => {
      const { url, sheet } = await given();
      const page = await browser().newPage();
      const [said, asked]: [string[], string[]] = [[], []];
      page.on('console', (message) => said.push(message.text()));
      page.on('pageerror', (error) => said.push(error.message));
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(url, { waitUntil: 'networkidle' });
      expect(said).toEqual([]);
      expect(asked).toEqual([url]);
      expect(await page.title()).toBe(`Job sheet: ${sheet.title}`);
      await page.close();
    });

    it.each(WIDTHS)('overflows nowhere at %i px', async (width) => {
      const { url } = await given();
      const page = await open(url, { viewport: { width, height: 800 } });
      await page.evaluate(
        'for (const folded of document.querySelectorAll("details")) folded.open = true',
      );
      const found = await page.evaluate<{ wide: number; count: number; outside: string[] }>(
        OUTSIDE,
      );
      expect(found.wide).toBeLessThanOrEqual(width);
      expect(found.count).toBeGreaterThan(50);
      expect(found.outside).toEqual([]);
      await page.context().close();
    });

    // Target size (enhanced), success criterion 2.5.5 of WCAG 2.2: 44 by 44 CSS pixels.
    it('has nothing to press that is lower than 44 px', async () => {
      const { url } = await given();
      const page = await open(url, { viewport: { width: 360, height: 800 } });
      const heights = await page.evaluate<number[]>(
        '[...document.querySelectorAll("label, nav > ol > li > a, summary, button")].map((one) => one.getBoundingClientRect().height)',
      );
      expect(heights.length).toBeGreaterThan(10);
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await page.context().close();
    });

    it.each([
      [360, 'light'],
      [1280, 'light'],
      [1280, 'dark'],
    ] as const)(
      'has no fault that axe-core calls serious, %i px wide, %s',
      async (width, colorScheme) => {
        const { url } = await given();
        const page = await open(url, { viewport: { width, height: 800 }, colorScheme });
        await page.evaluate(axe.source);
        const { violations, passes } = await page.evaluate<axe.AxeResults>(
          // A drawing is one picture with a title and a description; its marks are no content.
          'axe.run({ exclude: [["svg > g"]] }, { resultTypes: ["violations"] })',
        );
        expect(passes.length).toBeGreaterThan(20);
        expect(
          violations
            .filter(({ impact }) => impact === 'serious' || impact === 'critical')
            .map(({ id, nodes }) => [id, nodes.length, nodes[0]?.html]),
        ).toEqual([]);
        await page.context().close();
      },
    );
  });

  it('shows names as they are, and makes no element of them', async () => {
    const page = await open(fileOf(await hostileSheet()));
    const shown = await page.evaluate<string[]>(
      '[...document.querySelectorAll("bdi")].map((one) => one.textContent)',
    );
    for (const name of HOSTILE_NAMES) expect(shown).toContain(name);
    expect(
      await page.evaluate('document.querySelectorAll("img, iframe, object, link").length'),
    ).toBe(0);
    expect(await page.evaluate('document.scripts.length')).toBe(1);
    await page.context().close();
  });

  it('lets nothing in: neither pictures, nor styles, nor scripts', async () => {
    const page = await open(fileOf(await sheetOf(orderOf(1))));
    const refused = await page.evaluate<string[]>(`new Promise((done) => {
      const refused = [];
      addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
        refused.push(effectiveDirective);
        if (refused.length === 4) done(refused.sort());
      });
      const put = (html) => document.body.append(document.createRange().createContextualFragment(html));
      put('<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=">');
      put('<script>window.broken = true</script>');
      put('<style>body { display: none }</style>');
      fetch('data:,x').catch(() => undefined);
    })`);
    expect(refused).toEqual(['connect-src', 'img-src', 'script-src-elem', 'style-src-elem']);
    expect(await page.evaluate('window.broken')).toBeUndefined();
    await page.context().close();
  });
});

/** What stands beyond the left or right edge of the page, or beyond its own box; drawings count as a whole. */
const OUTSIDE = `(() => {
  const width = document.documentElement.clientWidth;
  const all = [...document.querySelectorAll('body *')].filter((one) => one.closest('svg') === null || one.tagName === 'svg');
  const shown = all.filter((one) => one.getClientRects().length > 0);
  const hidden = (one) => getComputedStyle(one).clipPath === 'inset(50%)' || one.closest('thead') !== null && getComputedStyle(one.closest('thead')).position === 'absolute';
  const outside = shown.filter((one) => !hidden(one)).filter((one) => {
    const { left, right } = one.getBoundingClientRect();
    const spills = one.tagName !== 'svg' && getComputedStyle(one).display !== 'inline' && one.scrollWidth > one.clientWidth + 1;
    return left < -0.5 || right > width + 0.5 || spills;
  });
  return {
    wide: document.documentElement.scrollWidth,
    count: shown.length,
    outside: outside.map((one) => one.tagName + ' ' + one.className + ': ' + one.textContent.slice(0, 40)),
  };
})()`;
