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
import { optionKey, sizeOptions } from './commands/size-options.js';
import { run, temporaryFolder } from './environment.test.support.js';
import { RULE_SIZES } from './order/bend-rule-sizes.js';
import { orderContext } from './order/order-context.js';
import { planFileSchema } from './plan-file/plan-file.js';
import { shellWords } from './shell-words.test.support.js';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

/** The contents of the code blocks in a language. */
function blocks(language: string): readonly string[] {
  const fence = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\`$`, 'gm');
  return [...readme.matchAll(fence)].map((match) => match[1] ?? '');
}

/** The last code word in the first cell of every table row. */
function rowNames(text: string): readonly string[] {
  return [...text.matchAll(/^\| [^|]*?`([^`|]+)` *\|/gm)].map((match) => match[1] ?? '');
}

test('the worked example prints what the README shows', async () => {
  const cwd = temporaryFolder();
  const [order = ''] = blocks('yaml');
  writeFileSync(join(cwd, 'order.yaml'), order);
  const [items = ''] = blocks('csv');
  writeFileSync(join(cwd, 'items.csv'), items);
  const sessions = blocks('console');
  expect(sessions.length).toBe(6);
  for (const session of sessions) {
    const [prompt = '', ...shown] = session.split('\n');
    const [name, ...words] = shellWords(prompt.replace(/^\$ /, ''));
    expect(name).toBe('stripwright');
    const { exitCode, stdout, stderr } = await run(words, { cwd });
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    expect(stdout).toBe(shown.join('\n'));
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

  test('every field of an order', async () => {
    const cwd = temporaryFolder();
    // An unknown field makes the command list the known ones.
    const order = [
      'stray: x',
      'shop: { stray: x, shear: { stray: x }, handwork: { stray: x } }',
      'sheets: [{ stray: x }]',
      'offcuts: [{ stray: x }]',
      'items: [{ outline: polygon, stray: x }, { blank: 1 x 1, stray: x }]',
    ].join('\n');
    writeFileSync(join(cwd, 'order.yaml'), order);
    const { stderr } = await run(['plan', 'order.yaml'], { cwd });
    const lists = [...stderr.matchAll(/known here: (.*)$/gm)].map((match) => match[1] ?? '');
    expect(lists).toHaveLength(8);
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
