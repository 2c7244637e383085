import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mutatedTables } from '../../rack/csv/mutated-tables.test.support.js';
import { newShop, shopWithMetal } from './rack.test.support.js';

describe('rack export', () => {
  test('prints the table, or writes it with a byte order mark, and import changes nothing', async () => {
    const { good, cwd } = await shopWithMetal();
    const printed = await good('export');
    expect(printed.split('\r\n')).toHaveLength(6);
    expect(await good('export rack.csv')).toBe('Written to rack.csv: 4 lines and the headings.\n');
    expect(readFileSync(join(cwd, 'rack.csv'), 'utf8')).toBe(`\uFEFF${printed}`);
    const before = await good('list --json');
    expect(await good('import rack.csv')).toBe('Added: 0\nCorrected: 0\nAs they were: 4\n');
    expect(await good('list --json')).toBe(before);
    expect(readdirSync(cwd).sort()).toEqual(['rack.csv', 'usual']);
  });

  test('writes for spreadsheets with a decimal comma', async () => {
    const { good } = await shopWithMetal();
    await good('add "17.3 x 6" --value 1.25');
    const printed = await good('export --semicolons');
    expect(printed).toContain('CHK;offcut;;17,3 in;6 in;tinplate;;;;;1,25;2026-03-02;0;1\r\n');
  });

  test('writes over an older table, and over nothing else', async () => {
    const { good, bad, cwd } = await shopWithMetal();
    await good('export rack.csv');
    await good('add "9 x 9"');
    await good('export rack.csv');
    expect(readFileSync(join(cwd, 'rack.csv'), 'utf8')).toContain('CHK');
    writeFileSync(join(cwd, 'order.yaml'), 'name: Hearts\n');
    writeFileSync(join(cwd, 'picture.png'), Buffer.from([0x89, 0x50, 0xff, 0xfe]));
    for (const file of ['order.yaml', 'picture.png']) {
      expect(await bad(`export ${file}`)).toBe(
        `stripwright: ${file}: a file is there that is not a table of a rack; name another, or remove it\n`,
      );
    }
    expect(readFileSync(join(cwd, 'order.yaml'), 'utf8')).toBe('name: Hearts\n');
    expect(await bad('export usual')).toBe(
      'stripwright: usual: cannot be written: it is a folder; name a file in it\n',
    );
  });
});

describe('rack import', () => {
  test('adds, corrects and leaves alone, and prints the marks to write', async () => {
    const { good, cwd } = await shopWithMetal();
    const table = [
      'mark;kind;length;width;place;count',
      'CCY;offcut;17 1/2 in;6 in;door;1',
      'CDV;offcut;300 mm;90 mm;;1',
      ';offcut;9;9;"box; low";',
      ';sheets;20;14;;3',
    ];
    writeFileSync(join(cwd, 'edited.csv'), table.join('\r\n'));
    expect(await good('import edited.csv')).toBe(
      [
        'Write on the metal:',
        '  Mark  Size        Metal',
        '  CHK   9 x 9 in    tinplate',
        '  CJH   20 x 14 in  tinplate',
        '',
        'Added: 2',
        'Corrected: 1 (CCY)',
        'As they were: 1',
        '',
      ].join('\n'),
    );
    expect(JSON.parse(await good('list --json'))).toHaveLength(6);
    expect(JSON.parse(await good('import edited.csv --json'))).toEqual({
      added: ['CKE', 'CJH'],
      corrected: [],
      unchanged: 2,
    });
  });

  test('tells what the rack itself refuses by its line, and changes nothing', async () => {
    const { good, bad, cwd } = await shopWithMetal();
    const before = await good('list --json');
    await good('receive "20 x 14" --count 2 --thickness 0.011in');
    const table = ['mark,length,width', 'CCY,9,9', 'CHK,28,20'];
    writeFileSync(join(cwd, 'edited.csv'), table.join('\n'));
    expect(await bad('import edited.csv')).toMatch(/^stripwright: edited\.csv:3: CHK: .*CFN/);
    expect(JSON.parse(await good('list --json')).slice(0, 4)).toEqual(JSON.parse(before));
  });

  test.each([
    ['nothing.csv', 'nothing.csv: cannot be read: there is no such file or folder;'],
    ['usual/rack.sqlite', 'usual/rack.sqlite: cannot be read: it is not text in UTF-8'],
  ])('refuses %s', async (file, message) => {
    const { bad } = await shopWithMetal();
    expect(await bad(`import ${file}`)).toContain(message);
  });
});

test('whatever the table, it is taken in whole, or told to be faulty and not at all', async () => {
  const { good, rack, cwd } = newShop();
  await good('add "17 1/2 x 6 in" --place "left rack" --value 1.20');
  await good('receive "28 x 20 in" --count 10 --thickness 0.011in');
  const table = await good('export');
  const seen = new Set<number>();
  await fc.assert(
    fc.asyncProperty(mutatedTables(table), async (text) => {
      writeFileSync(join(cwd, 'edited.csv'), text);
      const before = await good('list --gone --json');
      const { exitCode, stdout, stderr } = await rack('import edited.csv');
      seen.add(exitCode);
      expect([0, 2], stderr).toContain(exitCode);
      for (const told of [stdout, stderr])
        expect(told).not.toMatch(/undefined|NaN|\[object|^ +at .*:\d+:\d+/m);
      if (exitCode === 2) {
        expect(stdout).toBe('');
        for (const line of stderr.split('\n').slice(0, -1))
          expect(line).toMatch(
            /^(stripwright: edited\.csv:\d+|edited\.csv(: row \d+(, column [A-Z]+)?)?): \S/,
          );
        expect(await good('list --gone --json')).toBe(before);
      } else {
        expect(stderr).toBe('');
        // Whatever it was, the rack is one that can be written and read again.
        await good('export again.csv');
        expect(await good('import again.csv')).toMatch(/^Added: 0\nCorrected: 0\n/);
      }
    }),
    { numRuns: 100 },
  );
  // The edits are neither all harmless nor all fatal.
  expect([...seen].sort()).toEqual([0, 2]);
  expect(existsSync(join(cwd, '.again.csv.partial'))).toBe(false);
});
