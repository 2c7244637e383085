import { toDegrees } from './angle.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { checkOutline } from './check-outline.js';
import { develop, type Run } from './develop.js';
import type { EdgeTreatment } from './edges/edge-treatment.js';
import type { HemFace } from './edges/hem-face.js';
import { rawEdge } from './edges/raw-edge.js';
import { singleHem } from './edges/single-hem.js';
import type { MetalSide } from './metal-side.js';
import type { Outline } from './outline.js';
import { placeSeam } from './seam.js';
import type { SeamPlace } from './seam-place.js';
import { buttJoint } from './seams/butt-joint.js';
import type { Seam } from './seams/seam.js';
import { tuckedTab } from './seams/tucked-tab.js';
import { StripError } from './strip-error.js';
import { ANGLE_TOLERANCE } from './tolerance.js';
import { printLength, printNumber } from './wording.js';

/** A cutter to be made. Millimetres. */
export interface CutterSpec {
  /** As drawn; which face of the metal that is, `sizeIs` tells. */
  readonly outline: Outline;
  /** Height of the finished cutter, above 0. */
  readonly depth: number;
  /** Width of the edge that is folded over, 0 for a raw edge. */
  readonly hem: number;
  /** Length of the tab that joins the ends, 0 for a butt joint. */
  readonly tab: number;
  readonly bendRule: BendRule;
  /** Stands in place of `hem` where it is given. */
  readonly edge?: EdgeTreatment;
  /** The face the edge is folded to, outside without it. */
  readonly hemFace?: HemFace;
  /** Stands in place of `tab` where it is given. */
  readonly seam?: Seam;
  /** Where the ends meet; without it the place is chosen, see `startAtSeam`. */
  readonly seamAt?: SeamPlace;
  /**
   * What the outline is the size of: the inside face of the cutter, which is
   * the edge of the cookie, its outside face, or the middle of its metal.
   * Inside without it. Where the outline is the edge of a hole the faces change
   * places, since there the edge of the cookie is on the outside.
   */
  readonly sizeIs?: SizeFace;
  /** Corners that turn through no more degrees than this are formed, not bent; see `develop`. */
  readonly cornerAngle?: number;
}

/** A face of the metal, or its middle. */
export type SizeFace = 'inside' | 'outside' | 'middle';

/** Degrees. A square corner is a corner. */
const LARGEST_CORNER_ANGLE = 89;

/** The face that stands for another where the cookie lies outside the outline. */
const FACE_IN_A_HOLE: Readonly<Record<SizeFace, SizeFace>> = {
  inside: 'outside',
  outside: 'inside',
  middle: 'middle',
};

/** On which side of the outline the metal lies. */
const METAL_SIDE: Readonly<Record<SizeFace, MetalSide>> = {
  inside: 'outside',
  outside: 'inside',
  middle: 'both',
};

/** A bend on the flat strip. Distances run from the square end. */
export interface BendMark {
  /** 1 for the first bend from the square end. */
  readonly number: number;
  /** The middle of the bend: where to mark, and where to set the pliers. */
  readonly at: number;
  /** Where the metal starts to curve; equal to `at` where bends are taken as sharp. */
  readonly from: number;
  /** Where it is straight again. */
  readonly to: number;
  /** `in` folds toward the inside of the cutter, `out` away from it. */
  readonly direction: 'in' | 'out';
  /** Degrees bent through: 0 would stay flat, 90 is square. */
  readonly angle: number;
}

/** A stretch of the strip that is formed round a curve. */
export interface FormedCurve {
  readonly from: number;
  readonly to: number;
  /** Tightest radius of the outline there, on the face that the outline is the size of. */
  readonly radius: number;
  readonly direction: 'in' | 'out';
  /** Degrees formed through. */
  readonly angle: number;
}

/** The flat strip of one cutter. Millimetres. */
export interface Strip {
  /** What the seam adds before, the developed length of the outline, what the seam adds after. */
  readonly length: number;
  /** Depth plus what the edge adds. */
  readonly width: number;
  readonly depth: number;
  /** What the edge adds; also the distance of the hem line from the edge that is folded. */
  readonly hem: number;
  /** What the seam adds after the developed length. */
  readonly tab: number;
  readonly edge: EdgeTreatment;
  readonly hemFace: HemFace;
  readonly seam: Seam;
  /** The rule it was laid out by. */
  readonly bendRule: BendRule;
  /** Which face of the metal the drawn line is. */
  readonly sizeIs: SizeFace;
  /** Length once round the cutter, without the seam. It starts `seam.atStart` from the square end. */
  readonly developed: number;
  /** Ascending. */
  readonly bends: readonly BendMark[];
  /** Ascending, apart from the bends. */
  readonly curves: readonly FormedCurve[];
  /** Flats, bends and curves end to end, once round the cutter. */
  readonly runs: readonly Run[];
}

