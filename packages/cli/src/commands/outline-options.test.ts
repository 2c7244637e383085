import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import { OPEN, RING } from '../ring.test.support.js';

const cwd = temporaryFolder();
writeFileSync(join(cwd, 'ring.svg'), RING);
writeFileSync(join(cwd, 'open.svg'), OPEN);
const blank = (...words: string[]) => run(['blank', ...words, '--depth', '25mm'], { cwd });

describe('a drawing', () => {
  test('gives a strip for each of its outlines, in its real size', async () => {
    const { exitCode, stdout, stderr } = await blank('--svg', 'ring.svg', '--units', 'mm');
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    expect(stdout).toContain('ring.svg: ring outer, 80 x 80 mm\n');
    expect(stdout).toContain('ring.svg: ring inner, 40 x 40 mm\n');
    // Circles 80 mm and 40 mm across and tabs of 12 mm, rounded up to half a millimetre.
    expect([...stdout.matchAll(/Strip +([\d.]+) x/g)].map((match) => match[1])).toEqual([
      `${Math.ceil(2 * (80 * Math.PI + 12)) / 2}`,
      `${Math.ceil(2 * (40 * Math.PI + 12)) / 2}`,
    ]);
    expect(stdout.match(/gloves/g)).toHaveLength(1);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test.each(['--across', '--high'])('is rescaled by %s', async (option) => {
    const { stdout } = await blank('--svg', 'ring.svg', option, '4');
    expect(stdout).toContain('ring outer, 4 x 4 in\n');
    expect(stdout).toContain('ring inner, 2 x 2 in\n');
  });

  test('that was traced is fitted with few lines and arcs, to a tolerance', async () => {
    // A circle 80 mm across, drawn as 200 short lines.
    const points = Array.from({ length: 200 }, (_, index) => {
      const angle = (index * Math.PI) / 100;
      return `${(50 + 40 * Math.cos(angle)).toFixed(4)},${(50 + 40 * Math.sin(angle)).toFixed(4)}`;
    });
    const traced = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><polygon points="${points.join(' ')}"/></svg>`;
    writeFileSync(join(cwd, 'traced.svg'), traced);
    const { stdout, stderr } = await blank('--svg', 'traced.svg', '--tolerance', '0.1mm');
    expect(stderr).toBe('');
    expect(stdout).toContain('No sharp bends.');
    expect(stdout.match(/^ +\d+ .* in +\d+\.\d +/gm)?.length).toBeLessThanOrEqual(4);
  });

  test('gives JSON as a list', async () => {
    const { stdout } = await blank('--svg', 'ring.svg', '--json');
    const blanks = JSON.parse(stdout);
    expect(blanks.map(({ id }: { readonly id: string }) => id)).toEqual([
      'ring outer',
      'ring inner',
    ]);
    expect(blanks[0].strip).toMatchObject({ outline: 'ring.svg', bends: [] });
  });

  test.each<[words: string, message: string]>([
    ['--svg open.svg', 'open.svg:2:3: path "hook": The path is open'],
    ['--svg gone.svg', 'gone.svg: cannot be read: there is no such file'],
    ['--svg ring.svg heart', '--svg stands in place of an outline; leave out heart'],
    [
      '--svg ring.svg --long 3',
      '--long is no size of a drawing; its sizes are --across, --high, --tolerance',
    ],
    ['heart --across 3 --tolerance 0.1mm', '--tolerance is no size of a heart;'],
    ['--svg ring.svg --tolerance 0', '--tolerance must be above 0; found 0'],
    ['--svg ring.svg --across 0', '--across must be above 0; found 0'],
    ['--svg ring.svg --across 3 --high 5', 'ring.svg: '],
    ['--svg ring.svg --tab 90mm', '--tab: '],
  ])('%s', async (words, message) => {
    const { exitCode, stdout, stderr } = await blank(...words.split(' '));
    expect(stderr).toContain(message);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stdout).toBe('');
    expect(exitCode).toBe(2);
  });
});

test('some outline is needed', async () => {
  const { exitCode, stderr } = await blank();
  expect(stderr).toBe(
    'stripwright: the outline is missing; name one, or give a drawing with --svg\n',
  );
  expect(exitCode).toBe(2);
});
