import { escaped } from '../../drawing/escaped.js';
import { INK } from '../../drawing/ink.js';
import { svgElement } from '../../drawing/svg-sink.js';
import type { ShopUnits } from '../../length/unit.js';
import { HANDLING_CAUTION } from '../../report/cautions.js';
import { counted } from '../../report/counted.js';
import { byMetal } from '../by-metal.js';
import type { RackStock } from '../rack.js';
import { dayOf, metalHeading, sizeWords } from '../stock-words.js';
import { drawOutline } from './draw-outline.js';
import { scaleFor } from './scale.js';
import { drawScaleBar } from './scale-bar.js';

const GENERATOR = '<meta name="generator" content="stripwright rack draw"/>';

/** Room for what is written below a small outline, in millimetres. */
const LEAST_FIGURE = 52;

/** Clear of the edges that no printer prints on. */
const STYLE = `
  @page { margin: 12mm; }
  body { margin: 0 auto; max-width: 190mm; padding: 0; font-family: sans-serif;
    font-size: 3.4mm; line-height: 1.35; color: ${INK.text}; background: ${INK.paper}; }
  h1 { font-size: 6mm; margin: 0 0 1mm; }
  h2 { font-size: 4.4mm; margin: 5mm 0 2mm; border-bottom: 0.3mm solid ${INK.text};
    break-after: avoid; }
  p { margin: 0 0 1.5mm; }
  figure { display: inline-block; vertical-align: top; margin: 0 5mm 4mm 0;
    break-inside: avoid; }
  figure svg { display: block; }
  figcaption { border-top: 0.15mm dotted ${INK.hatch}; padding-top: 0.5mm; overflow-wrap: anywhere; }
  figcaption b { font-size: 4.4mm; letter-spacing: 0.3mm; }
  .caution { font-weight: bold; }
  @media screen { body { padding: 8mm; } }
  @media print { * { print-color-adjust: exact; } }
`;

/** What a page is of. */
export interface RackPage {
  readonly stock: readonly RackStock[];
  readonly units: ShopUnits;
  /** How often the rack had been changed: tells an old page from a new one. */
  readonly revision: number;
}

/** A page to print: the outline of each thing to one scale, metal by metal, the largest first. */
export function rackPage({ stock, units, revision }: RackPage): string {
  const scale = scaleFor(stock);
  const groups = byMetal(stock).flatMap((group) => [
    `<h2>${escaped(metalHeading(group, units))}: ${counted(group.stock.length, 'outline')}</h2>`,
    '<div>',
    ...[...group.stock].sort(largestFirst).map((one) => figure(one, scale, units)),
    '</div>',
  ]);
  return [
    '<!DOCTYPE html>',
    '<html xmlns="http://www.w3.org/1999/xhtml" lang="en">',
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    GENERATOR,
    '<title>The rack</title>',
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    '<h1>The rack</h1>',
    `<p>State ${revision} of the rack. Outlines are to scale; cut to the figures, and do not measure `,
    'the paper. An arrow beside an outline runs the way the metal was rolled; a hatched one is ',
    'promised to a plan.</p>',
    `<p class="caution">${HANDLING_CAUTION}</p>`,
    svgElement(drawScaleBar(scale, units)),
    ...groups,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** Whether a text is such a page. */
export function isRackPage(text: string): boolean {
  return text.includes(GENERATOR);
}

function figure(stock: RackStock, scale: number, units: ShopUnits): string {
  const facts = factsOf(stock, units);
  const words = {
    title: `${stock.mark}, ${sizeWords(stock, units)}`,
    description: `${facts.join('; ')}.`,
  };
  // Isolated, so that texts that read from right to left do not turn their neighbours round.
  const lines = facts.map((fact) => `<bdi>${escaped(fact)}</bdi>`);
  const drawing = drawOutline(stock, scale, words);
  const width = Math.ceil(Math.max(LEAST_FIGURE, drawing.page.width));
  return (
    `<figure style="width: ${width}mm">${svgElement(drawing)}` +
    `<figcaption><b>${stock.mark}</b> ${lines.join('<br/>')}</figcaption></figure>`
  );
}

/** The first stands beside the mark, each other one on a line of its own. */
function factsOf(stock: RackStock, units: ShopUnits): readonly string[] {
  const { kind, name, count, place, rolled, promised, addedAt } = stock;
  return [
    sizeWords(stock, units),
    ...(kind === 'sheets' ? [`${counted(count, 'whole sheet')}: ${name}`] : []),
    ...(place === '' ? [] : [place]),
    [
      ...(rolled === undefined ? [] : [`rolled ${rolled}`]),
      `since ${dayOf(addedAt)}`,
      ...(promised === 0 ? [] : [kind === 'offcut' ? 'promised' : `${promised} promised`]),
    ].join(', '),
  ];
}

function largestFirst(one: RackStock, other: RackStock): number {
  return other.length - one.length || other.width - one.width || (one.mark < other.mark ? -1 : 1);
}
