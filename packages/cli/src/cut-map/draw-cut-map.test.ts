import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  holds,
  measureTexts,
  overlaps,
  readSvg,
  rectBox,
  withClass,
} from '../drawing/read-svg.test.support.js';
import { type CutMap, drawCutMap } from './draw-cut-map.js';
import { anyCutMap, inches, millimetres } from './random-cut-map.test.support.js';

/** Two hundredths of a millimetre: what the rounding of two coordinates can add up to. */
const ROUNDING = 0.02;
const RUNS = { numRuns: 40 };

const lids: CutMap = {
  title: 'Bakery co-operative, spring order',
  number: 2,
  of: 5,
  count: 1,
  stock: { name: 'Tinplate 14 x 20', kind: 'sheet', length: 508, width: 355.6 },
  pieces: [
    { number: 3, name: 'Tin lid', x: 0, y: 0, length: 152.4, width: 101.6, turned: false },
    { number: 3, name: 'Tin lid', x: 152.4, y: 0, length: 152.4, width: 101.6, turned: false },
    { number: 1, name: 'Heart <large>', x: 0, y: 101.6, length: 340, width: 31.75, turned: false },
  ],
  cuts: [
    { stage: 1, x1: 0, y1: 101.6, x2: 508, y2: 101.6 },
    { stage: 1, x1: 0, y1: 133.35, x2: 508, y2: 133.35 },
    { stage: 2, x1: 152.4, y1: 0, x2: 152.4, y2: 101.6 },
    { stage: 2, x1: 304.8, y1: 0, x2: 304.8, y2: 101.6 },
    { stage: 2, x1: 340, y1: 101.6, x2: 340, y2: 133.35 },
  ],
  remnants: [
    { x: 304.8, y: 0, length: 203.2, width: 101.6, keep: true },
    { x: 340, y: 101.6, length: 168, width: 31.75, keep: false },
    { x: 0, y: 133.35, length: 508, width: 222.25, keep: true },
  ],
  printLength: inches,
};

const textsOf = (svg: string): readonly string[] =>
  readSvg(svg)
    .filter(({ name }) => name === 'text')
    .map(({ text }) => text);

