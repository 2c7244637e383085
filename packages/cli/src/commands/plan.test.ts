import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planDigest } from '../booking/plan-digest.js';
import { CSV_NAMES } from '../csv/csv-files.js';
import type { Interrupts, Planner } from '../environment.js';
import { realPlanner, run, temporaryFolder } from '../environment.test.support.js';
import { nodeFiles } from '../node-environment.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { SMALL_ORDER } from '../order/small-order.test.support.js';
import { planFileSchema } from '../plan-file/plan-file.js';

/** A folder that holds an order, and a run of `stripwright plan` in it. */
function shop(
  order = SMALL_ORDER,
  planner: Planner = realPlanner,
  interrupts: Interrupts = { once: () => () => undefined },
) {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'order.yaml'), order);
  return {
    cwd,
    plan: (words = '', isTerminal = false) =>
      run(['plan', 'order.yaml', ...words.split(' ').filter((word) => word !== '')], {
        cwd,
        planner,
        isTerminal,
        interrupts,
      }),
  };
}

/** So many pieces, all of whose metal must be bought, that their metal alone does not prove the first plan. */
const LARGER_ORDER = SMALL_ORDER.replace('quantity: 3', 'quantity: 60').replace(
  '    on hand: 1\n',
  '',
);

describe('the report', () => {
  test('says what to buy, what to cut, and what to mind, in 80 columns', async () => {
    const { exitCode, stdout, stderr } = await shop().plan();
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(stdout).toMatch(/^Small order\n8 pieces of 4 kinds, to marks of 1\/32 in\n/);
    expect(stdout).toMatch(/nothing cheaper exists \(proven\)/);
    expect(stdout).toMatch(/^ +4 {2}Lid +6 +4 +2$/m);
    expect(stdout).toMatch(/Metal used: \d+\.\d %/);
    expect(stdout).toMatch(/gloves and eye protection/);
    expect(stdout).toMatch(/fit for food/);
    expect(stdout).toMatch(/local codes/);
    expect(stdout).toContain('stripwright plan order.yaml --out packet\n');
    expect(stdout).not.toMatch(/undefined|NaN|\[object/);
  });

  test('adds up: what is bought, and how far the bound is', async () => {
    const { stdout } = await shop(SMALL_ORDER, onePieceASheet).plan();
    // 8 pieces on 8 large sheets, one of which is on hand, at $7.40.
    expect(stdout).toMatch(/^ +7 {2}Large +28 x 20 in +at \$7\.40 +\$51\.80$/m);
    expect(stdout).toMatch(/^ +Total +\$51\.80$/m);
    expect(stdout).toContain('at most $51.80 above the least possible $0.00');
    expect(stdout).toContain('From the shop: 1 x Large\n');
  });

  test('stays in 80 columns with long names and large numbers', async () => {
    const long = (letter: string) => `${letter} `.repeat(30).trim();
    const order = SMALL_ORDER.replace('name: Small order', `name: ${long('o')}`)
      .replace('name: Heart', `name: ${long('h')}`)
      .replace('name: Large', `name: ${long('l')}`)
      .replace('currency: $', 'currency: kroner')
      .replace('7.40', '999999.99')
      .replace('quantity: 3', 'quantity: 100000');
    const { exitCode, stdout } = await shop(order, onePieceASheet).plan('--out packet');
    expect(exitCode).toBe(0);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('is left out with --quiet', async () => {
    expect(await shop().plan('--quiet')).toEqual({ exitCode: 0, stdout: '', stderr: '' });
  });

  test('is plan.json alone with --json', async () => {
    const { stdout } = await shop().plan('--json');
    expect(planFileSchema.safeParse(JSON.parse(stdout)).success).toBe(true);
  });
});

describe('progress', () => {
  test('is one line, written over and over, and gone at the end', async () => {
    const { stderr } = await shop(LARGER_ORDER).plan('', true);
    const [first, ...lines] = stderr.split('\r');
    const last = lines.pop();
    expect(first).toBe('Planning 65 pieces ...');
    expect(last).toBe('\u001b[KPlanned in 0.1 s\n');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) {
      expect(line.endsWith('\u001b[K')).toBe(true);
      const shown = line.replace('\u001b[K', '');
      expect(shown).toMatch(
        /^Planning 65 pieces: best \$\d+\.\d\d, least possible \$\d+\.\d\d, [a-z ]+$/,
      );
      expect(shown.length).toBeLessThan(80);
    }
  });

  test('stays in one line with a long currency, and without a plan', async () => {
    const planner: Planner = {
      ...realPlanner,
      planCutting: (problem, options) => {
        options?.onProgress?.({ phase: 'linear plan', bound: 123456789, columns: 0 });
        return realPlanner.planCutting(problem);
      },
    };
    const order = SMALL_ORDER.replace('currency: $', 'currency: kroner of the kingdom');
    const { stderr } = await shop(order, planner).plan('', true);
    const [, told = ''] = stderr.split('\r');
    expect(told).toMatch(/^Planning 8 pieces: no plan yet, least possible 1234567\.89 kroner/);
    expect(told.replace('\u001b[K', '').length).toBeLessThan(80);
  });

  test.each<[words: string, isTerminal: boolean]>([
    ['', false],
    ['--json', true],
    ['--quiet', true],
  ])('is not shown with "%s" where stderr is a terminal: %s', async (words, isTerminal) => {
    expect((await shop().plan(words, isTerminal)).stderr).toBe('');
  });
});

test('--seed and --time-limit reach the planner', async () => {
  const given: unknown[] = [];
  const planner: Planner = {
    ...realPlanner,
    planCutting: (problem, options) => {
      given.push([options?.seed, options?.timeLimitSeconds]);
      return realPlanner.planCutting(problem, options);
    },
  };
  const { plan } = shop(SMALL_ORDER, planner);
  await plan();
  await plan('--seed 0 --time-limit 7.5');
  expect(given).toEqual([
    [undefined, undefined],
    [0, 7.5],
  ]);
});

describe('Ctrl-C', () => {
  /** A planner in whose search the user stops, and what is waited for. */
  function stoppedIn(planCutting: Planner['planCutting']) {
    const waiting = new Set<() => void>();
    const interrupts: Interrupts = {
      once(told) {
        waiting.add(told);
        return () => waiting.delete(told);
      },
    };
    const planner: Planner = {
      ...realPlanner,
      planCutting: (problem, options) => {
        for (const told of waiting) told();
        return planCutting(problem, options);
      },
    };
    return { planner, interrupts, waiting };
  }

  test('keeps the best plan so far, with its gap', async () => {
    const { planner, interrupts, waiting } = stoppedIn(realPlanner.planCutting);
    const { cwd, plan } = shop(LARGER_ORDER, planner, interrupts);
    const { exitCode, stdout, stderr } = await plan('--out packet', true);
    expect(exitCode).toBe(0);
    expect(stderr).toMatch(/\rStopping\. Planning 65 pieces/);
    expect(stderr).toMatch(/\r\S*Stopped after 0\.1 s\n$/);
    expect(stdout).toMatch(/above the\s+least possible/);
    expect(stdout).toMatch(/more time may\s+close the\s+gap/);
    const text = readFileSync(join(cwd, 'packet', 'plan.json'), 'utf8');
    const file = planFileSchema.parse(JSON.parse(text));
    expect(file.effort.ending).toBe('called off');
    expect(file.bound.proven).toBe(false);
    expect((await run(['check', 'packet/plan.json'], { cwd })).exitCode).toBe(0);
    expect(waiting.size).toBe(0);
  });

  test('before there is a plan says so', async () => {
    const { planner, interrupts, waiting } = stoppedIn(async () => ({ status: 'none found' }));
    const { plan } = shop(SMALL_ORDER, planner, interrupts);
    const { exitCode, stdout, stderr } = await plan('--time-limit 7');
    expect(stderr).toBe('stripwright: items: stopped before any plan was found\n');
    expect(stdout).toBe('');
    expect(exitCode).toBe(3);
    expect(waiting.size).toBe(0);
  });
});

describe('--out', () => {
  test('writes plan.json, a cut map for each layout, and the job sheet', async () => {
    const { cwd, plan } = shop();
    const { exitCode, stdout } = await plan('--out deep/packet');
    expect(exitCode).toBe(0);
    const folder = join(cwd, 'deep', 'packet');
    const file = planFileSchema.parse(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8')));
    const maps = file.layouts.map((_, index) => `cut-map-${index + 1}.svg`);
    const templates = file.blanks.flatMap(({ strip }, index) =>
      strip === undefined ? [] : [`template-${index + 1}`],
    );
    const names = readdirSync(folder);
    expect(names.filter((name) => !name.startsWith('template-')).sort()).toEqual(
      [...maps, ...CSV_NAMES, 'job-sheet.html', 'job-sheet.pdf', 'plan.json'].sort(),
    );
    // A strip that is longer than a page has several.
    const drawn = names.filter((name) => name.startsWith('template-'));
    expect(new Set(drawn.map((name) => /^template-\d+/.exec(name)?.[0]))).toEqual(
      new Set(templates),
    );
    for (const name of drawn) expect(name).toMatch(/^template-\d+(-\d+)?\.svg$/);
    expect(readFileSync(join(folder, 'job-sheet.pdf'), 'latin1')).toMatch(
      /^%PDF-1[\s\S]*%%EOF\s*$/,
    );
    const sheet = readFileSync(join(folder, 'job-sheet.html'), 'utf8');
    expect(sheet).toContain('<title>Job sheet: Small order</title>');
    expect(sheet.match(/<svg /g)).toHaveLength(maps.length + drawn.length);
    expect(sheet).toContain(`data-key="${planDigest(file)}"`);
    expect(sheet).not.toMatch(/undefined|NaN|\[object/);
    for (const map of maps) {
      const svg = readFileSync(join(folder, map), 'utf8');
      expect(svg).toMatch(/<svg[\s\S]*<\/svg>\s*$/);
      expect(svg).toContain('Small order');
      expect(svg).not.toMatch(/undefined|NaN|\[object/);
    }
    expect(stdout).toContain('Written to deep/packet/: job-sheet.html to work by, job-sheet.pdf ');
    expect((await run(['check', 'deep/packet/plan.json'], { cwd })).exitCode).toBe(0);
  });

  test('writes the same files again, over the old ones', async () => {
    const { cwd, plan } = shop();
    const contents = () =>
      readdirSync(join(cwd, 'packet')).map((name) =>
        readFileSync(join(cwd, 'packet', name), 'latin1'),
      );
    await plan('--out packet');
    const before = contents();
    const { exitCode } = await plan('--out packet');
    expect(exitCode).toBe(0);
    expect(contents()).toEqual(before);
  });

  test('refuses a folder of other files before it plans', async () => {
    let planned = 0;
    const counting: Planner = {
      ...realPlanner,
      planCutting: (problem) => {
        planned += 1;
        return realPlanner.planCutting(problem);
      },
    };
    const { plan } = shop(SMALL_ORDER, counting);
    const { exitCode, stderr } = await plan('--out .');
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/^stripwright: \.: the folder is not empty/);
    expect(planned).toBe(0);
  });
});

describe('exit code 2: an order that cannot be used', () => {
  test.each([
    ['--time-limit 0', '--time-limit must be above 0; found 0'],
    ['--time-limit soon', '--time-limit must be a plain number such as 0.44; found soon'],
    ['--time-limit', '--time-limit needs a value after it'],
    ['--seed x', '--seed must be a whole number of at least 0; found x'],
    ['--seed 2147483648', '--seed must be at most 2147483647; found 2147483648'],
    ['--out=', '--out is missing; give the name of a folder'],
    ['--outt packet', 'unknown: outt; did you mean --out?'],
  ])('%s', async (words, message) => {
    const { exitCode, stderr } = await shop().plan(words);
    expect(stderr).toContain(message);
    expect(exitCode).toBe(2);
  });

  test('a faulty order is told line by line', async () => {
    const { exitCode, stdout, stderr } = await shop(
      SMALL_ORDER.replace('quantity: 3', 'quantity: 1.5'),
    ).plan();
    expect(stderr).toBe(
      'order.yaml:27: items[0].quantity must be a whole number of at least 1; found 1.5\n',
    );
    expect(stdout).toBe('');
    expect(exitCode).toBe(2);
  });

  test.each<[name: string, make: (path: string) => void, reason: string]>([
    ['a file that is not there', () => {}, 'there is no such file or folder'],
    ['a folder', (path) => mkdirSync(path), 'it is a folder'],
    [
      'bytes that are no text',
      (path) => writeFileSync(path, Buffer.from([0xff, 0xfe, 0x00])),
      'it is not text in UTF-8',
    ],
  ])('%s', async (_name, make, reason) => {
    const cwd = temporaryFolder();
    make(join(cwd, 'order.yaml'));
    const { exitCode, stderr } = await run(['plan', 'order.yaml'], { cwd });
    expect(stderr).toMatch(/^order\.yaml: cannot be read: /);
    expect(stderr).toContain(reason);
    expect(exitCode).toBe(2);
  });

  test('lengths of more marks than the planner counts with', async () => {
    const order = SMALL_ORDER.replace('smallest mark: 1/32 in', 'smallest mark: 0.01 mm').replace(
      'size: 17 1/2 x 6 in',
      'size: 90000 x 150 mm',
    );
    const { exitCode, stderr } = await shop(order).plan();
    expect(stderr).toBe(
      'stripwright: offcuts[0].length must be at most 200000; got 9000000; ' +
        'lengths are in marks: name a coarser one\n',
    );
    expect(exitCode).toBe(2);
  });

  // The superuser may read everything, so the refusal is made here.
  test('a file that may not be read', async () => {
    const { cwd } = shop();
    const denied = async () => {
      throw Object.assign(new Error('EACCES: permission denied'), { code: 'EACCES' });
    };
    const files = { ...nodeFiles, read: denied };
    const { exitCode, stderr } = await run(['plan', 'order.yaml'], { cwd, files });
    expect(stderr).toBe('order.yaml: cannot be read: permission is denied; check who may use it\n');
    expect(exitCode).toBe(2);
  });
});

describe('exit code 3: an order that cannot be cut', () => {
  test('a blank larger than every sheet is named with its size and the largest stock', async () => {
    const { exitCode, stderr } = await shop(
      SMALL_ORDER.replace('6 x 4 in', '30 x 21 1/2 in'),
    ).plan();
    expect(stderr).toBe(
      'stripwright: items: "Lid" takes a blank of 30 x 21 1/2 in (it may not be turned), ' +
        'which fits no sheet or offcut; the largest is "Large", 28 x 20 in\n',
    );
    expect(exitCode).toBe(3);
  });

  test('a cut longer than the shear makes', async () => {
    const order = SMALL_ORDER.replace('longest cut: 36 in', 'longest cut: 10 in').replace(
      '6 x 4 in',
      '15 x 12 in',
    );
    const { exitCode, stderr } = await shop(order).plan();
    expect(stderr).toContain('"Lid" takes a blank of 15 x 12 in');
    expect(stderr).toContain('its longest is 10 in');
    expect(exitCode).toBe(3);
  });

  test('too little stock', async () => {
    const order = SMALL_ORDER.replace('can buy: yes', 'can buy: no')
      .replace('price: 3.90', 'price: 3.90\n    can buy: no')
      .replace('quantity: 1\n', 'quantity: 500\n');
    const { exitCode, stderr } = await shop(order).plan();
    expect(stderr).toMatch(/^stripwright: sheets and offcuts: .*not enough/);
    expect(exitCode).toBe(3);
  });

  test('no plan before the limit', async () => {
    const planner: Planner = {
      ...realPlanner,
      planCutting: async () => ({ status: 'none found' }),
    };
    const { exitCode, stderr } = await shop(SMALL_ORDER, planner).plan('--time-limit 7');
    expect(stderr).toContain('no plan was found in 7 s');
    expect(exitCode).toBe(3);
  });
});

describe('exit code 1: a fault of ours', () => {
  test('a plan that its verifier refuses is not used', async () => {
    const planner: Planner = {
      ...realPlanner,
      async planCutting(problem) {
        const outcome = await realPlanner.planCutting(problem);
        if (outcome.status !== 'planned') return outcome;
        return { ...outcome, plan: { ...outcome.plan, layouts: outcome.plan.layouts.slice(1) } };
      },
    };
    const { cwd, plan } = shop(SMALL_ORDER, planner);
    const { exitCode, stdout, stderr } = await plan('--out packet');
    expect(stderr).toMatch(/^stripwright: the plan failed its own check/);
    expect(stdout).toBe('');
    expect(exitCode).toBe(1);
    expect(readdirSync(cwd)).toEqual(['order.yaml']);
  });

  test('a failure shows its trace only with --debug', async () => {
    const planner: Planner = {
      ...realPlanner,
      planCutting: () => Promise.reject(new TypeError('broken solver')),
    };
    const { plan } = shop(SMALL_ORDER, planner);
    const plain = await plan();
    expect(plain.exitCode).toBe(1);
    expect(plain.stderr).toMatch(/broken solver\. Please report it/);
    expect(plain.stderr).not.toMatch(/^ +at /m);
    const debugged = await plan('--debug');
    expect(debugged.exitCode).toBe(1);
    expect(debugged.stderr).toMatch(/^ +at /m);
  });
});

test.each([
  ['inch', 'in', 260],
  ['metric', 'mm', 270],
])('the %s order of the bakery is planned and checked', async (name, units, cutters) => {
  const cwd = temporaryFolder();
  const path = `../../../../test-data/orders/bakery-co-op-${name}.yaml`;
  writeFileSync(join(cwd, 'order.yaml'), readFileSync(new URL(path, import.meta.url), 'utf8'));
  const { exitCode, stdout, stderr } = await run(['plan', 'order.yaml', '--out', 'packet'], {
    cwd,
  });
  expect(stderr).toBe('');
  expect(exitCode).toBe(0);
  for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  expect(stdout).not.toMatch(/undefined|NaN|\[object/);
  const file = planFileSchema.parse(
    JSON.parse(readFileSync(join(cwd, 'packet', 'plan.json'), 'utf8')),
  );
  expect(file.order.units).toBe(units);
  const bent = file.blanks.filter(({ strip }) => strip !== undefined);
  expect(bent.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(cutters);
  expect(file.cost).toBeGreaterThanOrEqual(file.bound.cost);
  const checked = await run(['check', 'packet/plan.json'], { cwd });
  expect(checked.stdout).toMatch(/^packet\/plan\.json: good: /);
  expect(checked.exitCode).toBe(0);
});
