import fc from 'fast-check';
import { parseFragment } from 'parse5';
import { describe, expect, it } from 'vitest';
import { element } from './element.js';
import { escapeText } from './escape.js';
import { hostileText } from './hostile-text.test.support.js';

/** What no HTML document can hold has U+FFFD in its place (HTML standard, 13.2.3.5 and UTF-8). */
const asParsed = (text: string) => text.replace(/\0|\p{Cs}/gu, '\uFFFD');

describe('an escaped text', () => {
  it('is the text again when it is parsed, between tags and in an attribute', () => {
    fc.assert(
      fc.property(hostileText, (text) => {
        const [made, ...others] = parseFragment(
          element('b', { title: text }, text).html,
        ).childNodes;
        expect(others).toEqual([]);
        expect(made).toMatchObject({
          tagName: 'b',
          attrs: [{ name: 'title', value: asParsed(text) }],
        });
        const inside = made !== undefined && 'childNodes' in made ? made.childNodes : [];
        expect(inside.map((node) => ('value' in node ? node.value : node))).toEqual(
          text === '' ? [] : [asParsed(text)],
        );
      }),
      { numRuns: 2_000 },
    );
  });

  it.each([
    ['<b>', '&lt;b&gt;'],
    [`"a" & 'b'`, '&quot;a&quot; &amp; &#39;b&#39;'],
    ['&lt;', '&amp;lt;'],
    ['plain, à la carte', 'plain, à la carte'],
  ])('%s is written as %s', (text, written) => {
    expect(escapeText(text)).toBe(written);
  });
});
