import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';

const cwd = temporaryFolder();
const blank = (...words: string[]) => run(['blank', ...words], { cwd });

describe('the strip of one cutter', () => {
  test('ten sides of 1 5/8 in and a 3/4 in tab take 17 in (common practice)', async () => {
    const words = '--sides 10 --tab 3/4 --hem 0 --depth 1 --bend-rule zero-thickness'.split(' ');
    const { exitCode, stdout, stderr } = await blank(
      'regular-polygon',
      '--side',
      '1 5/8',
      ...words,
    );
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    expect(stdout).toContain('Strip      17 x 1 in\n');
    expect(stdout).toContain('Edge       raw edge, nothing to fold\n');
    expect(stdout).toContain(
      'Seam       tucked tab, 3/4 in at the far end; the ends meet at bend 10;',
    );
    // The running marks are multiples of the side.
    const marks = [...stdout.matchAll(/^ +(\d+) +(\S.*?) {2}in +36\.0 +36\.0$/gm)].map(
      (row) => row[2],
    );
    expect(marks.slice(0, 3)).toEqual(['1 5/8', '3 1/4', '4 7/8']);
    expect(marks).toHaveLength(10);
  });

  test('a round cutter takes pi times its diameter, and has one curve', async () => {
    const { stdout } = await blank(
      'circle',
      '--across',
      '100mm',
      '--tab',
      '0',
      '--hem',
      '0',
      '--depth',
      '25',
      '--units',
      'mm',
    );
    // 314.159 mm, rounded up to the mark of 0.5 mm.
    expect(stdout).toContain('Strip      314.5 x 25 mm\n');
    expect(stdout).toContain('No sharp bends.');
    expect(stdout).toMatch(/^ +1 +0 +314 +50 +in +360\.0 +180\.0 \+ 180\.0$/m);
  });

  test('as JSON, and nothing else', async () => {
    const { stdout } = await blank(
      'rectangle',
      '--long',
      '3',
      '--wide',
      '1',
      '--depth',
      '1',
      '--json',
    );
    // Round the rectangle 8 in, 1/2 in of tab, 1 in deep, 1/4 in of hem.
    expect(JSON.parse(stdout)).toMatchObject({ id: 'rectangle', length: 215.9, width: 31.75 });
    expect(JSON.parse(stdout).strip.bends).toHaveLength(4);
  });

  test('with a bend rule of its own', async () => {
    const words = ['rectangle', '--long', '3', '--wide', '1', '--depth', '1'];
    const metal = [
      '--bend-rule',
      'neutral axis',
      '--thickness',
      '0.011',
      '--inside-radius',
      '1/64',
    ];
    const { exitCode, stdout } = await blank(...words, ...metal, '--neutral-axis-factor', '0.44');
    expect(exitCode).toBe(0);
    expect(stdout).toContain('Bend rule  neutral axis\n');
  });

  test('warns where marks are too coarse to fold the outline by, and only there', async () => {
    const spikes = 'star --points 24 --across 150 --tip-angle 3 --units mm --mark 1 --depth 25';
    const { exitCode, stdout } = await blank(...spikes.split(' '));
    expect(exitCode).toBe(0);
    const said = stdout.replace(/\s+/g, ' ');
    expect(said).toMatch(/Folded at marks of 1 mm, the outline strays 1\.\d+ mm from the drawing/);
    const five = 'star --points 5 --across 80 --units mm --mark 1 --depth 25';
    expect((await blank(...five.split(' '))).stdout).not.toContain('Folded at marks of');
  });

  test('every family, by the sizes of its own example, in 80 columns', async () => {
    for (const { name, sizes, example } of families) {
      const words = sizes.flatMap(({ name: size, kind }) => {
        const value = example[size];
        if (value === undefined) return [];
        const unit = kind === 'length' ? 'mm' : '';
        const text =
          typeof value !== 'object'
            ? `${value}${unit}`
            : value.map(({ x, y }) => `${x} mm, ${y} mm`).join('; ');
        return [`--${size.replaceAll(' ', '-')}`, text];
      });
      const { exitCode, stdout, stderr } = await blank(name, ...words, '--depth', '1');
      expect(stderr).toBe('');
      expect(exitCode).toBe(0);
      for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
      expect(stdout).not.toMatch(/undefined|NaN|\[object/);
      expect(stdout).toMatch(/gloves/);
    }
  });
});

describe('what cannot be used is told by its option', () => {
  test.each<[words: string, message: string]>([
    ['hart --across 3 --depth 1', 'did you mean "heart"?'],
    ['heart --depth 1', '--across: A heart needs "across"'],
    ['heart --across 3', '--depth is missing; give the height of the finished cutter'],
    ['heart --across 3 --depth 0', '--depth must be above 0; found 0'],
    ['heart --across 3 --depth 1 --hem=-1', '--hem must be 0 or more; found -1'],
    [
      'heart --across wide --depth 1',
      '--across must be a length such as 1 5/8, 1.625 in or 41.3 mm; found wide',
    ],
    [
      'heart --across 3 --sides 5 --depth 1',
      '--sides is no size of a heart; its sizes are --across, --high',
    ],
    [
      'heart --acros 3 --depth 1',
      'unknown: acros; did you mean --across? See stripwright blank --help',
    ],
    ['heart --across 1 5/8 --depth 1', 'quote a length with a blank, "1 5/8"'],
    ['heart --across --depth 1', '--across needs a value after it; see stripwright blank --help'],
    ['letter --letter AB --high 3 --depth 1', '--letter: "letter" must be one letter from A to Z'],
    ['heart --across 3 --high 30 --depth 1', '--high: "high" must be from'],
    [
      'regular-polygon --sides 2.5 --side 1 --depth 1',
      '--sides must be a whole number of at least 1; found 2.5',
    ],
    [
      'star --points 5 --across 3 --tip-angle steep --depth 1',
      '--tip-angle must be a plain number such as 0.44; found steep',
    ],
    ['polygon --corners 0,0;1,0 --depth 1', '--corners must be a list of at least three corners'],
    ['heart --across 3 --depth 1 --units ell', '--units must be in or mm; found ell'],
    ['heart --across 3 --depth 1 --mark 0', '--mark must be above 0; found 0'],
    ['heart --across 3 --depth 1 --bend-rule neutral-axis', '--thickness is missing'],
    [
      'heart --across 3 --depth 1 --bend-rule guess',
      '--bend-rule must be zero thickness, neutral axis, airframe, steel standard or handbook; found',
    ],
  ])('%s', async (words, message) => {
    const { exitCode, stdout, stderr } = await blank(...words.split(' '));
    expect(stderr).toContain(message);
    for (const line of stderr.trimEnd().split('\n')) expect(line).toMatch(/^stripwright: \S/);
    expect(stdout).toBe('');
    expect(exitCode).toBe(2);
  });

  test('all at once', async () => {
    const { stderr } = await blank('heart', '--across', '0', '--hem', 'x', '--mark', '0');
    expect(stderr.trimEnd().split('\n')).toHaveLength(4);
  });
});
