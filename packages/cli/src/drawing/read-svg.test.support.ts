import { SVG, type Svg, withWindow } from '@svgdotjs/svg.js';
import { SaxesParser } from 'saxes';
import { createSVGWindow } from 'svgdom';
import type { Box } from './drawing.js';

export interface ReadElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
}

/** Reads a document with a parser that is not the one it was written with; throws if malformed. */
export function readSvg(svg: string): readonly ReadElement[] {
  const elements: ReadElement[] = [];
  const open: ReadElement[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    const attributes = Object.fromEntries(
      Object.entries(tag.attributes).map(([name, attribute]) => [name, attribute.value]),
    );
    const element = { name: tag.name, attributes, text: '' };
    elements.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const element = open.at(-1);
    if (element !== undefined) element.text += text;
  });
  parser.on('closetag', () => open.pop());
  parser.write(svg).close();
  return elements;
}

export const withClass = (elements: readonly ReadElement[], name: string): readonly ReadElement[] =>
  elements.filter(({ attributes }) => attributes.class === name);

export function rectBox({ attributes }: ReadElement): Box {
  const [x = 0, y = 0, width = 0, height = 0] = ['x', 'y', 'width', 'height'].map((name) =>
    Number(attributes[name]),
  );
  return { x, y, width, height };
}

/** The box of each text as svgdom measures it with the font that it brings. */
export function measureTexts(elements: readonly ReadElement[]): readonly Box[] {
  const window = createSVGWindow();
  return withWindow(window as never, () => {
    const root = SVG(window.document.documentElement) as unknown as Svg;
    return elements.map(({ text, attributes }) => {
      const { transform, ...plain } = attributes;
      const { x, y, width, height } = root.plain(text).attr(plain).bbox();
      if (transform === undefined) return { x, y, width, height };
      const turn = /^rotate\(-90 (\S+) (\S+)\)$/u.exec(transform);
      if (turn === null) throw new Error(`unexpected transform ${transform}`);
      const [cx, cy] = [Number(turn[1]), Number(turn[2])];
      return { x: cx + (y - cy), y: cy - (x + width - cx), width: height, height: width };
    });
  });
}

export const holds = (outer: Box, inner: Box, slack: number): boolean =>
  inner.x >= outer.x - slack &&
  inner.y >= outer.y - slack &&
  inner.x + inner.width <= outer.x + outer.width + slack &&
  inner.y + inner.height <= outer.y + outer.height + slack;

/** Pairs of boxes that share more than `slack` both ways, as their indices. */
export function overlaps(boxes: readonly Box[], slack: number): readonly (readonly number[])[] {
  return boxes.flatMap((one, first) =>
    boxes.slice(first + 1).flatMap((other, offset) => {
      const wide = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
      const high = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
      return wide > slack && high > slack ? [[first, first + 1 + offset]] : [];
    }),
  );
}
