import { edgeTreatments, seams } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';

const cwd = temporaryFolder();
const RECTANGLE = ['rectangle', '--long', '3', '--wide', '1', '--depth', '1'];
const blank = (words: string) => run(['blank', ...RECTANGLE, ...words.split(' ')], { cwd });

/** `--hem 6mm` */
const exampleWords = (example: Readonly<Record<string, number | undefined>>) =>
  Object.entries(example).map(([name, length]) => `--${name.replaceAll(' ', '-')} ${length}mm`);

test.each(edgeTreatments)('the edge $name', async ({ name, example }) => {
  const words = [`--edge ${name.replace(' ', '-')}`, ...exampleWords(example), '--seam butt-joint'];
  const { stdout, stderr } = await blank(words.join(' '));
  expect(stderr).toBe('');
  expect(stdout).toMatch(new RegExp(`Edge       ${name}(?:,| to the outside,) `));
});

test.each(seams)('the seam $name', async ({ name, example }) => {
  const words = [`--seam ${name.replace(' ', '-')}`, ...exampleWords(example)];
  const { stdout, stderr } = await blank(words.join(' '));
  expect(stderr).toBe('');
  expect(stdout).toContain(`Seam       ${name}, `);
});

// NAVEDTRA 14251, Steelworker vol. 2: a wired edge takes 2 1/2 times its wire, 5/16 in for 1/8 in.
test('a wired edge tells its wire and its fold line', async () => {
  const { stdout } = await blank('--edge wired-edge --wire 1/8 --seam soldered-lap --lap 1/4');
  expect(stdout).toContain('Strip      8 1/4 x 1 5/16 in\n');
  expect(stdout).toContain(
    'Edge       wired edge to the outside, wire 1/8 in, fold line 5/16 in from the\n',
  );
});

test('the length alone tells a raw edge and a butt joint', async () => {
  const { stdout } = await blank('--hem 0 --tab 0');
  expect(stdout).toContain('Edge       raw edge, nothing to fold\n');
  expect(stdout).toContain('Seam       butt joint, nothing added; the ends meet at bend 4\n');
});

test('a hem may be folded to the inside, where the bends that close it are others', async () => {
  const square = await blank('--hem-face inside');
  expect(square.stdout).toContain('Edge       single hem to the inside, fold line 1/4 in');
  const tip = ['star', '--points', '5', '--across', '8', '--depth', '1', '--hem-face'];
  const outside = await run(['blank', ...tip, 'outside'], { cwd });
  const inside = await run(['blank', ...tip, 'inside'], { cwd });
  expect(outside.stdout).not.toContain('closes the hem');
  expect(inside.stdout).toContain('Bend 2 closes the hem through 144 degrees;');
});

test('the seam may be put elsewhere, as far as it fits there', async () => {
  const { stdout } = await blank('--seam-at middle');
  expect(stdout).toContain('the ends meet between bends');
  // From the middle of the side of 3 in, under the tab.
  expect(stdout).toMatch(/^ +1 +1 3\/4 {2}in +90\.0 +90\.0$/m);
  const { stderr } = await blank('--seam-at 2.75in');
  expect(stderr).toMatch(/^stripwright: --seam-at: The tucked tab needs/);
});

test('corners up to an angle are formed, not bent', async () => {
  const ring = [
    'regular-polygon',
    '--sides',
    '20',
    '--side',
    '1/2',
    '--depth',
    '1',
    '--tab',
    '1/4',
  ];
  const sharp = await run(['blank', ...ring], { cwd });
  expect(sharp.stdout).toMatch(/^ +20 +10 {2}in +18\.0 +18\.0$/m);
  const formed = await run(['blank', ...ring, '--corner-angle', '20 degrees'], { cwd });
  expect(formed.stderr).toBe('');
  expect(formed.stdout).toContain('No sharp bends.');
});

