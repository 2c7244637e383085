import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const itself = fileURLToPath(import.meta.url);
const packages = resolve(dirname(itself), '../..');

/** Which packages of the workspace each may import. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  nesting: [],
  'strip-geometry': [],
  cli: ['nesting', 'strip-geometry'],
};

interface Source {
  /** Such as `nesting/src/verify/verify-plan.ts`. */
  readonly path: string;
  readonly text: string;
}

/** Imports that point the wrong way, as `file -> what it imports`. */
function wrongImports(sources: readonly Source[]): readonly string[] {
  return sources.flatMap(({ path, text }) => {
    const [home = ''] = path.split('/');
    const isTest = /\.test(\.support)?\.ts$/.test(path);
    return importsOf(text)
      .filter((specifier) => {
        if (specifier.startsWith('node:')) return !mayUseNode(path) && !isTest;
        const target = workspacePackage(path, specifier);
        return target !== undefined && target !== home && !allowed[home]?.includes(target);
      })
      .map((specifier) => `${path} -> ${specifier}`);
  });
}

/** The command, and the one folder of a library that starts a thread. */
function mayUseNode(path: string): boolean {
  return path.startsWith('cli/') || path.startsWith('nesting/src/worker/');
}

function importsOf(text: string): readonly string[] {
  const pattern = /(?:\bfrom\s*|\bimport\s*\(?\s*|\brequire\s*\(\s*)(['"])([^'"\n]+)\1/g;
  return [...text.matchAll(pattern)].map((match) => match[2] ?? '');
}

function workspacePackage(path: string, specifier: string): string | undefined {
  const named = /^@stripwright\/([^/]+)/.exec(specifier)?.[1];
  if (named !== undefined || !specifier.startsWith('.')) return named;
  return join(dirname(path), specifier).split(sep)[0];
}

function sourcesOf(folder: string): readonly Source[] {
  return (
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((file) => join(folder, file))
      // This file quotes imports that would be wrong.
      .filter((file) => file.endsWith('.ts') && file !== itself)
      .map((file) => ({
        path: relative(packages, file).split(sep).join('/'),
        text: readFileSync(file, 'utf8'),
      }))
  );
}

describe('dependencies', () => {
  it('point from the command to the two libraries, never back and never between them', () => {
    const sources = Object.keys(allowed).flatMap((name) => sourcesOf(join(packages, name, 'src')));
    expect(sources.length).toBeGreaterThan(50);
    expect(wrongImports(sources)).toEqual([]);
  });

  it('of the verifier are types of the plan and the problem alone', () => {
    const verifier = sourcesOf(join(packages, 'nesting/src/verify')).filter(
      ({ path }) => !path.includes('.test.'),
    );
    expect(verifier.length).toBeGreaterThan(0);
    for (const { text } of verifier) {
      const others = importsOf(text).filter((specifier) => !specifier.startsWith('./'));
      expect(['../plan.js', '../problem.js']).toEqual(expect.arrayContaining([...others]));
      expect(text).not.toMatch(/^import \{.*'\.\.\//m);
    }
  });

  it.each([
    ['nesting/src/a.ts', "import { x } from '@stripwright/strip-geometry';"],
    ['nesting/src/a.ts', "export * from '../../strip-geometry/src/index.js';"],
    ['nesting/src/a.ts', "const x = await import('@stripwright/cli');"],
    ['nesting/src/a.ts', "import { readFileSync } from 'node:fs';"],
    ['nesting/src/worker.ts', "import { Worker } from 'node:worker_threads';"],
    ['strip-geometry/src/worker/a.ts', "import { Worker } from 'node:worker_threads';"],
    ['strip-geometry/src/outlines/a.ts', "import type { Y } from '../../../nesting/src/y.js';"],
    ['strip-geometry/src/a.ts', "import '@stripwright/nesting';"],
  ])('would be faulted in %s: %s', (path, text) => {
    expect(wrongImports([{ path, text }])).toHaveLength(1);
  });

  it.each([
    ['cli/src/a.ts', "import { x } from '@stripwright/nesting';"],
    ['cli/src/a.ts', "import { readFileSync } from 'node:fs';"],
    ['nesting/src/worker/a.ts', "import { Worker } from 'node:worker_threads';"],
    ['nesting/src/two-stage/a.ts', "import { x } from '../problem.js';"],
    ['nesting/src/a.test.ts', "import { readFileSync } from 'node:fs';"],
  ])('would pass in %s: %s', (path, text) => {
    expect(wrongImports([{ path, text }])).toEqual([]);
  });
});
