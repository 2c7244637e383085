import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from './environment.test.support.js';
import { nodeFiles } from './node-environment.js';
import { planFileSchema } from './plan-file/plan-file.js';

// What `tsc -b` made of the sources, since it plans in a thread.
const built = new URL('../dist/index.js', import.meta.url).href;

/** Blanks of sixty sizes: more than the search can finish while a test runs. */
const ORDER = [
  'name: Long order',
  'shop: { units: mm }',
  'sheets: [{ name: A, size: 1000 x 500 mm, price: 2.11 }, { name: B, size: 750 x 550 mm, price: 1.76 }]',
  'items:',
  ...Array.from({ length: 60 }, (_, i) => {
    const size = `${100 + ((i * 97) % 251)} x ${40 + ((i * 61) % 149)} mm`;
    return `  - { name: Blank ${i}, blank: ${size}, quantity: ${10 + ((i * 7) % 40)} }`;
  }),
].join('\n');

/**
 * Runs the command in a process of its own, as if its stderr were a terminal, and
 * sends SIGINT each time that stderr has come to say the next of these.
 */
async function interruptedAt(cwd: string, cues: readonly RegExp[], environment = '') {
  const script = `
    import { main, nodeEnvironment } from ${JSON.stringify(built)};
    const stderr = { isTerminal: true, write: (text) => void process.stderr.write(text) };
    const words = ['plan', 'order.yaml', '--no-rack', '--out', 'packet', '--time-limit', '100'];
    process.exitCode = await main(words, { ...nodeEnvironment(), stderr ${environment} });
  `;
  const child = spawn(process.execPath, ['--input-type=module', '--eval', script], { cwd });
  let told = '';
  let stdout = '';
  let sent = 0;
  child.stdout.on('data', (data) => {
    stdout += data;
  });
  child.stderr.on('data', (data) => {
    told += data;
    const cue = cues[sent];
    if (cue?.test(told) !== true) return;
    sent++;
    child.kill('SIGINT');
  });
  return new Promise<{ code: number | null; signal: string | null; stdout: string; told: string }>(
    (resolve) => child.on('close', (code, signal) => resolve({ code, signal, stdout, told })),
  );
}

describe.skipIf(process.platform === 'win32')('a process that gets SIGINT while it plans', () => {
  test('once, writes the best plan so far, which is good', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'order.yaml'), ORDER);
    const { code, signal, stdout, told } = await interruptedAt(cwd, [/best \d/]);
    expect({ code, signal }, told).toEqual({ code: 0, signal: null });
    expect(told).toContain('Stopping. ');
    expect(stdout).toMatch(/above\s+the\s+least\s+possible/);
    const file = planFileSchema.parse(
      JSON.parse(await nodeFiles.read(join(cwd, 'packet', 'plan.json'))),
    );
    expect(file.effort.ending).toBe('called off');
    expect(file.bound.cost).toBeLessThan(file.cost);
    const checked = await run(['check', 'packet/plan.json'], { cwd });
    expect(checked.stdout).toMatch(/^packet\/plan\.json: good: /);
  });

  test('twice, quits', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'order.yaml'), ORDER);
    const deaf = ', planner: { planCutting: () => new Promise(() => setInterval(() => {}, 9)) }';
    const { signal, stdout } = await interruptedAt(cwd, [/Planning/, /Stopping/], deaf);
    expect(signal).toBe('SIGINT');
    expect(stdout).toBe('');
    expect(await nodeFiles.list(cwd)).toEqual(['order.yaml']);
  });
});
