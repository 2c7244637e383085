import { type Outline, readSvg, SvgError, type SvgOptions } from '@stripwright/strip-geometry';
import { accept, type Reading, refuse } from '../faults/reading.js';

/**
 * The outlines of a drawing, or why it gives none, with its file, line and
 * column: `duck.svg:12:3: path "wing": ...`.
 *
 * @param text the contents of the file
 * @param file its name, for the message
 */
export function svgOutlines(
  text: string,
  file: string,
  options: SvgOptions,
): Reading<readonly Outline[]> {
  try {
    return accept(readSvg(text, options));
  } catch (error) {
    if (!(error instanceof SvgError)) throw error;
    return refuse({ code: 'drawing', reason: placed(error, file) });
  }
}

function placed({ message, place }: SvgError, file: string): string {
  if (place === undefined) return `${file}: ${message}`;
  const said = message.replace(/^Line \d+, column \d+, /, '');
  return `${file}:${place.line}:${place.column}: ${said}`;
}
