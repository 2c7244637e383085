import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';

/** Where Chromium usually is; CHROMIUM names another. */
const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const path = [process.env.CHROMIUM ?? [], USUAL].flat().find((file) => existsSync(file));

const MISSING =
  'no Chromium is found: install it (apt-get install chromium), or set CHROMIUM to its path';

/**
 * Tests in a real browser, one for the whole file. Where there is none they fail in CI, and are
 * skipped, saying why, elsewhere.
 */
export function describeInChromium(name: string, tests: (browser: () => Browser) => void): void {
  if (path === undefined && process.env.CI !== undefined) {
    describe(name, () => {
      it('needs Chromium', () => {
        throw new Error(`For the browser tests ${MISSING}.`);
      });
    });
    return;
  }
  describe.skipIf(path === undefined)(path === undefined ? `${name}: ${MISSING}` : name, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      // Chromium's sandbox refuses the superuser, whom containers run as.
      const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
      browser = await chromium.launch({ executablePath: path ?? '', args });
    });
    afterAll(() => browser?.close());
    tests(() => {
      if (browser === undefined) throw new Error('Chromium did not start.');
      return browser;
    });
  });
}