/**
 * Lays out the flat strip of a cutter: as long as its outline plus what the
 * seam takes, as wide as it is deep plus what the edge takes, with every bend
 * numbered and measured from the square end. The strip starts at the seam that
 * `startAtSeam` chooses or the user asks for. If that is a corner, the last
 * bend is that corner, where the tab is folded over.
 *
 * @throws OutlineError if the outline is not sound, StripError naming the
 * depth, hem, tab, seam, seamAt or cornerAngle at fault, BendError if the metal cannot
 * follow the outline.
 */
export function makeStrip(cutter: CutterSpec): Strip {
  const { outline, depth, bendRule, hemFace = 'outside', seamAt } = cutter;
  const asked = cutter.sizeIs ?? 'inside';
  const sizeIs = outline.hole === true ? FACE_IN_A_HOLE[asked] : asked;
  if (!Number.isFinite(depth) || depth <= 0) {
    throw new StripError('depth', `The depth must be above 0 mm; got ${printLength(depth)}.`);
  }
  const edge = edgeOf(cutter);
  const seam = seamOf(cutter);
  checkTogether(edge, seam);
  const cornerAngle = cornerAngleOf(cutter);
  checkOutline(outline);

  const { segments } = placeSeam(outline, seam, seamAt, cornerAngle);
  const metal = METAL_SIDE[sizeIs];
  const development = develop(segments, { bendRule, closed: true, metal, cornerAngle });
  const { length: developed } = development;
  const shift = seam.atStart;
  const runs = development.runs.map((run) => {
    return { ...run, from: shift + run.from, to: shift + run.to };
  });
  const bends = runs
    .filter((run) => run.kind === 'bend')
    .map(({ from, to, direction, angle }, index) => {
      return { number: index + 1, at: (from + to) / 2, from, to, direction, angle };
    });
  const curves = runs
    .filter((run) => run.kind === 'curve')
    .map(({ from, to, radius, direction, angle }) => ({ from, to, radius, direction, angle }));
  return {
    length: shift + developed + seam.atEnd,
    width: depth + edge.allowance,
    depth,
    hem: edge.allowance,
    tab: seam.atEnd,
    edge,
    hemFace,
    seam,
    bendRule,
    sizeIs,
    developed,
    bends,
    curves,
    runs,
  };
}

function cornerAngleOf({ cornerAngle = 0 }: CutterSpec): number {
  if (!(cornerAngle >= 0 && cornerAngle <= LARGEST_CORNER_ANGLE)) {
    const message =
      `The cornerAngle must be from 0 to ${LARGEST_CORNER_ANGLE} degrees; ` +
      `got ${printNumber(cornerAngle)}.`;
    throw new StripError('cornerAngle', message);
  }
  return Math.max(cornerAngle, toDegrees(ANGLE_TOLERANCE));
}

function edgeOf({ edge, hem }: CutterSpec): EdgeTreatment {
  if (edge !== undefined) {
    return edge;
  }
  checkNotNegative('hem', hem);
  return hem === 0 ? rawEdge() : singleHem(hem);
}

function seamOf({ seam, tab }: CutterSpec): Seam {
  if (seam !== undefined) {
    return seam;
  }
  checkNotNegative('tab', tab);
  return tab === 0 ? buttJoint() : tuckedTab(tab);
}

function checkTogether(edge: EdgeTreatment, seam: Seam): void {
  if (seam.openHem > 0 && edge.allowance > 0 && !edge.takesTab) {
    const message =
      `A ${seam.name} cannot go into a ${edge.name}, which has no room for it; ` +
      'choose a lap or a grooved seam, or a hem.';
    throw new StripError('seam', message);
  }
}

function checkNotNegative(field: 'hem' | 'tab', value: number): void {
  if (!Number.isFinite(value) || value < 0) {
    throw new StripError(field, `The ${field} must be 0 mm or more; got ${printLength(value)}.`);
  }
}
