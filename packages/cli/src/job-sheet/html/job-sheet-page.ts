import { createHash } from 'node:crypto';
import type { JobSheet } from '../job-sheet.js';
import { contents, stretches } from './contents.js';
import { element, type Html, markup } from './element.js';
import { STYLE } from './style.js';
import { CLEAR_ID, KEPT_ID, TICKS_SCRIPT, WORK_ID } from './ticks.js';
import { writeSection } from './write-section.js';

/**
 * The packet as one HTML file that needs nothing else: no network, no other file, and for
 * all but keeping the ticks no script. The same packet gives the same bytes.
 */
export function jobSheetPage(sheet: JobSheet): string {
  const page = element(
    'html',
    { lang: 'en', dir: 'ltr' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { 'http-equiv': 'Content-Security-Policy', content: POLICY }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('title', {}, `Job sheet: ${sheet.title}`),
      element('style', {}, markup(STYLE)),
    ),
    body(sheet),
  );
  return `<!DOCTYPE html>\n${page.html}\n`;
}

function body({ title, summary, key, sections }: JobSheet): Html {
  const all = stretches(sections);
  return element(
    'body',
    {},
    element('a', { class: 'skip', href: `#${WORK_ID}` }, 'Skip to the work'),
    element(
      'header',
      {},
      element('p', { class: 'kind' }, 'Job sheet'),
      element('h1', {}, element('bdi', {}, title)),
      element(
        'ul',
        { class: 'summary', role: 'list' },
        summary.map((line) => element('li', {}, line)),
      ),
    ),
    contents(all),
    element(
      'main',
      { id: WORK_ID, 'data-key': key, tabindex: '-1' },
      all.flatMap(({ work, sections: own }, index) =>
        own.map((section) => writeSection(section, work === undefined ? undefined : index + 1)),
      ),
    ),
    element(
      'footer',
      {},
      element('p', { id: KEPT_ID }, 'Tick the boxes here or on paper.'),
      element('button', { id: CLEAR_ID, type: 'button', hidden: true }, 'Take away all ticks'),
    ),
    element('script', {}, markup(TICKS_SCRIPT)),
  );
}

const digest = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** Nothing is loaded, and nothing runs or styles but what is written here (W3C Content Security Policy 3). */
const POLICY = [
  "default-src 'none'",
  `style-src ${digest(STYLE)}`,
  `script-src ${digest(TICKS_SCRIPT)}`,
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');
