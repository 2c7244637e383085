import { escapeText } from './escape.js';

/** A piece of a document, which no text can be taken for. */
export interface Html {
  readonly html: string;
}

/** What stands in an element: texts are escaped. */
export type Content = Html | string | readonly Content[];

export type Attributes = Readonly<Record<string, string | boolean | undefined>>;

/** Those of the elements written here that have neither content nor end tag (HTML standard, 13.1.2). */
const VOID = new Set(['input', 'meta', 'br']);

/**
 * An element. Its name and the names of its attributes are the program's own; values and
 * content may be anything.
 *
 * @param attributes `true` for one without a value; `false` and undefined for none
 */
export function element(name: string, attributes: Attributes = {}, ...content: Content[]): Html {
  const start = `<${name}${Object.entries(attributes).map(attribute).join('')}>`;
  return { html: VOID.has(name) ? start : `${start}${written(content)}</${name}>` };
}

function attribute([name, value]: readonly [string, string | boolean | undefined]): string {
  if (value === undefined || value === false) return '';
  return value === true ? ` ${name}` : ` ${name}="${escapeText(value)}"`;
}

function written(content: Content): string {
  if (typeof content === 'string') return escapeText(content);
  return 'html' in content ? content.html : content.map(written).join('');
}

/** Markup of the program's own: style, script, and drawings that a writer of SVG has escaped. */
export const markup = (html: string): Html => ({ html });
