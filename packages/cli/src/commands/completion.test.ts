import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { bashCompletion } from '../completion/bash.js';
import type { CompletedCommand } from '../completion/completed-command.js';
import { fishCompletion } from '../completion/fish.js';
import { run, temporaryFolder } from '../environment.test.support.js';
import { commands } from './index.js';

const folder = temporaryFolder();
writeFileSync(join(folder, 'my order.yaml'), '');

const isHere = (shell: string) => spawnSync(shell, ['-c', 'true']).status === 0;

async function script(shell: string): Promise<string> {
  const { exitCode, stdout, stderr } = await run(['completion', shell], { cwd: folder });
  expect([exitCode, stderr]).toEqual([0, '']);
  return stdout;
}

/** What bash offers for the last of some words, from its own variables and function. */
function inBash(text: string, words: readonly string[]): readonly string[] {
  const quoted = words.map((word) => `'${word}'`).join(' ');
  const line = `${text}
    COMP_WORDS=(stripwright ${quoted}); COMP_CWORD=${words.length}
    _stripwright; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const shown = execFileSync('bash', ['--norc', '-c', line], { encoding: 'utf8' });
  return shown.split('\n').filter((word) => word !== '');
}

function inFish(text: string, line: string): readonly string[] {
  writeFileSync(join(folder, 'complete.fish'), text);
  const asked = `source complete.fish; complete -C '${line}'`;
  const options = { cwd: folder, encoding: 'utf8', env: { ...process.env, HOME: folder } } as const;
  const shown = execFileSync('fish', ['--no-config', '-c', asked], options);
  return shown.split('\n').flatMap((one) => (one === '' ? [] : [one.split('\t')[0] ?? '']));
}

/** What zsh is told to offer, its own offering functions replaced by ones that print. */
function inZsh(text: string, words: readonly string[]): readonly string[] {
  const quoted = words.map((word) => `'${word}'`).join(' ');
  const last = words.at(-1) ?? '';
  const line = `compdef() { : }
    _files() { print -l '<files>' }
    compadd() { shift; print -l -- "$@" }
    _describe() { print -l -- \${found%%:*} }
    ${text}
    words=(stripwright ${quoted}); CURRENT=${words.length + 1}; PREFIX='${last}'
    _stripwright`;
  const shown = execFileSync('zsh', ['-f', '-c', line], { encoding: 'utf8' });
  const offered = shown.split('\n').filter((word) => word !== '');
  return offered.filter((word) => word.startsWith(last) || word === '<files>');
}

const outlines = families.map(({ name }) => name.replaceAll(' ', '-'));
const names = commands.map(({ name }) => name);

/** Words typed, the last of them in part, and what is offered. */
const CASES: readonly (readonly [words: readonly string[], offered: readonly string[]])[] = [
  [[''], names],
  [['pl'], ['plan']],
  [['blank', ''], outlines],
  [
    ['blank', 'regular-polygon', '--across-'],
    ['--across-flats', '--across-corners'],
  ],
  [
    ['blank', 'heart', '--edge', ''],
    ['raw-edge', 'single-hem', 'double-hem', 'wired-edge'],
  ],
  [
    ['new', '--units', ''],
    ['in', 'mm'],
  ],
  [['plan', 'order.yaml', '--q'], ['--quiet']],
  [
    ['completion', ''],
    ['bash', 'zsh', 'fish'],
  ],
];

describe.skipIf(!isHere('bash'))('in bash', () => {
  test.each(CASES)('%j', async (words, offered) => {
    expect(inBash(await script('bash'), words).toSorted()).toEqual([...offered].toSorted());
  });

  test('files are left to bash, and a value may follow a sign', async () => {
    const text = await script('bash');
    expect(inBash(text, ['plan', ''])).toEqual([]);
    expect(inBash(text, ['plan', 'order.yaml', '--out', 'x'])).toEqual([]);
    expect(inBash(text, ['new', '--units', '='])).toEqual(['in', 'mm']);
    expect(inBash(text, ['new', '--units', '=', 'm'])).toEqual(['mm']);
  });
});

describe.skipIf(!isHere('fish'))('in fish', () => {
  test.each(CASES)('%j', async (words, offered) => {
    const found = inFish(await script('fish'), ['stripwright', ...words].join(' '));
    expect(found.toSorted()).toEqual([...offered].toSorted());
  });

  test('files too', async () => {
    expect(inFish(await script('fish'), 'stripwright plan my')).toEqual(['my order.yaml']);
  });
});

describe.skipIf(!isHere('zsh'))('in zsh', () => {
  test.each(CASES)('%j', async (words, offered) => {
    expect(inZsh(await script('zsh'), words).toSorted()).toEqual([...offered].toSorted());
  });

  test('files too', async () => {
    expect(inZsh(await script('zsh'), ['plan', ''])).toEqual(['<files>']);
    expect(inZsh(await script('zsh'), ['plan', 'o', '--out', ''])).toEqual(['<files>']);
  });
});

/** Commands of two words, as a group of them has. */
const GROUPED: readonly CompletedCommand[] = [
  { words: ['plan'], summary: 'plans', options: [], subject: 'file' },
  {
    words: ['rack', 'list'],
    summary: "what's there",
    options: [{ name: '--metal', summary: 'of this', takes: ['brass', 'copper'] }],
    subject: 'none',
  },
  { words: ['rack', 'add'], summary: 'one more', options: [], subject: 'none' },
];

test.skipIf(!isHere('bash'))('commands of two words, in bash', () => {
  const text = bashCompletion(GROUPED);
  expect(inBash(text, [''])).toEqual(['plan', 'rack']);
  expect(inBash(text, ['rack', ''])).toEqual(['list', 'add']);
  expect(inBash(text, ['rack', 'list', '--'])).toEqual(['--metal']);
  expect(inBash(text, ['rack', 'list', '--metal', 'c'])).toEqual(['copper']);
});

test.skipIf(!isHere('fish'))('commands of two words, in fish', () => {
  const text = fishCompletion(GROUPED);
  expect(inFish(text, 'stripwright rack ').toSorted()).toEqual(['add', 'list']);
  expect(inFish(text, 'stripwright rack list --metal c')).toEqual(['copper']);
});

test('a shell that there is none for', async () => {
  expect(await run(['completion', 'bsh'], { cwd: folder })).toEqual({
    exitCode: 2,
    stdout: '',
    stderr: 'stripwright: the shell must be bash, zsh or fish; found bsh; did you mean "bash"?\n',
  });
});