describe('notches, and the limits of hand and tool', () => {
  const outline = async (words: string) =>
    (await run(['blank', ...words.split(' ')], { cwd })).stdout;

  test('the notch angle', async () => {
    expect((await blank('--notch-angle 40')).stdout).toContain(
      'V of 40 degrees a side at each bend',
    );
    expect((await blank('--notch-angle 0')).stdout).toContain(
      'Notches    a slit at each bend, from the raw edge to the fold line\n',
    );
  });

  test('the stage of the hem', async () => {
    const heart = 'heart --across 4 --depth 1 --hem-stage';
    const [closed, square] = [await outline(`${heart} closed`), await outline(`${heart} square`)];
    expect(closed).toMatch(/; fold\s+it flat before bending\n/);
    expect(closed).not.toContain('needs 48 to');
    expect(square).toMatch(/; fold\s+it square before bending, flat after\n/);
    expect(square).toContain('needs 48 to');
  });

  test('the radius below which curves are snipped, and the strain that spaces the snips', async () => {
    const oval = 'oval --long 6 --wide 2 --depth 1';
    expect(await outline(oval)).not.toContain('Snips');
    // By hand: round an inch, at most 2 x 1 x 0.2 in apart, half a circle of 3.14 in takes 8 pieces.
    expect(await outline(`${oval} --snip-below 1.1in`)).toContain('curve 1: 9 slits evenly from');
    const finer = await outline(`${oval} --snip-below 1.1in --hem-strain 0.1`);
    expect(finer).toContain('curve 1: 17 slits evenly from');
  });

  test.each([
    ['--shortest-flat 1.5in', 'pliers need 1.5 in to hold it'],
    ['--sharpest-tip 91', 'dough sticks'],
    ['--narrowest-gap 1.5in', 'The cookie is only 1 in wide'],
    [
      '--least-radius 2 --thickness 0.3mm --inside-radius 0.2mm --bend-rule airframe',
      'may crack below',
    ],
    ['--widest-notch 40 --hem-face inside', 'notched 40 degrees to each side'],
  ])('%s', async (words, message) => {
    expect((await blank('')).stdout).not.toContain('Before cutting');
    const { stdout, stderr } = await blank(words);
    expect(stderr).toBe('');
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain(message);
  });

  test('the gentlest curve that parts are joined on', async () => {
    const circle = ['circle', '--across', '12', '--depth', '1', '--longest', '20'];
    expect((await run(['blank', ...circle], { cwd })).stdout).toContain('part 2 of 2');
    const { stderr } = await run(['blank', ...circle, '--gentle-radius', '7'], { cwd });
    expect(stderr).toContain('--longest: The strip cannot be divided');
  });
});

describe('what cannot be used is told by its option', () => {
  test.each<[words: string, message: string]>([
    [
      '--edge rolled',
      '--edge must be raw edge, single hem, double hem or wired edge; found rolled',
    ],
    [
      '--edge wired-edge --tab 0',
      '--wire is missing; give a length: diameter of the wire, which a wired edge needs',
    ],
    [
      '--edge wired-edge --wire 2mm --hem 1/4 --tab 0',
      '--hem is no length of a wired edge, which takes wire; leave it out',
    ],
    ['--edge single-hem --hem 0', '--hem must be above 0; found 0'],
    ['--wire 2mm', '--wire is no length of a single hem, which takes hem; leave it out'],
    ['--seam grooved-seam', '--seam-width is missing; give a length: width of the finished lock'],
    ['--edge wired-edge --wire 2mm', '--seam: A tucked tab cannot go into a wired edge'],
    ['--seam riveted-lap --lap 4', '--lap: '],
    ['--seam-at 9', '--seam-at: The outline has the corners 1 to 4; got corner 9.'],
    ['--size-is upside', '--size-is must be inside, outside or middle; found upside'],
    ['--corner-angle wide', '--corner-angle must be a plain number such as 0.44; found wide'],
    ['--notch-angle 90', '--notch-angle must be at most 89; found 90'],
    ['--hem-stage open', '--hem-stage must be closed or square; found open'],
    ['--hem-strain 0', '--hem-strain must be above 0; found 0'],
    ['--shortest-flat -1', '--shortest-flat must be 0 or more; found -1'],
    ['--corner-angle 120', '--corner-angle: The cornerAngle must be from 0 to 89 degrees'],
  ])('%s', async (words, message) => {
    const { exitCode, stdout, stderr } = await blank(words);
    expect(stderr).toContain(message);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stdout).toBe('');
    expect(exitCode).toBe(2);
  });
});
