import fc from 'fast-check';
import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../drawing/drawing.js';
import type { Block, JobSheet, Section } from '../job-sheet.js';
import { hostileText } from './hostile-text.test.support.js';
import { jobSheetPage } from './job-sheet-page.js';

type Node = DefaultTreeAdapterTypes.ChildNode;
type Element = DefaultTreeAdapterTypes.Element;

describe('a job sheet of any texts', () => {
  it('parses into the elements and attributes that a harmless one has, with the texts as given', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const [hostile, harmless] = [treeOf(sheet), treeOf(harmlessly(sheet))];
        expect(shapeOf(hostile)).toEqual(shapeOf(harmless));
        const shown = textsIn(hostile);
        for (const text of textsOf(sheet)) expect(shown).toContain(asParsed(text));
        for (const name of classesIn(hostile)) expect(CLASSES).toContain(name);
      }),
      { numRuns: 500 },
    );
  });

  it('gives every element an id of its own, and every reference something to refer to', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const all = elementsIn(treeOf(sheet));
        const ids = all.flatMap((one) => attributeOf(one, 'id') ?? []);
        expect(ids).toHaveLength(new Set(ids).size);
        const referred = all.flatMap((one) => [
          ...(attributeOf(one, 'aria-labelledby') ?? '').split(' ').filter((id) => id !== ''),
          ...(/^#(.*)$/.exec(attributeOf(one, 'href') ?? '')?.slice(1) ?? []),
          ...(/^url\(#(.*)\)$/.exec(attributeOf(one, 'fill') ?? '')?.slice(1) ?? []),
        ]);
        expect(referred.length).toBeGreaterThan(0);
        for (const id of referred) expect(ids).toContain(id);
      }),
      { numRuns: 200 },
    );
  });

  it('is the same, byte by byte, for the same packet', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        expect(jobSheetPage(structuredClone(sheet))).toBe(jobSheetPage(sheet));
      }),
      { numRuns: 50 },
    );
  });
});

describe('the outline of a job sheet', () => {
  const html = jobSheetPage({
    title: 'Order',
    summary: [],
    key: 'k',
    sections: [section('a', 'Buy', []), section('b', 'Shear', []), section('c', 'Shear', [])],
  });

  it('names its language and direction, and has one main part, one head and headings in order', () => {
    expect(html).toMatch(/^<!DOCTYPE html>\n<html lang="en" dir="ltr">/);
    const names = elementsIn(childrenOf(parse(html))).map(({ tagName }) => tagName);
    for (const once of ['main', 'header', 'nav', 'footer', 'h1', 'style', 'script']) {
      expect(names.filter((name) => name === once)).toHaveLength(1);
    }
    expect(names.filter((name) => /^h\d$/.test(name))).toEqual(['h1', 'h2', 'h2', 'h2', 'h2']);
  });

  it('says in its policy that nothing is loaded, before anything could be', () => {
    const policy = /content="(default-src [^"]*)"/.exec(html)?.[1] ?? '';
    expect(policy).toMatch(
      /^default-src &#39;none&#39;; style-src &#39;sha256-[^;]+&#39;; script-src &#39;sha256-/,
    );
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf('<style>'));
    expect(html).not.toMatch(/\b(?:src|srcset|action|poster|data)="|@import|url\((?!#)/);
  });
});

/** The classes that the writer gives, but for those of the marks of drawings, which tests choose here. */
const CLASSES = [
  'skip',
  'kind',
  'summary',
  'contents',
  'work',
  'head',
  'new-page',
  'bare',
  'together',
  'caution',
  'caution-word',
  'short',
  'cards',
  'figures',
  'figure',
  'words',
  'sum',
  'steps',
  'say',
  'do',
  'detail',
  'true-scale',
  'to-fit',
  'true-words',
  'whole-page',
  'over',
  'layer',
  'mark',
];

function section(
  id: string,
  work: string | undefined,
  blocks: readonly Block[],
  title = id,
): Section {
  return { id, title, onNewPage: false, blocks, ...(work === undefined ? {} : { work }) };
}

const align = fc.constantFrom('left' as const, 'right' as const);
const texts = fc.array(hostileText, { minLength: 2, maxLength: 2 });
const caption = fc.option(hostileText, { nil: '' });

const anyBlock: fc.Arbitrary<Block> = fc.oneof(
  hostileText.map((text): Block => ({ kind: 'words', text })),
  texts.map((lines): Block => ({ kind: 'caution', lines })),
  fc.record({ caption, heading: texts, side: align, rows: fc.array(texts, { maxLength: 3 }) }).map(
    ({ caption: said, heading, side, rows }): Block => ({
      kind: 'table',
      caption: said,
      columns: heading.map((one) => ({ heading: one, align: side })),
      rows,
      sums: 1,
    }),
  ),
  fc
    .record({ text: hostileText, detail: hostileText })
    .map((step): Block => ({ kind: 'steps', steps: [{ id: '', ...step }] })),
  fc.record({ text: hostileText, caption, high: fc.boolean(), trueScale: fc.boolean() }).map(
    ({ text, caption: said, high, trueScale }): Block => ({
      kind: 'picture',
      trueScale,
      caption: said,
      drawing: drawingOf(text, high ? 250 : 50),
    }),
  ),
);

