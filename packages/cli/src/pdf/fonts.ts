import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';

/** The two faces that a PDF is written in. */
export interface Fonts {
  readonly regular: Font;
  readonly bold: Font;
}

/** Has Latin, Greek, Cyrillic, Hebrew, Arabic and many signs. Its licence lets it be embedded. */
const FILES = {
  regular: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  bold: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
} as const;

/** Reads the faces from the package that brings them. */
export function readFonts(): Fonts {
  return { regular: readFont(FILES.regular), bold: readFont(FILES.bold) };
}

function readFont(file: string): Font {
  const font = create(readFileSync(createRequire(import.meta.url).resolve(file)));
  if (!('layout' in font)) throw new Error(`${file} holds several fonts`);
  return font;
}
