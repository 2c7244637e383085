import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Browser } from 'playwright-core';
import { temporaryFolder } from '../../environment.test.support.js';

export type Paper = 'A4' | 'Letter';

const run = promisify(execFile);

/** One of Poppler's tools, which read PDF without anything of Chromium's. */
async function poppler(tool: string, words: readonly string[]): Promise<string> {
  try {
    return (await run(tool, words, { maxBuffer: 2 ** 28 })).stdout;
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    if (!isMissing) throw error;
    throw new Error(`${tool} is not found: install Poppler (apt-get install poppler-utils).`);
  }
}

/** Prints a page as its reader would, without backgrounds. @returns the path of the PDF */
export async function printed(browser: Browser, url: string, paper: Paper): Promise<string> {
  const page = await browser.newPage({ colorScheme: 'dark' });
  await page.goto(url);
  const path = join(temporaryFolder(), `${paper}.pdf`);
  await page.pdf({ path, format: paper });
  await page.close();
  return path;
}

/** The text of each page, line by line, without the foot that every page has. */
export async function pageTexts(pdf: string): Promise<readonly (readonly string[])[]> {
  const text = await poppler('pdftotext', ['-layout', pdf, '-']);
  const pages = text.split('\f').slice(0, -1);
  return pages.map((page) =>
    page
      .split('\n')
      .map((line) => line.trim().replaceAll(/\s+/g, ' '))
      .filter((line) => line !== '' && !/^Sheared edges cut.* \d+ of \d+$/.test(line)),
  );
}

/** The words in the topmost 6 mm of print on each page, from left to right. */
export async function topWords(pdf: string): Promise<readonly string[]> {
  const html = await poppler('pdftotext', ['-bbox', pdf, '-']);
  return html
    .split('</page>')
    .slice(0, -1)
    .map((page) => {
      const words = [...page.matchAll(WORD)].map((match) => ({
        left: Number(match[1]),
        top: Number(match[2]),
        text: match[3] ?? '',
      }));
      const top = Math.min(...words.map((word) => word.top));
      return words
        .filter((word) => word.top < top + (6 / 25.4) * 72)
        .sort((one, other) => one.left - other.left)
        .map(({ text }) => text)
        .join(' ');
    });
}

const WORD = /<word xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>([^<]*)<\/word>/g;

/** A page as rows of grey pixels, 0 for black. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

export async function rasters(pdf: string, dotsPerInch: number): Promise<readonly Raster[]> {
  const folder = temporaryFolder();
  await poppler('pdftoppm', ['-r', `${dotsPerInch}`, '-gray', pdf, join(folder, 'page')]);
  return readdirSync(folder)
    .sort()
    .map((name) => readPgm(readFileSync(join(folder, name))));
}

/** Binary PGM, 8 bits a pixel (Netpbm's format). */
function readPgm(bytes: Buffer): Raster {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (head === null) throw new Error('That is no PGM of 8 bits a pixel.');
  const grey = new Uint8Array(bytes.subarray(head[0].length));
  return { width: Number(head[1]), height: Number(head[2]), grey };
}
