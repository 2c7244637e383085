import { expect, test } from 'vitest';
import readme from '../README.md?raw';
import * as published from './index.js';

/** The names that an example imports, and its lines after the import. */
function readExample(code: string): { names: string[]; lines: string[] } {
  const found = /^import \{([^}]*)\} from '@stripwright\/strip-geometry';\n/.exec(code);
  if (found === null) {
    throw new Error('an example must begin by importing this package');
  }
  const names = (found[1] ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return { names, lines: code.slice(found[0].length).split('\n') };
}

const PROMISE = /^(?<expression>.+); \/\/ => (?<value>.+)$/;

const examples = [...readme.matchAll(/```ts\n(?<code>[\s\S]*?)```/g)].map(
  ({ groups }) => groups?.code ?? '',
);

test('there is an example, and it makes promises', () => {
  expect(examples.length).toBeGreaterThan(0);
  for (const code of examples) {
    expect(code.split('\n').filter((line) => PROMISE.test(line)).length).toBeGreaterThan(0);
    // A promise in any other form would go unchecked.
    expect(code.match(/\/\/ =>/g)).toHaveLength(
      code.split('\n').filter((line) => PROMISE.test(line)).length,
    );
  }
});

test.each(examples.map((code, index) => [index + 1, code] as const))(
  'example %i does what its comments say',
  (_, code) => {
    const { names, lines } = readExample(code);
    for (const name of names) {
      expect(published).toHaveProperty(name);
    }
    const body = lines.map((line) => {
      const promise = PROMISE.exec(line)?.groups;
      return promise ? `expect(${promise.expression}).toEqual(${promise.value});` : line;
    });
    const publicFace: Readonly<Record<string, unknown>> = published;
    const run = new Function('expect', ...names, body.join('\n'));
    run(expect, ...names.map((name) => publicFace[name]));
  },
);

test('lists every family with its sizes, and every error', () => {
  for (const { name, sizes } of published.families) {
    const row = readme.split('\n').find((line) => line.startsWith(`| \`${name}\` `));
    expect(row, name).toBeDefined();
    for (const { name: size } of sizes) {
      expect(row).toContain(`\`${size}\``);
    }
  }
  for (const { name } of [...published.edgeTreatments, ...published.seams]) {
    expect(readme.split('\n').some((line) => line.startsWith(`| \`${name}\` `))).toBe(true);
  }
  for (const error of ['OutlineError', 'BendError', 'StripError', 'MetalError']) {
    expect(readme).toContain(`\`${error}\``);
  }
});
