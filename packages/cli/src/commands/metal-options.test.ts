import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';

const cwd = temporaryFolder();
const RECTANGLE = ['rectangle', '--long', '3', '--wide', '1', '--depth', '1'];
const blank = (words: string) => run(['blank', ...RECTANGLE, ...words.split(' ')], { cwd });

describe('the metal', () => {
  test('is told with its thickness', async () => {
    const { stdout, stderr } = await blank('--metal galvanized-steel --thickness 28ga');
    expect(stderr).toBe('');
    expect(stdout).toContain('Metal      galvanized steel, 0.0187 in thick\n');
  });

  test('is tinplate where none is named', async () => {
    const { stdout } = await blank('--thickness 100lb');
    expect(stdout).toContain('Metal      tinplate, 0.011 in thick\n');
  });

  // US FDA Food Code 4-101.14(A): copper may not touch food of a pH below 6.
  test('that may not touch every food is warned about', async () => {
    const { stdout } = await blank('--metal copper');
    expect(stdout).toContain('A cutter of copper should not touch acidic food.');
    expect((await blank('--metal stainless-steel')).stdout).not.toContain('should not touch');
  });
});

test.each<[rule: string, sizes: string]>([
  ['airframe', ''],
  ['airframe', ' --airframe-print navy'],
  ['steel standard', ''],
  ['handbook', ' --handbook-metal half-hard'],
])('the rule %s%s', async (rule, sizes) => {
  const { stdout, stderr } = await blank(
    `--thickness 0.011 --inside-radius 1/64 --bend-rule ${rule.replace(' ', '-')}${sizes}`,
  );
  expect(stderr).toBe('');
  expect(stdout).toContain(`Bend rule  ${rule}\n`);
});

describe('what cannot be used is told by its option', () => {
  test.each<[words: string, message: string]>([
    ['--metal gold', '--metal must be tinplate, uncoated steel,'],
    [
      '--thickness 28ga',
      '--thickness is a gauge, the measure of uncoated steel and galvanized steel and not of ' +
        'tinplate; found 28ga; give a length, or name the metal',
    ],
    ['--metal uncoated-steel --thickness 3ga', '--thickness gives no thickness: The gauge must be'],
    ['--thickness thin', '--thickness must be a length such as 0.011 in, or 100 lb of tinplate'],
    ['--bend-rule airframe --inside-radius 1/64', '--thickness is missing; give the thickness'],
    [
      '--bend-rule handbook --thickness 0.011 --inside-radius 1/64',
      '--handbook-metal is missing; give soft, half hard or hard, which the handbook rule needs',
    ],
    ['--handbook-metal firm', '--handbook-metal must be soft, half hard or hard; found firm'],
  ])('%s', async (words, message) => {
    const { exitCode, stdout, stderr } = await blank(words);
    expect(stderr).toContain(message);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stdout).toBe('');
    expect(exitCode).toBe(2);
  });

  test('once, though the bend rule needs it', async () => {
    const { stderr } = await blank('--bend-rule airframe --inside-radius 1/64 --thickness thin');
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
