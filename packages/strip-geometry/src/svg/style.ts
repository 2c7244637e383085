import type { SvgElement } from './svg-tree.js';

/**
 * A property of an element: from its `style`, or else from the attribute of
 * the same name. Style sheets are not read.
 */
export function propertyOf({ attributes }: SvgElement, name: string): string | undefined {
  const declared = (attributes.get('style') ?? '')
    .split(';')
    .map((declaration) => declaration.split(':'))
    .findLast(([property]) => property?.trim() === name)?.[1];
  return (declared ?? attributes.get(name))?.replace('!important', '').trim();
}
