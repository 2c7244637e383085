import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { GreyImage } from './image.test.support.js';
import { readPng } from './png.test.support.js';

/** Whether Poppler is here. In CI it must be: there its absence fails the tests that need it. */
export const hasPoppler = spawnSync('pdftoppm', ['-v']).error === undefined;

export function needPoppler(): void {
  if (!hasPoppler) throw new Error('pdftoppm is missing: install the package poppler-utils');
}

/**
 * The pages of a PDF as Poppler's Cairo backend renders them: what a line covers of a pixel
 * darkens it so far, so that its middle can be told to a part of a pixel.
 *
 * @param resolution dots per inch
 */
export function renderPdf(pdf: Uint8Array, resolution: number): readonly GreyImage[] {
  return rendered(pdf, 'pdftocairo', ['-png', '-gray', '-r', `${resolution}`], (bytes) =>
    readPng(bytes, resolution / 25.4),
  );
}

/** The pages as Poppler's Splash backend renders them, which moves every line to whole pixels. */
export function renderPdfOnWholePixels(pdf: Uint8Array, resolution: number) {
  return rendered(pdf, 'pdftoppm', ['-gray', '-r', `${resolution}`], (bytes) =>
    readPgm(bytes, resolution / 25.4),
  );
}

function rendered(
  pdf: Uint8Array,
  tool: string,
  options: readonly string[],
  read: (bytes: Buffer) => GreyImage,
): readonly GreyImage[] {
  needPoppler();
  return inFolder((folder) => {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    execFileSync(tool, [...options, file, join(folder, 'page')]);
    return readdirSync(folder)
      .filter((name) => name.startsWith('page'))
      .sort()
      .map((name) => read(readFileSync(join(folder, name))));
  });
}

/** What Poppler is asked of a PDF. */
const QUESTIONS = {
  info: ['pdfinfo'],
  fonts: ['pdffonts'],
  text: ['pdftotext', '-layout'],
  'boxes of words': ['pdftotext', '-bbox'],
} as const;

/** What a tool of Poppler says of a PDF. */
export function askPoppler(question: keyof typeof QUESTIONS, pdf: Uint8Array): string {
  needPoppler();
  const [tool, ...options] = QUESTIONS[question];
  return inFolder((folder) => {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    const to = tool === 'pdftotext' ? ['-'] : [];
    return execFileSync(tool, [...options, file, ...to], { encoding: 'utf8', maxBuffer: 1e8 });
  });
}

function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'stripwright-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A binary grey map of one byte a pixel, as its manual page tells (netpbm, pgm(5)). */
function readPgm(bytes: Buffer, dotsPerMillimetre: number): GreyImage {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (head === null) throw new Error('not a grey map of one byte a pixel');
  const [width, height] = [Number(head[1]), Number(head[2])];
  const start = head[0].length;
  return {
    width,
    height,
    dotsPerMillimetre,
    dark: (x, y) => 1 - (bytes[start + y * width + x] ?? 255) / 255,
  };
}
