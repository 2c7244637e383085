import { SaxesParser } from 'saxes';
import { MOST_CHARACTERS, MOST_DEPTH, MOST_ELEMENTS } from './limits.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';

/** An element of the drawing, without the text in it. */
export interface SvgElement {
  readonly name: string;
  /** By local name, so `xlink:href` is `href`. Those of other vocabularies are left out. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly SvgElement[];
  readonly place: SvgPlace;
  /** Characters in its attributes: what reading it costs. */
  readonly size: number;
}

const SVG = 'http://www.w3.org/2000/svg';
const XLINK = 'http://www.w3.org/1999/xlink';

const USUAL_PREFIXES: Readonly<Record<string, string>> = { '': SVG, svg: SVG, xlink: XLINK };

interface Growing extends SvgElement {
  readonly children: SvgElement[];
}

/**
 * The elements of an SVG file as a tree, elements of other vocabularies (such
 * as an editor's notes) left out. Entities other than those of XML itself are
 * refused, not expanded; nothing outside the text is ever read.
 *
 * @throws SvgError `not well formed`, `not svg`, `too large`.
 */
export function readTree(text: string): SvgElement {
  if (text.length > MOST_CHARACTERS) {
    throw tooLarge(`The file has ${text.length} characters`, MOST_CHARACTERS);
  }
  if (text.trim() === '') {
    throw new SvgError('not svg', 'The file is empty; save the drawing again as SVG.');
  }
  const parser = new SaxesParser({
    xmlns: true,
    position: true,
    // Drawings typed by hand, and the notes of editors, often go without declarations.
    resolvePrefix: (prefix: string) => USUAL_PREFIXES[prefix] ?? `undeclared:${prefix}`,
  });
  const where = placeFinder(text);
  const open: (Growing | undefined)[] = [];
  let root: SvgElement | undefined;
  let count = 0;
  let start = 0;

  parser.on('error', (error) => {
    const { line, columnIndex } = parser;
    const place = { element: '', id: undefined, line, column: columnIndex + 1 };
    throw new SvgError('not well formed', explain(error.message), place);
  });
  parser.on('opentagstart', () => {
    start = text.lastIndexOf('<', parser.position - 1);
  });
  parser.on('opentag', (tag) => {
    count += 1;
    const attributes = new Map<string, string>();
    let size = 0;
    for (const { prefix, local, uri, value } of Object.values(tag.attributes)) {
      if (prefix === '' || uri === XLINK) {
        attributes.set(local, value);
        size += local.length + value.length;
      }
    }
    const place = { element: tag.local, id: attributes.get('id'), ...where(start) };
    if (count > MOST_ELEMENTS) {
      throw tooLarge('The file has more elements than a drawing needs', MOST_ELEMENTS, place);
    }
    if (open.length >= MOST_DEPTH) {
      throw tooLarge('Elements stand in one another too deep', MOST_DEPTH, place);
    }
    const parent = open.at(-1);
    const drawn = tag.uri === SVG && (open.length === 0 || parent);
    const element: Growing | undefined = drawn
      ? { name: tag.local, attributes, children: [], place, size }
      : undefined;
    if (open.length === 0) {
      if (element === undefined || tag.local !== 'svg') {
        const message = `The file starts with <${tag.name}>, not <svg>; save the drawing as SVG.`;
        throw new SvgError('not svg', message, place);
      }
      root = element;
    } else if (element !== undefined) {
      parent?.children.push(element);
    }
    open.push(element);
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  if (root === undefined) {
    throw new SvgError('not svg', 'The file holds no <svg>; save the drawing again as SVG.');
  }
  return root;
}

function tooLarge(found: string, most: number, place?: SvgPlace): SvgError {
  return new SvgError(
    'too large',
    `${found}; at most ${most} are read. Simplify the drawing.`,
    place,
  );
}

/** The parser's message without its own line and column, and with what to do. */
function explain(message: string): string {
  const said = message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
  const advice = said.startsWith('undefined entity')
    ? 'entities that the file defines itself are not read; replace each by its text'
    : 'save the drawing again, or mend it in a text editor';
  return `The XML is not well formed (${quote(said).slice(1, -1)}); ${advice}.`;
}

/** Finds line and column of offsets that never go back, in one pass over the text. */
function placeFinder(text: string): (offset: number) => { line: number; column: number } {
  let line = 1;
  let lineStart = 0;
  let seen = 0;
  return (offset) => {
    for (; seen < offset; seen++) {
      const code = text.charCodeAt(seen);
      const alone = code === 13 && text.charCodeAt(seen + 1) !== 10;
      if (code === 10 || alone) {
        line += 1;
        lineStart = seen + 1;
      }
    }
    return { line, column: offset - lineStart + 1 };
  };
}
