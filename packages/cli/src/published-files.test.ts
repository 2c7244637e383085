import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const packages = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

interface Manifest {
  readonly private?: boolean;
  readonly license: string;
  readonly description: string;
  readonly bin?: Readonly<Record<string, string>>;
  readonly exports: Readonly<Record<string, string | { types: string; default: string }>>;
}

/** What the package manager would put into the package, by path. Needs the build. */
async function publishedFiles(folder: string): Promise<readonly string[]> {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const { stdout } = await promisify(execFile)(
    npm,
    ['pack', '--dry-run', '--json', '--ignore-scripts'],
    { cwd: folder },
  );
  const [packed] = Object.values(JSON.parse(stdout)) as { files: { path: string }[] }[];
  return (packed?.files ?? []).map(({ path }) => path);
}

describe.each(['nesting', 'strip-geometry', 'cli'])('the package %s', (name) => {
  const folder = join(packages, name);
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;

  it('publishes what it names, with types and README, and no tests', async () => {
    const files = await publishedFiles(folder);
    const named = [
      ...Object.values(manifest.exports).flatMap((entry) =>
        typeof entry === 'string' ? [entry] : [entry.types, entry.default],
      ),
      ...Object.values(manifest.bin ?? {}),
    ];
    for (const path of named) expect(files).toContain(path.replace(/^\.\//, ''));
    expect(files).toContain('README.md');
    expect(
      files.filter((path) => /\.test\.|tsbuildinfo|\.ts$/.test(path) && !path.endsWith('.d.ts')),
    ).toEqual([]);
    expect(files.filter((path) => path.includes('.test.'))).toEqual([]);
  });

  it('may be published, and says what it is', () => {
    expect(manifest.private).toBeUndefined();
    expect(manifest.license).toBe('MIT');
    expect(manifest.description.length).toBeGreaterThan(20);
  });
});
