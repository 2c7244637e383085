import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { blank } from './commands/blank.js';
import { check } from './commands/check.js';
import { gallery } from './commands/gallery.js';
import { commands } from './commands/index.js';
import { newOrder } from './commands/new.js';
import { plan } from './commands/plan.js';
import { rack } from './commands/rack/index.js';
import { optionKey, sizeOptions } from './commands/size-options.js';
import { CSV_NAMES } from './csv/csv-files.js';
import { run, temporaryFolder } from './environment.test.support.js';
import { RULE_SIZES } from './order/bend-rule-sizes.js';
import { orderContext } from './order/order-context.js';
import { altered } from './order/small-order.test.support.js';
import { planFileSchema } from './plan-file/plan-file.js';
import { COLUMNS } from './rack/csv/columns.js';
import { shellWords } from './shell-words.test.support.js';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

/** The contents of the code blocks in a language. */
function blocks(language: string, text = readme): readonly string[] {
  const fence = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\`$`, 'gm');
  return [...text.matchAll(fence)].map((match) => match[1] ?? '');
}

/** The last code word in the first cell of every table row. */
function rowNames(text: string): readonly string[] {
  return [...text.matchAll(/^\| [^|]*?`([^`|]+)` *\|/gm)].map((match) => match[1] ?? '');
}

test('the worked examples print what the README shows', async () => {
  const [order = '', lids = ''] = blocks('yaml');
  const [items = ''] = blocks('csv');
  // What a section shows starts anew, on a rack of its own; the first two are one story.
  const keeping = readme.indexOf('## Keeping the rack\n');
  const stories = [readme.slice(0, keeping), readme.slice(keeping)].map((text) => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'order.yaml'), order);
    writeFileSync(join(cwd, 'lids.yaml'), lids);
    writeFileSync(join(cwd, 'items.csv'), items);
    return { cwd, sessions: blocks('console', text) };
  });
  expect(stories.map(({ sessions }) => sessions.length)).toEqual([8, 4]);
  for (const { cwd, sessions } of stories) {
    for (const session of sessions) {
      const [prompt = '', ...shown] = session.split('\n');
      const [name, ...words] = shellWords(prompt.replace(/^\$ /, ''));
      expect(name).toBe('stripwright');
      const { exitCode, stdout, stderr } = await run(words, { cwd });
      expect(stderr).toBe('');
      expect(exitCode).toBe(0);
      expect(stdout).toBe(shown.join('\n'));
    }
  }
});

test('every line of shell is one that can be run', async () => {
  const cwd = temporaryFolder();
  const lines = blocks('sh').flatMap((block) => block.trim().split('\n'));
  const own = lines.flatMap((line) => /stripwright [a-z][^)|]*/.exec(line)?.[0].trim() ?? []);
  // What is left installs the package.
  expect(lines.filter((line) => !line.includes('stripwright '))).toEqual([
    'npm install --global @stripwright/cli',
  ]);
  expect(own).toHaveLength(3);
  for (const line of own) {
    const { exitCode, stderr } = await run(shellWords(line).slice(1), { cwd });
    expect([exitCode, stderr]).toEqual([0, '']);
  }
});

describe('the README names', () => {
  test('every command, and every option of those that have a section', () => {
    for (const { name, options } of [newOrder, plan, check, gallery]) {
      const from = readme.indexOf(`### Options of \`${name}\``);
      expect(from).toBeGreaterThan(0);
      const section = readme.slice(from, readme.indexOf('\n### ', from + 1));
      const named = rowNames(section.replaceAll(/(--[a-z-]+) [A-Za-z]+`/g, '$1`'));
      expect(named.toSorted()).toEqual(
        Object.keys(options)
          .map((key) => `--${key}`)
          .toSorted(),
      );
    }
    for (const { name } of [newOrder, plan, check, gallery, blank, ...commands.slice(-1)]) {
      expect(readme).toMatch(new RegExp(`^\\| \`stripwright ${name} `, 'm'));
    }
  });

  test('every top-level field of a plan', () => {
    const section = readme.slice(readme.indexOf('## plan.json'));
    for (const name of Object.keys(planFileSchema.shape)) expect(rowNames(section)).toContain(name);
  });

  test('every option of a strip, apart from sizes', () => {
    const sizes = new Set(Object.keys(sizeOptions(families)));
    const rules = RULE_SIZES.map(({ name }) => optionKey(name));
    const names = Object.keys(blank.options).filter(
      (name) => !sizes.has(name) && !rules.includes(name),
    );
    expect(names.length).toBeGreaterThan(20);
    for (const name of names) expect(readme).toMatch(new RegExp(`--${name}\\b`));
  });

  test('every action of the rack, each option of theirs, and every column of its table', () => {
    const from = readme.indexOf('## Keeping the rack\n');
    const section = readme.slice(from, readme.indexOf('## The order\n'));
    for (const { name, options } of rack.actions) {
      expect(section).toContain(`stripwright rack ${name}`);
      for (const option of Object.keys(options)) expect(section).toContain(`--${option}`);
    }
    for (const column of COLUMNS) expect(section).toContain(`\`${column}\``);
  });

  test('every field of an order', async () => {
    const cwd = temporaryFolder();
    // An unknown field makes the command list the known ones.
    const order = [
      'stray: x',
      'shop: { stray: x, shear: { stray: x }, handwork: { stray: x }, labour: { stray: x } }',
      'sheets: [{ stray: x }]',
      'offcuts: [{ stray: x }]',
      'items: [{ outline: polygon, stray: x }, { blank: 1 x 1, stray: x }]',
    ].join('\n');
    writeFileSync(join(cwd, 'order.yaml'), order);
    const { stderr } = await run(['plan', 'order.yaml'], { cwd });
    const lists = [...stderr.matchAll(/known here: (.*)$/gm)].map((match) => match[1] ?? '');
    expect(lists).toHaveLength(9);
    const names = new Set(lists.flatMap((list) => list.split(', ')));
    expect(names.size).toBeGreaterThan(25);
    for (const name of names) expect(rowNames(readme)).toContain(name);
  });

  test('the marks that are used where an order names none', () => {
    expect(orderContext({ shop: { units: 'in' } }, families).rule.mark).toBe(25.4 / 32);
    expect(orderContext({ shop: { units: 'mm' } }, families).rule.mark).toBe(0.5);
    expect(readme).toContain('`1/32 in` or `0.5 mm`');
  });
});

test('the README tells of every table for spreadsheets', () => {
  const section = readme.slice(readme.indexOf('## Cut maps and tables'));
  for (const name of CSV_NAMES) expect(rowNames(section)).toContain(name);
});

test('the work and the margin of the README are read and quoted', async () => {
  const [labour = ''] = blocks('yaml')
    .filter((block) => block.includes('labour:'))
    .map((block) => block.replace(/^shop:\n/, ''));
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'order.yaml'), altered('  hem: 1/4\n', `  hem: 1/4\n${labour}`));
  const words = ['plan', 'order.yaml', '--out', 'packet', '--quiet'];
  expect(await run(words, { cwd })).toEqual({ exitCode: 0, stdout: '', stderr: '' });
  const quote = readFileSync(join(cwd, 'packet', 'quote.csv'), 'utf8');
  expect(quote).toMatch(/^Work,,Seams,6,,,4,,14\.40,,,\r$/m);
});
