import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';

const PLACE = process.env.CHROMIUM ?? '/usr/bin/chromium';

/**
 * One real Chromium for a whole test file, started before its tests and closed after them.
 * @returns what gives it to a test
 * @throws Error in the tests where there is none, saying how to install it
 */
export function sharedChromium(): () => Browser {
  let browser: Browser | undefined;
  beforeAll(async () => {
    if (!existsSync(PLACE)) {
      throw new Error(
        `There is no Chromium at ${PLACE}, and this test measures what it renders. On Debian: ` +
          'apt-get install chromium. Elsewhere, name its program: CHROMIUM=/path/to/it npm test',
      );
    }
    browser = await chromium.launch({ executablePath: PLACE, args: ['--no-sandbox'] });
  });
  afterAll(() => browser?.close());
  return () => {
    if (browser === undefined) throw new Error('Chromium was not started.');
    return browser;
  };
}
