import { bounds, type Outline } from '@stripwright/strip-geometry';
import type { Drawing } from '../drawing/drawing.js';
import { escaped } from '../drawing/escaped.js';
import { INK, tint } from '../drawing/ink.js';
import { svgElement } from '../drawing/svg-sink.js';
import type { Rule } from '../length/print-length.js';
import { CUTTING_CAUTIONS } from '../report/cautions.js';
import { cardName } from './card-name.js';
import { type Exhibit, sizeWords } from './exhibit.js';
import { pointsOn } from './places.js';

/** Millimetres. */
const THUMBNAIL = 40;
const AROUND = 2;

const STYLE = `
  body { margin: 0 auto; max-width: 72rem; padding: 1rem; font-family: sans-serif;
    color: ${INK.text}; background: ${INK.paper}; }
  nav { display: grid; grid-template-columns: repeat(auto-fill, minmax(8rem, 1fr)); gap: 1rem; }
  nav a { color: inherit; text-align: center; text-decoration: none; }
  nav a:hover, nav a:focus { text-decoration: underline; }
  nav svg { display: block; width: 100%; height: auto; }
  figure { margin: 2rem 0; border: 1px solid ${INK.hatch}; break-inside: avoid; overflow-x: auto; }
  figure img { display: block; width: 100%; min-width: 56rem; height: auto; }
  @media print { figure img { min-width: 0; } }
`;

/** The page that shows every card, as a well-formed document without scripts. */
export function galleryPage(exhibits: readonly Exhibit[], rule: Rule): string {
  const links = exhibits.map(
    ({ id, title, outline }) =>
      `<a href="#${id}">${svgElement(silhouette(title, outline))}<span>${escaped(title)}</span></a>`,
  );
  const figures = exhibits.map((exhibit) => {
    const words = escaped(`${exhibit.title}, ${sizeWords(exhibit, rule)}`);
    return (
      `<figure id="${exhibit.id}"><a href="${cardName(exhibit)}">` +
      `<img src="${cardName(exhibit)}" alt="${words}" loading="lazy"/></a></figure>`
    );
  });
  return [
    '<!DOCTYPE html>',
    '<html xmlns="http://www.w3.org/1999/xhtml" lang="en">',
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    '<title>Outlines of cutters</title>',
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    '<h1>Outlines of cutters</h1>',
    `<p>${exhibits.length} outlines, each with its flat strip. Bends have the same numbers, and `,
    'curves the same letters, on the shape, on the strip and in the figures.</p>',
    `<p>${escaped(CUTTING_CAUTIONS.join(' '))}</p>`,
    '<nav>',
    ...links,
    '</nav>',
    ...figures,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function silhouette(title: string, outline: Outline): Drawing {
  const { left, right, bottom, top, across, high } = bounds(outline);
  const scale = (THUMBNAIL - 2 * AROUND) / Math.max(across, high);
  const points = outline.segments.flatMap(pointsOn).map(({ x, y }) => ({
    x: THUMBNAIL / 2 + (x - (left + right) / 2) * scale,
    y: THUMBNAIL / 2 - (y - (bottom + top) / 2) * scale,
  }));
  const pen = { fill: tint(1), stroke: INK.text, strokeWidth: 0.5 };
  return {
    title,
    description: `The outline of the cutter: ${title}`,
    page: { x: 0, y: 0, width: THUMBNAIL, height: THUMBNAIL },
    hatches: [],
    layers: [{ name: 'outline', marks: [{ kind: 'polygon', points, ...pen }] }],
  };
}