describe('a cut map as SVG', () => {
  it('is well-formed, says what it is, and refers to nothing that is not there', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const svg = drawCutMap(map);
        const elements = readSvg(svg);
        expect(elements.slice(0, 3).map(({ name }) => name)).toEqual(['svg', 'title', 'desc']);
        expect(elements[0]?.attributes.role).toBe('img');
        expect(svg).not.toMatch(/svgjs|NaN|undefined|Infinity/u);
        const values = elements.flatMap(({ attributes }) => Object.values(attributes));
        const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
        const used = values.flatMap((value) => /^url\(#(.*)\)$/u.exec(value)?.[1] ?? []);
        expect(new Set(ids).size).toBe(ids.length);
        expect(ids).toEqual(expect.arrayContaining(used));
      }),
      RUNS,
    );
  });

  it('draws the stock and every piece at its true size and place', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const elements = readSvg(drawCutMap(map));
        const root = elements[0]?.attributes ?? {};
        const [, , width, height] = (root.viewBox ?? '').split(' ');
        expect([root.width, root.height]).toEqual([`${width}mm`, `${height}mm`]);
        const { length: long, width: wide } = map.stock;
        expect(withClass(elements, 'stock').map(rectBox)).toEqual([
          { x: 0, y: -wide, width: long, height: wide },
        ]);
        const drawn = withClass(elements, 'piece').map(rectBox);
        expect(drawn.length).toBe(map.pieces.length);
        for (const [index, piece] of map.pieces.entries()) {
          const box = drawn[index];
          expect(Math.abs((box?.x ?? NaN) - piece.x)).toBeLessThan(ROUNDING);
          expect(Math.abs((box?.y ?? NaN) + piece.y + piece.width)).toBeLessThan(ROUNDING);
          expect(Math.abs((box?.width ?? NaN) - piece.length)).toBeLessThan(ROUNDING);
          expect(Math.abs((box?.height ?? NaN) - piece.width)).toBeLessThan(ROUNDING);
        }
        for (const stage of [1, 2, 3]) {
          const cuts = map.cuts.filter((cut) => cut.stage === stage);
          expect(withClass(elements, `cut-${stage}`).length).toBe(cuts.length);
        }
        const kept = map.remnants.filter(({ keep }) => keep).length;
        expect(withClass(elements, 'keep').length).toBe(kept);
        expect(withClass(elements, 'scrap').length).toBe(map.remnants.length - kept);
      }),
      RUNS,
    );
  });

  it('keeps texts, measured anew in Open Sans, on the page, in their pieces and apart', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const elements = readSvg(drawCutMap(map));
        const [x = 0, y = 0, width = 0, height = 0] = (elements[0]?.attributes.viewBox ?? '')
          .split(' ')
          .map(Number);
        const texts = elements.filter(({ name, text }) => name === 'text' && text !== '');
        const boxes = measureTexts(texts);
        const pieces = withClass(elements, 'piece').map(rectBox);
        for (const [index, box] of boxes.entries()) {
          const said = texts[index]?.text;
          expect(holds({ x, y, width, height }, box, ROUNDING), said).toBe(true);
          if (!['number', 'name', 'size'].includes(texts[index]?.attributes.class ?? '')) continue;
          expect(pieces.filter((piece) => holds(piece, box, ROUNDING)).length, said).toBe(1);
        }
        expect(overlaps(boxes, ROUNDING)).toEqual([]);
      }),
      RUNS,
    );
  });

  it('gives the same bytes for the same map, whatever was drawn in between', () => {
    const before = drawCutMap(lids);
    fc.assert(
      fc.property(anyCutMap, (map) => {
        expect(drawCutMap(map)).toBe(drawCutMap(map));
      }),
      { numRuns: 8 },
    );
    expect(drawCutMap(lids)).toBe(before);
  });

  it('heads the page with the order, the layout, the stock and how many to cut', () => {
    const texts = textsOf(drawCutMap(lids));
    expect(texts).toEqual(
      expect.arrayContaining([
        'Bakery co-operative, spring order',
        'Layout 2 of 5',
        'Tinplate 14 x 20',
        'Sheet, 20 × 14 in',
        'Cut 1 like this',
      ]),
    );
    const offcut = { ...lids, stock: { ...lids.stock, kind: 'offcut' as const } };
    expect(textsOf(drawCutMap(offcut))).toContain('Offcut, 20 × 14 in');
  });

  it('gives strip widths, cut numbers with distances, sizes, offcuts and the legend', () => {
    const elements = readSvg(drawCutMap(lids));
    const said = (name: string) => withClass(elements, name).map(({ text }) => text);
    expect(said('strip-width')).toEqual(['4 in', '1 1/4 in', '8 3/4 in']);
    expect(said('cut-number')).toEqual(['3', '4', '5', '1', '2']);
    expect(said('cut-distance')).toEqual(['4 in', '5 1/4 in']);
    expect(said('overall')).toEqual(['20 in', '14 in']);
    expect(said('name')).toEqual(['Tin lid', 'Tin lid', 'Heart <large>']);
    expect(said('size')).toEqual(['6 × 4 in', '6 × 4 in', '13 3/8 × 1 1/4 in']);
    expect(said('remnant')).toEqual([
      'offcut, keep',
      '8 × 4 in',
      'scrap',
      'offcut, keep',
      '20 × 8 3/4 in',
    ]);
    expect(said('legend-row')).toEqual([
      ...['1', 'Heart <large>', '13 3/8 × 1 1/4 in', '1'],
      ...['3', 'Tin lid', '6 × 4 in', '2'],
    ]);
    expect(said('scale')).toEqual(['100 mm (3 15/16 in)']);
    expect(textsOf(drawCutMap({ ...lids, printLength: millimetres }))).toContain('100 mm');
  });

  it('draws the trims of the edges, the kerfs and every stage, and says what they are', () => {
    const sawn: CutMap = {
      ...lids,
      stock: { ...lids.stock, length: 400, width: 300 },
      pieces: [
        { number: 1, name: 'Tin lid', x: 10, y: 10, length: 100, width: 80, turned: false },
        { number: 2, name: 'Heart', x: 10, y: 92, length: 60, width: 30, turned: false },
      ],
      cuts: [
        { stage: 0, x1: 8, y1: 0, x2: 8, y2: 300 },
        { stage: 0, x1: 390, y1: 0, x2: 390, y2: 300 },
        { stage: 0, x1: 10, y1: 8, x2: 390, y2: 8 },
        { stage: 0, x1: 10, y1: 290, x2: 390, y2: 290 },
        { stage: 1, x1: 10, y1: 122, x2: 390, y2: 122 },
        { stage: 2, x1: 110, y1: 10, x2: 110, y2: 122 },
        { stage: 3, x1: 10, y1: 90, x2: 110, y2: 90 },
        { stage: 4, x1: 70, y1: 92, x2: 70, y2: 122 },
      ],
      remnants: [],
      kerf: 2,
      trim: 10,
      stages: 3,
      printLength: millimetres,
    };
    const said = (map: CutMap, name: string) =>
      withClass(readSvg(drawCutMap(map)), name).map(({ text }) => text);
    expect(said(sawn, 'key')).toEqual([
      'trims of the edges, before all others',
      'first cuts, with the distance from the trimmed lower edge; the numbers of cuts tell their order',
      'second cuts, across the strips',
      'third cuts, across what the second part off',
      'fourth cuts, to trim',
    ]);
    expect(said({ ...sawn, stages: 'free' }, 'key').slice(3)).toEqual([
      'third cuts',
      'later cuts, each across what it lies in',
    ]);
    expect(said(sawn, 'note').join(' ')).toContain(
      'First trim 10 mm off every edge; distances run from the trimmed edges. ' +
        'Every cut turns 2 mm beyond its line to dust, which is left white.',
    );
    // Measured on the trimmed sheet: 122 less 10; and the strips without trims and kerf.
    expect(said(sawn, 'cut-distance')).toEqual(['112 mm']);
    expect(said(sawn, 'strip-width')).toEqual(['112 mm', '166 mm']);
    const pens = [0, 1, 2, 3, 4].map((stage) => {
      const [line] = withClass(readSvg(drawCutMap(sawn)), `cut-${stage}`);
      return `${line?.attributes['stroke-width']} ${line?.attributes['stroke-dasharray']}`;
    });
    expect(new Set(pens).size).toBe(5);
    expect(said(lids, 'key').join()).not.toMatch(/trim/u);
  });

  it('ends with the caution', () => {
    const caution = withClass(readSvg(drawCutMap(lids)), 'caution')
      .map(({ text }) => text)
      .join(' ');
    for (const word of [
      'edges',
      'gloves',
      'eye protection',
      'guard',
      'hold-down',
      'food',
      'wash',
    ]) {
      expect(caution).toContain(word);
    }
    expect(caution).toMatch(/local codes and licensed practice\.$/u);
  });

  it('tells keep from scrap and first cuts from second without colour', () => {
    const elements = readSvg(drawCutMap(lids));
    const fills = (name: string) =>
      new Set(withClass(elements, name).map(({ attributes }) => attributes.fill));
    expect(fills('keep')).toEqual(new Set(['url(#layout-2-keep)']));
    expect(fills('scrap')).toEqual(new Set(['url(#layout-2-scrap)']));
    const dashes = (name: string) =>
      withClass(elements, name).map(({ attributes }) => attributes['stroke-dasharray']);
    expect(dashes('cut-1').every((dash) => dash === undefined)).toBe(true);
    expect(dashes('cut-2').every((dash) => dash !== undefined)).toBe(true);
  });
});
