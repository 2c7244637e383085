import { describe, expect, test } from 'vitest';
import { parseYaml } from './yaml-tree.js';

function reasons(text: string): readonly string[] {
  const outcome = parseYaml(text);
  if (outcome.ok) return [];
  return outcome.faults.map(({ complaint }) => ('reason' in complaint ? complaint.reason : ''));
}

describe('YAML', () => {
  test('keeps every scalar as it is written', () => {
    const outcome = parseYaml('price: 7.40\nbuy: yes\nname: 007\nempty:\ncorner: [0, 1 1/2]\n');
    expect(outcome.ok && outcome.tree.value).toEqual({
      price: '7.40',
      buy: 'yes',
      name: '007',
      empty: '',
      corner: ['0', '1 1/2'],
    });
  });

  test('knows the line of a field, and of the nearest part that exists', () => {
    const outcome = parseYaml('a: 1\nb:\n  - c: 2\n    d: 3\n  - &x { c: 4 }\n  - *x\n');
    if (!outcome.ok) throw new Error('It should be readable.');
    const { lineOf } = outcome.tree;
    expect(lineOf([])).toBe(1);
    expect(lineOf(['b'])).toBe(2);
    expect(lineOf(['b', 0, 'd'])).toBe(4);
    expect(lineOf(['b', 0, 'missing'])).toBe(3);
    expect(lineOf(['b', 1, 'c'])).toBe(5);
    expect(lineOf(['b', 2, 'c'])).toBe(5);
    expect(lineOf(['nothing', 7])).toBe(1);
  });

  test('anchors may be used', () => {
    const outcome = parseYaml('a: &size 1 in\nb: *size\n');
    expect(outcome.ok && outcome.tree.value).toEqual({ a: '1 in', b: '1 in' });
  });

  test('an alias bomb is refused', () => {
    const row = (name: string, of: string) =>
      `${name}: &${name} [${Array(9).fill(of).join(', ')}]\n`;
    let bomb = row('a0', 'x');
    for (let level = 1; level < 9; level += 1) bomb += row(`a${level}`, `*a${level - 1}`);
    expect(reasons(bomb).join()).toMatch(/alias/i);
  });

  test('an alias without an anchor is refused', () => {
    expect(reasons('a: *nowhere\n').join()).toMatch(/alias/i);
  });

  test.each([
    ['brackets', '['.repeat(100_000)],
    ['braces', '{a: '.repeat(10_000)],
    ['dashes', '- '.repeat(10_000)],
  ])('nesting that would exhaust the stack is refused: %s', (_name, text) => {
    expect(reasons(text)).toEqual(['nested deeper than 64 levels']);
  });

  test('a huge file is refused', () => {
    expect(reasons('a'.repeat(1_000_001))).toEqual(['longer than a million characters']);
  });

  test('a second document is refused', () => {
    expect(reasons('a: 1\n---\nb: 2\n').join()).toMatch(/one document/);
  });
});
