import { checkOutline } from '../check-outline.js';
import { FITTING_TOLERANCE, isTraced } from '../fitting/fit-trace.js';
import { bounds } from '../measure.js';
import type { Outline } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { printLength } from '../wording.js';
import { scaleFor } from './asked-size.js';
import { closedLoops, type Loop, ORIGIN } from './closed-loops.js';
import { drawnShapes, type Ignorable } from './drawn-shapes.js';
import { fittedOutlines } from './fitted-outlines.js';
import { loopNames, loopRoles } from './loop-names.js';
import { SvgError } from './svg-error.js';
import { readTree } from './svg-tree.js';

/** How a drawing is read; everything may be left out. */
export interface SvgOptions {
  /** Enlarge the drawing until its largest outline is so wide, millimetres. */
  readonly across?: number;
  /** Enlarge the drawing until its largest outline is so high, millimetres. */
  readonly high?: number;
  /**
   * Whether outlines are fitted with few lines and arcs: those that look traced
   * (see `isTraced`) where absent, or always, or never.
   */
  readonly fit?: 'when traced' | 'always' | 'never';
  /** How far a fitted outline may lie from what is drawn, millimetres; 0.2 where absent. */
  readonly tolerance?: number;
  /** What to pass over instead of refusing the drawing for it; nothing where absent. */
  readonly ignore?: readonly Ignorable[];
}

/**
 * The outlines of a drawing in SVG: one for each closed line of its `path`,
 * `polygon`, `polyline`, `rect`, `circle` and `ellipse` elements, in order,
 * with all transforms carried out. Millimetres from the lower left of the page
 * (the upper left, where the file tells no height), y up, run anticlockwise. The real size is that of the file (96 px to the
 * inch) unless `across` or `high` asks for another. What counts is the path
 * itself: the width of its stroke and its filling do not.
 *
 * Lines, circular and elliptical arcs and Bezier curves stay what they are. A
 * path is closed if the file says so or its ends lie within 0.01 mm. Outlines
 * that were traced as many tiny segments are fitted with few lines and arcs,
 * see `fitTrace`; one that is too rough for that is refused.
 *
 * @throws SvgError saying what was found, in which element, line and column.
 */
export function readSvg(text: string, options: SvgOptions = {}): readonly Outline[] {
  const { ignore = [], fit = 'when traced', tolerance = FITTING_TOLERANCE } = options;
  if (!(tolerance > 0 && Number.isFinite(tolerance))) {
    const message = `"tolerance" must be a length above 0 mm; got ${printLength(tolerance)}.`;
    throw new SvgError('out of range', message);
  }
  const shapes = drawnShapes(readTree(text), ignore);
  const leaveOutOpen = ignore.includes('open paths');
  const asDrawn = closedLoops(shapes, 1, leaveOutOpen);
  const largest = asDrawn
    .map((loop) => bounds({ name: '', ...loop }))
    .reduce((a, b) => (b.across * b.high > a.across * a.high ? b : a), NOTHING);
  if (asDrawn.length === 0) {
    throw new SvgError(
      'no closed shape',
      'The drawing holds no closed shape to cut; draw one as a path, polygon, rect, circle or ' +
        'ellipse, and see that it is not hidden.',
    );
  }
  const scale = scaleFor(options, largest);
  const loops = scale === 1 ? asDrawn : closedLoops(shapes, scale, leaveOutOpen);
  const roles = loopRoles(loops);
  const names = loopNames(loops, roles);
  const outlines = loops.map((loop, index): Outline => {
    const outline = outlineOf(loop, names[index] ?? '');
    return roles[index] === 'inner' ? { ...outline, hole: true } : outline;
  });
  const isFitted = (outline: Outline) =>
    fit === 'always' || (fit === 'when traced' && isTraced(outline));
  return fittedOutlines(outlines, loops, tolerance, isFitted);
}

const NOTHING = { left: 0, right: 0, bottom: 0, top: 0, across: 0, high: 0 };

function outlineOf({ place, segments }: Loop, name: string): Outline {
  const outline = { name, segments };
  try {
    checkOutline(outline);
  } catch (error) {
    if (error instanceof OutlineError && error.code === 'clockwise') {
      const message =
        'The path runs back over itself and holds no area; draw it as a closed shape.';
      throw new SvgError('crosses itself', message, place);
    }
    if (error instanceof OutlineError) {
      const code = error.code === 'crosses itself' ? 'crosses itself' : 'out of range';
      const said = error.message.replace(/\.$/, '');
      throw new SvgError(code, `${said} (places in millimetres from ${ORIGIN}).`, place);
    }
    throw error;
  }
  return outline;
}
