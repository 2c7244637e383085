import type { Drawing, Mark } from '../../drawing/drawing.js';
import { svgElement } from '../../drawing/svg-sink.js';
import { type Html, markup } from './element.js';
import { parsedAsWritten } from './escape.js';

/** What a picture measures on paper, in millimetres. */
export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/**
 * A drawing as an element of a page. Its hatches get names of their own, since all
 * pictures of a page share one set of ids.
 *
 * @param prefix no other picture's on the page
 */
export function embedDrawing(drawing: Drawing, prefix: string, size: PaperSize): Html {
  return markup(parsedAsWritten(svgElement(withPrefix(drawing, prefix), size)));
}

function withPrefix(drawing: Drawing, prefix: string): Drawing {
  const names = new Map(drawing.hatches.map(({ id }) => [`url(#${id})`, `${prefix}.${id}`]));
  const renamed = (mark: Mark): Mark => {
    if (mark.kind === 'text' || mark.fill === undefined) return mark;
    const name = names.get(mark.fill);
    return name === undefined ? mark : { ...mark, fill: `url(#${name})` };
  };
  return {
    ...drawing,
    hatches: drawing.hatches.map((hatch) => ({ ...hatch, id: `${prefix}.${hatch.id}` })),
    layers: drawing.layers.map(({ name, marks }) => ({ name, marks: marks.map(renamed) })),
  };
}
