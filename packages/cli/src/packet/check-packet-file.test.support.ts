import { parse as parseCsv } from 'csv-parse/sync';
import { type DefaultTreeAdapterTypes, parse as parseHtml } from 'parse5';
import { expect } from 'vitest';
import { readSvg } from '../drawing/read-svg.test.support.js';
import { MARKER } from './hostile-text.test.support.js';

/** What a name could make of a page that draws or lists it. */
const ACTIVE = [
  'script',
  'style',
  'a',
  'img',
  'image',
  'iframe',
  'object',
  'embed',
  'base',
  'meta',
];
const MORE_ACTIVE = [
  'link',
  'form',
  'foreignObject',
  'foreignobject',
  'use',
  'animate',
  'set',
  'b',
];

/** How often each thing that acts is in a file. A name must change none of it. */
export type Skeleton = Readonly<Record<string, number>>;

/**
 * Makes sure that a file of a packet is whole, by a reader that is not ours, and that the
 * names in it are nothing but text; by the ending of its name.
 * @returns what acts in it
 */
export function checkPacketFile(name: string, bytes: Uint8Array): Skeleton {
  const ending = name.slice(name.lastIndexOf('.'));
  const check = CHECKS[ending];
  // A new kind of file needs a check of its own here.
  if (check === undefined) throw new Error(`no check for ${name}`);
  return check(bytes);
}

const textOf = (bytes: Uint8Array) => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

const CHECKS: Readonly<Record<string, (bytes: Uint8Array) => Skeleton>> = {
  '.json': (bytes) => {
    JSON.parse(textOf(bytes));
    return {};
  },
  '.svg': (bytes) => {
    const elements = readSvg(textOf(bytes));
    expect(elements[0]?.name).toBe('svg');
    return skeletonOf(elements);
  },
  '.html': (bytes) => {
    const elements = htmlElements(parseHtml(textOf(bytes)));
    for (const { name, text } of elements) {
      if (name === 'script' || name === 'style') expect(text).not.toContain(MARKER);
    }
    return skeletonOf(elements);
  },
  '.csv': (bytes) => {
    const text = textOf(bytes).replace(/^\ufeff/, '');
    // Throws where a row has more or fewer cells than the first.
    const rows: string[][] = parseCsv(text, {
      delimiter: text.split('\n')[0]?.includes(';') ? ';' : ',',
    });
    for (const cell of rows.flat()) {
      // What a spreadsheet would take for a formula (OWASP, CSV Injection); numbers are none.
      if (/^[=+\-@\t\r]/.test(cell)) expect(cell).toMatch(/^[+-]?[\d.,/ ]+$/);
    }
    return {};
  },
  '.pdf': (bytes) => {
    const text = Buffer.from(bytes).toString('latin1');
    expect(text).toMatch(/^%PDF-/);
    expect(text.trimEnd()).toMatch(/%%EOF$/);
    return countsOf(text.match(/\/(?:JavaScript|JS|Launch|OpenAction|AA|URI|SubmitForm)\b/g) ?? []);
  },
};

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

function skeletonOf(elements: readonly Element[]): Skeleton {
  for (const { attributes } of elements) {
    for (const [name, value] of Object.entries(attributes)) {
      // Files are whole by themselves: what is pointed to is in them.
      if (/^(?:xlink:)?(?:href|src)$/.test(name)) expect(value).toMatch(/^(?:#|data:)/);
      if (/^on/i.test(name)) expect(value).not.toContain(MARKER);
    }
  }
  const handlers = elements.flatMap(({ attributes }) =>
    Object.keys(attributes).filter((name) => /^on/i.test(name)),
  );
  const active = elements.map(({ name }) => name).filter((name) => isActive(name));
  return countsOf([...handlers, ...active]);
}

const isActive = (name: string) => ACTIVE.includes(name) || MORE_ACTIVE.includes(name);

function countsOf(words: readonly string[]): Skeleton {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
}

function htmlElements(node: DefaultTreeAdapterTypes.Node): readonly Element[] {
  if (!('childNodes' in node)) return [];
  const children = node.childNodes;
  const text = children.map((child) => ('value' in child ? child.value : '')).join('');
  const inner = children.flatMap(htmlElements);
  if (!('tagName' in node)) return inner;
  const attributes = Object.fromEntries(node.attrs.map(({ name, value }) => [name, value]));
  return [{ name: node.tagName, attributes, text }, ...inner];
}
