import { expect, test } from 'vitest';
import { chromiumPlace, describeInChromium } from './chromium.test.support.js';

test('Chromium is looked for where CHROMIUM says and nowhere else, or where it usually is', () => {
  const here =
    (...there: readonly string[]) =>
    (path: string) =>
      there.includes(path);
  const usual = '/usr/bin/chromium';
  expect(chromiumPlace('/opt/own', here('/opt/own', usual))).toEqual({ path: '/opt/own' });
  expect(chromiumPlace(undefined, here('/opt/own', usual))).toEqual({ path: usual });
  expect(chromiumPlace('/opt/own', here(usual))).toEqual({
    missing: 'CHROMIUM is set to /opt/own, and no such file is there',
  });
  expect(chromiumPlace(undefined, here('/opt/own'))).toEqual({
    missing: expect.stringMatching(/^no Chromium is found: .* set CHROMIUM to its path$/),
  });
});

describeInChromium('what is found', (browser) => {
  test('is Chromium, and runs', async () => {
    const page = await browser().newPage();
    expect(await page.evaluate('6 * 7')).toBe(42);
    expect(browser().browserType().name()).toBe('chromium');
    await page.close();
  });
});