const anySheet: fc.Arbitrary<JobSheet> = fc
  .record({
    title: hostileText,
    summary: texts,
    key: hostileText,
    sections: fc.array(
      fc.record({
        title: hostileText,
        work: hostileText,
        blocks: fc.array(anyBlock, { maxLength: 4 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ sections, ...rest }) => ({
    ...rest,
    sections: sections.map(({ title, work, blocks }, place) =>
      section(
        `s${place}`,
        `${place} ${work}`,
        blocks.map((block, index) =>
          block.kind === 'steps'
            ? {
                ...block,
                steps: block.steps.map((step) => ({ ...step, id: `t${place}-${index}` })),
              }
            : block,
        ),
        title,
      ),
    ),
  }));

/** With a hatch whose name every other such drawing has too. */
function drawingOf(text: string, height: number): Drawing {
  const page = { x: 0, y: 0, width: 100, height };
  return {
    title: text,
    description: text,
    page,
    hatches: [
      { id: 'hatch', spacing: 2, strokeWidth: 0.2, stroke: '#000', ground: '#fff', crossed: false },
    ],
    layers: [
      {
        name: 'layer',
        marks: [
          { kind: 'rect', role: 'mark', box: page, fill: 'url(#hatch)', hint: text },
          {
            kind: 'text',
            role: 'mark',
            text,
            at: { x: 1, y: 9 },
            anchor: 'start',
            size: 4,
            bold: false,
            upright: false,
            colour: '#000',
            box: page,
            room: page,
          },
        ],
      },
    ],
  };
}

/** Every text of a sheet, wherever it stands, that is shown. */
function textsOf(sheet: JobSheet): readonly string[] {
  const found: string[] = [sheet.title, ...sheet.summary];
  for (const { title, work = '', blocks } of sheet.sections) {
    found.push(title, ` ${work}`);
    for (const block of blocks) {
      if (block.kind === 'words') found.push(block.text);
      if (block.kind === 'caution') found.push(...block.lines);
      if (block.kind === 'table') {
        found.push(
          block.caption ?? '',
          ...block.columns.map(({ heading }) => heading),
          ...block.rows.flat(),
        );
      }
      if (block.kind === 'steps') {
        for (const { text, detail = '' } of block.steps) found.push(text, detail);
      }
      if (block.kind === 'picture') found.push(block.caption ?? '', block.drawing.title);
    }
  }
  return found.filter((text) => text !== '');
}

/** The same sheet with letters for all that is hostile. Empty texts stay so. */
function harmlessly(sheet: JobSheet): JobSheet {
  const kept = new Set([
    'kind',
    'id',
    'align',
    'role',
    'fill',
    'anchor',
    'stroke',
    'ground',
    'colour',
    'name',
  ]);
  const clean = (value: unknown, name: string): unknown => {
    if (typeof value === 'string') return kept.has(name) || value === '' ? value : 'x';
    if (Array.isArray(value)) return value.map((one: unknown) => clean(one, name));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, clean(one, key)]));
  };
  const cleaned = clean(sheet, '') as JobSheet;
  // Sections of one stretch are put together: each has kept a stretch of its own.
  return {
    ...cleaned,
    sections: cleaned.sections.map((one, index) => ({ ...one, work: `x${index}` })),
  };
}

const asParsed = (text: string) => text.replace(/\0|\p{Cs}/gu, '\uFFFD');

const treeOf = (sheet: JobSheet): readonly Node[] => {
  const bytes = Buffer.from(jobSheetPage(sheet), 'utf8');
  return childrenOf(parse(bytes.toString('utf8')));
};

const childrenOf = (node: object): readonly Node[] =>
  'childNodes' in node ? (node.childNodes as readonly Node[]) : [];

const isElement = (node: Node): node is Element => 'tagName' in node;

const elementsIn = (nodes: readonly Node[]): readonly Element[] =>
  nodes.flatMap((node) => [...(isElement(node) ? [node] : []), ...elementsIn(childrenOf(node))]);

const attributeOf = ({ attrs }: Element, name: string) =>
  attrs.find((one) => one.name === name)?.value;

const classesIn = (nodes: readonly Node[]) =>
  elementsIn(nodes).flatMap((one) =>
    (attributeOf(one, 'class') ?? '').split(' ').filter((name) => name !== ''),
  );

const textsIn = (nodes: readonly Node[]): readonly string[] =>
  nodes.flatMap((node) =>
    node.nodeName === '#text' && 'value' in node ? [node.value] : textsIn(childrenOf(node)),
  );

/** Names of elements and attributes, nested; a class comes and goes with how long a text is. */
function shapeOf(nodes: readonly Node[]): readonly unknown[] {
  return nodes
    .filter(({ nodeName }) => nodeName !== '#text')
    .map((node) =>
      isElement(node)
        ? [
            node.tagName,
            node.attrs.map(({ name }) => name).filter((name) => name !== 'class'),
            shapeOf(childrenOf(node)),
          ]
        : node.nodeName,
    );
}
