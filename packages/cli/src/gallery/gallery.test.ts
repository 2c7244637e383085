import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { readSvg } from '../drawing/read-svg.test.support.js';
import { gallery, PAGE_NAME } from './gallery.js';

describe.each([
  { units: 'mm', mark: 0.5 },
  { units: 'in', mark: 25.4 / 32 },
] as const)('in $units', (rule) => {
  const files = gallery(rule);
  const names = files.map(({ name }) => name);
  const page = files.find(({ name }) => name === PAGE_NAME)?.text ?? '';

  test('there is a picture of every family, and of every letter', () => {
    for (const { name } of families.filter((family) => family.name !== 'letter')) {
      expect(names).toContain(`${name.replaceAll(' ', '-')}.svg`);
    }
    for (const letter of 'abcdefghijklmnopqrstuvwxyz')
      expect(names).toContain(`letter-${letter}.svg`);
    expect(names).toHaveLength(families.length - 1 + 26 + 1);
    expect(new Set(names).size).toBe(names.length);
  });

  test('the page is well-formed, shows every picture, and runs and fetches nothing', () => {
    const elements = readSvg(page);
    expect(elements[0]?.name).toBe('html');
    expect(elements.filter(({ name }) => name === 'script')).toEqual([]);
    const sources = elements
      .filter(({ name }) => name === 'img')
      .map(({ attributes }) => attributes.src);
    expect([...sources, PAGE_NAME]).toEqual(names);
    const ids = elements.flatMap(({ attributes: { id } }) => (id === undefined ? [] : [id]));
    expect(new Set(ids).size).toBe(ids.length);
    const targets = elements.flatMap(({ attributes: { href } }) =>
      href === undefined ? [] : [href],
    );
    for (const target of targets) {
      expect(target.startsWith('#') ? ids.includes(target.slice(1)) : names.includes(target)).toBe(
        true,
      );
    }
    for (const { attributes } of elements) {
      expect(Object.keys(attributes).filter((name) => name.startsWith('on'))).toEqual([]);
    }
    expect(page.replaceAll(/xmlns(:\w+)?="[^"]*"/g, '')).not.toContain('http');
  });

  test('is the same each time', () => {
    expect(gallery(rule)).toEqual(files);
  });
});
