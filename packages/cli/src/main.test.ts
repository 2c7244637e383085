import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { isGroup, runnable } from './commands/command.js';
import { commands } from './commands/index.js';
import { run, temporaryFolder } from './environment.test.support.js';
import { choiceText } from './faults/fault-text.js';
import { SMALL_ORDER } from './order/small-order.test.support.js';
import { RING } from './ring.test.support.js';
import { shellWords } from './shell-words.test.support.js';
import { VERSION } from './version.js';

const cwd = temporaryFolder();
writeFileSync(join(cwd, 'order.yaml'), SMALL_ORDER);
writeFileSync(join(cwd, 'ring.svg'), RING);

const all = runnable(commands);
const groups = commands.filter(isGroup).map(({ name }) => [name]);
const helps = [[], ...all.map(({ words }) => words)];
const NAMES = choiceText(commands.map(({ name }) => name));

describe('help', () => {
  test.each(groups.map((words) => [words]))('%j lists its actions', async (words) => {
    const { exitCode, stdout, stderr } = await run([...words, '--help'], { cwd });
    expect([exitCode, stderr]).toEqual([0, '']);
    const actions = all.filter((one) => one.words.length > 1 && one.words[0] === words[0]);
    expect(actions.length).toBeGreaterThan(1);
    for (const one of actions) expect(stdout).toContain(`stripwright ${one.words.join(' ')} `);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test.each(helps.map((words) => [[...words, '--help']]))('%j', async (words) => {
    const { exitCode, stdout, stderr } = await run(words, { cwd });
    expect(exitCode).toBe(0);
    expect(stderr).toBe('');
    expect(stdout).toContain('Examples:');
    expect(stdout).toContain('Exit codes: 0 done;');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(stdout).not.toMatch(/undefined|NaN|\[object/);
  });

  test('every example runs', async () => {
    const examples = all.flatMap(({ command: { examples } }) =>
      examples.map(({ command }) => command),
    );
    expect(examples.length).toBeGreaterThanOrEqual(all.length);
    for (const example of ['stripwright plan order.yaml --out packet', ...examples]) {
      const [name, ...words] = shellWords(example);
      expect(name).toBe('stripwright');
      const { exitCode, stderr } = await run(words, { cwd });
      expect(stderr, example).toBe('');
      expect(exitCode, example).toBe(0);
    }
  });

  test('the help of the whole shows no example that no command has', async () => {
    const { stdout } = await run(['--help'], { cwd });
    const shown = /Examples:\n +(.*?) {2,}/.exec(stdout)?.[1];
    const examples = all.flatMap(({ command }) => command.examples);
    expect(examples.map(({ command }) => command)).toContain(shown);
  });

  test('blank lists every outline with its sizes', async () => {
    const { stdout } = await run(['blank', '--help'], { cwd });
    expect(stdout).toMatch(/^ *regular polygon: .*\n(?:.*\n)?.*--sides \[--side\]/m);
  });

  test('the version is that of the package', async () => {
    expect(await run(['--version'], { cwd })).toEqual({
      exitCode: 0,
      stdout: `${VERSION}\n`,
      stderr: '',
    });
  });

  test('does not change with the language of the shell', async () => {
    const before = process.env.LC_ALL;
    process.env.LC_ALL = 'de_DE.UTF-8';
    try {
      const { stdout } = await run(['--help'], { cwd });
      expect(stdout).toContain('Commands:');
    } finally {
      if (before === undefined) delete process.env.LC_ALL;
      else process.env.LC_ALL = before;
    }
  });
});

describe('misuse', () => {
  test.each<[words: string[], message: string]>([
    [[], `stripwright: name a command: ${NAMES}; see stripwright --help\n`],
    [['plna', 'x'], 'stripwright: no such command; did you mean plan? See stripwright --help\n'],
    [['frobnicate'], 'stripwright: unknown: frobnicate; see stripwright --help\n'],
    [['plan'], 'stripwright: what to work on is missing; see stripwright plan --help\n'],
    [['plan', ''], 'stripwright: what to work on is missing; see stripwright plan --help\n'],
    [
      ['rack'],
      'stripwright: name an action: add, receive, list, draw, correct, remove, history, worth, ' +
        'keep, export or import; see stripwright rack --help\n',
    ],
    [
      ['rack', 'lsit'],
      'stripwright: no such action; did you mean list? See stripwright rack --help\n',
    ],
    [['rack', 'add'], 'stripwright: what to work on is missing; see stripwright rack add --help\n'],
    [
      ['rack', 'list', '--metl', 'brass'],
      'stripwright: unknown: metl; did you mean --metal? See stripwright rack list --help\n',
    ],
    [['rack', 'list', 'plan'], 'stripwright: unknown: plan; see stripwright rack list --help\n'],
    [['plan', 'a', 'b'], 'stripwright: unknown: b; see stripwright plan --help\n'],
    [['--hlep'], 'stripwright: unknown: hlep; did you mean --help? See stripwright --help\n'],
    [['--frob=1'], 'stripwright: unknown: frob; see stripwright --help\n'],
    [
      ['blank', '--hlep'],
      'stripwright: unknown: hlep; did you mean --help? See stripwright blank --help\n',
    ],
    [
      ['new', '--unit', 'mm'],
      'stripwright: unknown: unit; did you mean --units? See stripwright new --help\n',
    ],
    [
      ['completoin', 'bash'],
      'stripwright: no such command; did you mean completion? See stripwright --help\n',
    ],
  ])('%j', async (words, message) => {
    expect(await run(words, { cwd })).toEqual({ exitCode: 2, stdout: '', stderr: message });
  });
});

test('nothing is written but to the streams that were handed in', async () => {
  const spies = [
    vi.spyOn(process.stdout, 'write').mockReturnValue(true),
    ...(['log', 'info', 'warn', 'error', 'debug'] as const).map((name) =>
      vi.spyOn(console, name).mockImplementation(() => {}),
    ),
  ];
  try {
    for (const words of [['--help'], ['--version'], ['plan'], ['plan', 'order.yaml']]) {
      await run(words, { cwd });
    }
    for (const spy of spies) expect(spy).not.toHaveBeenCalled();
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
});

test('the command itself is a thin edge', () => {
  const edge = readFileSync(new URL('../bin/stripwright.js', import.meta.url), 'utf8');
  expect(edge.startsWith('#!/usr/bin/env node\n')).toBe(true);
  expect(edge.trim().split('\n').length).toBeLessThan(10);
});
