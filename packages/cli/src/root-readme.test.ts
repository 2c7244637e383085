import { execFile } from 'node:child_process';
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from './environment.test.support.js';
import { shellWords } from './shell-words.test.support.js';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const developers = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly scripts: Readonly<Record<string, string>>;
};

/** A folder that looks like the clone to commands, so that what they write is gone again. */
const clone = temporaryFolder();
for (const name of ['packages', 'test-data', 'node_modules']) {
  symlinkSync(join(root, name), join(clone, name));
}

/** Every line of every block of shell. */
const lines = [...readme.matchAll(/^ *```sh\n([\s\S]*?)^ *```$/gm)].flatMap((match) =>
  (match[1] ?? '').split('\n').flatMap((line) => (line.trim() === '' ? [] : [line.trim()])),
);
const OURS = /^node (packages\/cli\/bin\/stripwright\.js .*)$/;
const commands = lines.flatMap((line) => OURS.exec(line)?.[1] ?? []);
const setUps = lines.filter((line) => !OURS.test(line));

/** Runs the command as it is built, for a user who has no rack. */
async function runBuilt(command: string) {
  const env = { ...process.env, XDG_DATA_HOME: clone, HOME: clone, APPDATA: clone };
  return promisify(execFile)(process.execPath, shellWords(command), { cwd: clone, env });
}

describe('the README at the top', () => {
  it('states the job in one paragraph, then the two commands, then a picture', () => {
    const places = [
      readme.indexOf('Stripwright is for the tinsmith'),
      readme.indexOf('npm run demo'),
      readme.indexOf('npm test'),
      readme.indexOf('<img '),
      readme.indexOf('\n## '),
    ];
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it('leads from a clone to a printed packet in three steps', () => {
    const steps = [...readme.slice(0, readme.indexOf('npm test')).matchAll(/^(\d)\. (.*)/gm)];
    expect(steps.map((match) => match[1])).toEqual(['1', '2', '3']);
    expect(steps.map((match) => match[2])).toEqual([
      expect.stringMatching(/^Plan /),
      expect.stringMatching(/^Open `demo-packet\//),
      expect.stringMatching(/^Print /),
    ]);
  });

  it('has a demo that plans an order into the folder that the steps go on with', async () => {
    const plan = OURS.exec(scripts.demo?.split(' && ').at(-1) ?? '')?.[1] ?? '';
    expect(plan).toMatch(/ --out demo-packet$/);
    const { stderr } = await runBuilt(plan);
    expect(stderr).toBe('');
    const named = [...readme.matchAll(/`demo-packet\/([^`]+)`/g)].map((match) => match[1] ?? '');
    expect(named.length).toBeGreaterThan(0);
    for (const name of [...named, 'cut-map-1.svg']) {
      expect(existsSync(join(clone, 'demo-packet', name)), name).toBe(true);
    }
  });

  it('shows a cut map that is there and is well-formed', () => {
    const source = /<img src="([^"]+)"/.exec(readme)?.[1] ?? '';
    const elements: string[] = [];
    const parser = new SaxesParser({ xmlns: true });
    parser.on('opentag', (tag) => elements.push(tag.name));
    parser.write(readFileSync(join(root, source), 'utf8')).close();
    expect(elements[0]).toBe('svg');
    expect(elements).toContain('title');
    expect(elements).toContain('desc');
  });

  it('links only to files that are there', () => {
    const links = [...readme.matchAll(/\]\(([^)]+)\)/g)].map((match) => match[1] ?? '');
    expect(links.length).toBeGreaterThan(5);
    for (const link of links) expect(() => readFileSync(join(root, link))).not.toThrow();
  });

  it('gives commands that work, in their order, with the command as it is built', async () => {
    expect(commands.length).toBeGreaterThanOrEqual(6);
    for (const command of commands) {
      const { stdout, stderr } = await runBuilt(command);
      expect(stderr, command).toBe('');
      expect(stdout.split('\n').length, command).toBeGreaterThan(1);
    }
  });

  it('gives no other command in a block, and none in its text, that is not there', () => {
    // The demo is run above, and the tests are what runs this.
    expect(setUps).toEqual(['npm run demo', 'npm test']);
    const texts = [readme, developers].join('\n');
    const npm = [...texts.matchAll(/\bnpm (?:run (?:--silent )?([a-z][a-z:-]*)|(test)\b)/g)];
    const names = npm.map((match) => match[1] ?? match[2] ?? '');
    expect(names).toContain('bench:strip');
    for (const name of names) expect(Object.keys(scripts)).toContain(name);
  });
});
