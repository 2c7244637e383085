import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';

/** Where Chromium usually is. */
const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Where it is, or why it is not found. */
export type ChromiumPlace =
  | { readonly path: string }
  | { readonly path?: undefined; readonly missing: string };

/** Looks for Chromium: where the variable CHROMIUM says and nowhere else, or where it usually is. */
export function chromiumPlace(
  named: string | undefined,
  isThere: (path: string) => boolean,
): ChromiumPlace {
  const path = (named === undefined ? USUAL : [named]).find(isThere);
  if (path !== undefined) return { path };
  return {
    missing:
      named === undefined
        ? 'no Chromium is found: install it (apt-get install chromium), or set CHROMIUM to its path'
        : `CHROMIUM is set to ${named}, and no such file is there`,
  };
}

const place = chromiumPlace(process.env.CHROMIUM, existsSync);

/**
 * Tests in a real Chromium, one for all of them, which `tests` is given the way to. Where there
 * is none they fail in CI, and are skipped, saying why, elsewhere.
 */
export function describeInChromium(name: string, tests: (browser: () => Browser) => void): void {
  const { path } = place;
  if (path === undefined) {
    if (process.env.CI === undefined) {
      describe.skip(`${name}: ${place.missing}`, () => tests(notStarted));
      return;
    }
    describe(name, () => {
      it('needs Chromium', () => {
        throw new Error(`For the browser tests ${place.missing}.`);
      });
    });
    return;
  }
  describe(name, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      // Pages are our own. The sandbox refuses the superuser, whom containers run as.
      browser = await chromium.launch({ executablePath: path, args: ['--no-sandbox'] });
    });
    afterAll(() => browser?.close());
    tests(() => browser ?? notStarted());
  });
}

function notStarted(): never {
  throw new Error('Chromium did not start.');
}
