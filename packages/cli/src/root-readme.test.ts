import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { SaxesParser } from 'saxes';
import { afterAll, describe, expect, it } from 'vitest';
import { shellWords } from './shell-words.test.support.js';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const scratch = mkdtempSync(join(tmpdir(), 'stripwright-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** Commands of the README that run the built command, without its two set-up commands. */
const commands = [...readme.matchAll(/^node (packages\/cli\/bin\/stripwright\.js .*)$/gm)].map(
  (match) => match[1] ?? '',
);

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
    expect(commands).toHaveLength(6);
    // Whoever runs this may have a rack.
    const env = { ...process.env, XDG_DATA_HOME: scratch, HOME: scratch, APPDATA: scratch };
    for (const command of commands) {
      const words = shellWords(command).map((word) =>
        word.replace(/^(metric-packet|outline-gallery|shop\.rack)/, join(scratch, '$1')),
      );
      const run = await promisify(execFile)(process.execPath, words, { cwd: root, env });
      expect(run.stderr).toBe('');
      expect(run.stdout).toMatch(/Written to|: good: |^Heart|^Write on the metal|left rack/);
    }
  });
});
