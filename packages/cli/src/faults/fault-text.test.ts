import { describe, expect, test } from 'vitest';
import { choiceText, faultText, pathText, quote } from './fault-text.js';

describe('a fault in one line', () => {
  test('says where, what is right and what was found', () => {
    const complaint = { code: 'not a whole number', least: 1 } as const;
    const fault = { complaint, path: ['items', 3, 'quantity'], line: 41, found: '1.5' };
    expect(faultText('order.yaml', fault)).toBe(
      'order.yaml:41: items[3].quantity must be a whole number of at least 1; found 1.5',
    );
  });

  test('needs no line and no field', () => {
    const complaint = { code: 'unreadable', reason: 'it is a folder' } as const;
    expect(faultText('plan.json', { complaint, path: [] })).toBe(
      'plan.json: cannot be read: it is a folder',
    );
  });

  test('names the cell of a table', () => {
    const complaint = { code: 'not a length' } as const;
    const fault = { complaint, path: ['Depth'], found: 'x' };
    const cell = { file: 'list.csv', row: 5, column: 'D' };
    expect(faultText('order.yaml', { ...fault, cell })).toBe(
      'list.csv: row 5, column D: Depth must be a length such as 1 5/8, 1.625 in or 41.3 mm; found x',
    );
    expect(faultText('order.yaml', { ...fault, path: [], cell: { file: 'a', row: 5 } })).toMatch(
      /^a: row 5: must be/,
    );
  });

  test('shows what a terminal would obey or hide, in names of files and fields too', () => {
    const complaint = { code: 'not a length' } as const;
    const fault = { complaint, path: ['\u202ea'], found: '\u009b2J\u202e\u{e0001}' };
    expect(faultText('b\u001b[2J.yaml', fault)).toBe(
      'b\\u001b[2J.yaml: "\\u202ea" must be a length such as 1 5/8, 1.625 in or 41.3 mm; ' +
        'found \\u009b2J\\u202e\\u{e0001}',
    );
  });

  test('stays one line whatever was found', () => {
    const complaint = { code: 'not a length' } as const;
    const fault = { complaint, path: ['a\nb'], line: 1, found: 'x\r\ny\u0007' };
    expect(faultText('order.yaml', fault)).toBe(
      'order.yaml:1: "a\\nb" must be a length such as 1 5/8, 1.625 in or 41.3 mm; found x\\r\\ny\\u0007',
    );
  });
});

test('paths read as an order is written', () => {
  expect(pathText(['items', 3, 'across flats'])).toBe('items[3].across flats');
  expect(pathText(['shop', ' '])).toBe('shop." "');
  expect(pathText(['x'.repeat(100)])).toBe(`${'x'.repeat(57)}...`);
});

test('quotes are short and visible', () => {
  expect(quote(undefined)).toBe('nothing');
  expect(quote('')).toBe('nothing');
  expect(quote('  ')).toBe('only blanks');
  expect(quote('1 5/8"')).toBe('1 5/8"');
  expect(quote('y'.repeat(100))).toBe(`${'y'.repeat(57)}...`);
});

test('choices', () => {
  expect(choiceText(['a'])).toBe('a');
  expect(choiceText(['a', 'b', 'c'])).toBe('a, b or c');
});
