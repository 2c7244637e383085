import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ReadElement, readSvg, withClass } from '../../drawing/read-svg.test.support.js';
import { stocks } from '../csv/random-stock.test.support.js';
import { markOf } from '../offcut-mark.js';
import { offcutOf, sheetsOf } from '../planned-cutting.test.support.js';
import type { NewStock, RackStock } from '../rack.js';
import { isRackPage, rackPage } from './rack-page.js';

const onRack = (stock: readonly NewStock[]): readonly RackStock[] =>
  stock.map((one, index) => ({
    ...one,
    mark: markOf(index + 1),
    promised: index % 3 === 2 ? 1 : 0,
    addedAt: '2026-03-02T09:00:00.000Z',
  }));

const drawn = (stock: readonly NewStock[]) =>
  rackPage({ stock: onRack(stock), units: 'mm', revision: 4 });

const attribute = ({ attributes }: ReadElement, name: string) => Number(attributes[name]);

describe('the page of a rack', () => {
  test('draws every outline to one scale, which its bar tells', () => {
    fc.assert(
      fc.property(fc.array(stocks, { minLength: 1, maxLength: 8 }), (stock) => {
        const elements = readSvg(drawn(stock));
        const [, scale = 0] =
          /drawn 1 : ([\d.]+)/.exec(elements.map(({ text }) => text).join(' ')) ?? [];
        const outlines = withClass(elements, 'outline').filter(({ name }) => name === 'rect');
        expect(outlines).toHaveLength(stock.length);
        for (const one of outlines) {
          const near = stock.some(
            ({ length, width }) =>
              Math.abs(attribute(one, 'width') - length / Number(scale)) < 0.011 &&
              Math.abs(attribute(one, 'height') - width / Number(scale)) < 0.011,
          );
          expect(near).toBe(true);
          expect(attribute(one, 'width')).toBeLessThanOrEqual(88.01);
          expect(attribute(one, 'height')).toBeLessThanOrEqual(70.01);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('is well-formed, and each drawing has a title and a description, whatever the texts', () => {
    fc.assert(
      fc.property(fc.array(stocks, { maxLength: 8 }), (stock) => {
        const elements = readSvg(drawn(stock));
        const svgs = elements.filter(({ name }) => name === 'svg');
        expect(svgs).toHaveLength(stock.length + 1);
        expect(elements.filter(({ name }) => name === 'desc')).toHaveLength(svgs.length);
        const facts = elements.filter(({ name }) => name === 'bdi').map(({ text }) => text);
        for (const { place } of stock) if (place !== '') expect(facts).toContain(place);
      }),
      { numRuns: 60 },
    );
  });

  test('shows mark, size, place, promise and rolling in words, not by colour alone', () => {
    const page = drawn([
      offcutOf({ rolled: 'along' }),
      offcutOf({ rolled: 'across', place: 'door' }),
      offcutOf({ thickness: 0.3 }),
      sheetsOf(9, { metal: 'copper' }),
    ]);
    const elements = readSvg(page);
    const facts = elements.filter(({ name }) => name === 'bdi').map(({ text }) => text);
    expect(facts).toEqual([
      ...['700 x 500 mm', '9 whole sheets: Tinplate 700 x 500', 'left rack', 'since 2026-03-02'],
      ...['400 x 150 mm', 'left rack', 'rolled along, since 2026-03-02'],
      ...['400 x 150 mm', 'door', 'rolled across, since 2026-03-02'],
      ...['400 x 150 mm', 'left rack', 'since 2026-03-02, promised'],
    ]);
    expect(elements.filter(({ name }) => name === 'h2').map(({ text }) => text)).toEqual([
      'Copper, 0.28 mm thick: 1 outline',
      'Tinplate, 0.28 mm thick: 2 outlines',
      'Tinplate, 0.3 mm thick: 1 outline',
    ]);
    expect(elements.filter(({ name }) => name === 'pattern')).toHaveLength(1);
    expect(withClass(elements, 'rolling').filter(({ name }) => name === 'polygon')).toHaveLength(4);
    expect(page).toContain('Sheared edges cut: wear gloves and eye protection.');
    expect(page).toContain('break-inside: avoid');
  });

  test('writes the mark in every outline that has room for it', () => {
    const elements = readSvg(drawn([offcutOf(), offcutOf({ length: 200, width: 8 })]));
    const marks = withClass(elements, 'mark').filter(({ name }) => name === 'text');
    expect(marks.map(({ text }) => text)).toEqual(['CCY']);
  });

  test('is told from any other file', () => {
    expect(isRackPage(drawn([]))).toBe(true);
    expect(isRackPage('<!DOCTYPE html><title>The rack</title>')).toBe(false);
    expect(isRackPage('')).toBe(false);
  });
});
