import { type CurveAtMark, markOut, type Strip, type StripMark } from '@stripwright/strip-geometry';
import { printBareLength, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { curveName } from '../report/mark-rows.js';
import type { Tagged } from '../strip-drawing/tag.js';

/** One line of words about a place to mark across a strip. */
export interface RunningMark {
  /** The true place, millimetres from the square end. */
  readonly along: number;
  /** As read off the rule; empty where the line above it has the same. */
  readonly reading: string;
  readonly words: string;
  readonly tag?: { readonly label: string; readonly tagged: Tagged };
}

/** Millimetres. */
const NEAR = 1e-6;

/**
 * All that is marked across a strip, from its square end to its far end: bends,
 * where curves begin and end, the lines of the seam, how far the hem stays open.
 * The figures are those of the plan file.
 */
export function runningMarks(
  strip: Strip,
  entry: PlanFileStrip,
  rule: Rule,
): readonly RunningMark[] {
  const read = (ticks: number) => printBareLength(ticks * rule.mark, rule);
  const up = (along: number) => read(ticksUp(along, rule.mark));
  const near = (along: number) => read(Math.round(along / rule.mark));
  const { seam, edge, length } = strip;
  const isPart = entry.part !== undefined;
  const { marks } = markOut(strip, rule.mark);
  const marked = marks.flatMap((mark, index) => {
    // A bend that is at the seam has the last mark.
    const seamHere = mark.seam !== undefined || index === marks.length - 1;
    const facts = [
      ...factsOf(mark, entry),
      ...(seamHere ? [{ words: isPart ? 'seam' : 'ends meet' }] : []),
    ];
    const reading = printBareLength(mark.at, rule);
    return facts.map((fact, index): RunningMark => {
      return { along: mark.exact, reading: index === 0 ? reading : '', ...fact };
    });
  });
  // The square end itself is no mark, but a curve may begin there.
  const [first] = strip.runs;
  const atOnce =
    first?.kind === 'curve' && first.from < NEAR
      ? formFacts({ number: 1, ...first }, entry).map((fact, index): RunningMark => {
          return { along: 0, reading: index === 0 ? '0' : '', ...fact };
        })
      : [];
  const across = seam.lines.map(({ purpose, end, from }): RunningMark => {
    const along = end === 'start' ? from : length - from;
    const words = purpose === 'fold' ? 'seam fold' : 'rivets';
    return { along, reading: near(along), words };
  });
  const opens = edge.takesTab && seam.openHem > 0 ? [seam.atStart + seam.openHem] : [];
  return [
    ...atOnce,
    ...marked,
    ...across,
    ...opens.map((along) => ({ along, reading: up(along), words: 'open hem ends' })),
    { along: length, reading: up(length), words: 'far end' },
  ].sort((one, other) => one.along - other.along);
}

const degrees = (angle: number): string => `${angle.toFixed(1)}°`;

type Told = Pick<CurveAtMark, 'number' | 'direction' | 'angle'>;
type Fact = Pick<RunningMark, 'words' | 'tag'>;

/** What there is to do at a mark, a line each: the bend, the curve that ends, the one that begins. */
function factsOf(mark: StripMark, entry: PlanFileStrip): readonly Fact[] {
  const { bend, curveStarts, curveEnds } = mark;
  const told = entry.bends.find(({ number }) => number === bend?.number);
  return [
    ...(bend === undefined
      ? []
      : [
          {
            words: `fold ${bend.direction} ${degrees(told?.foldTo ?? bend.angle)}`,
            tag: tagged('bend', `${bend.number}`, bend.direction),
          },
        ]),
    ...(curveEnds === undefined ? [] : [{ words: `${curveName(curveEnds.number)} ends` }]),
    ...(curveStarts === undefined ? [] : formFacts(curveStarts, entry)),
  ];
}

function formFacts({ number, direction, angle }: Told, entry: PlanFileStrip) {
  const halves = entry.curves[number - 1]?.formTo ?? [angle / 2, angle / 2];
  const turns = halves.map((half) => half.toFixed(1)).join(' + ');
  return [
    { words: `form ${direction}`, tag: tagged('curve', curveName(number), direction) },
    { words: `${turns}°` },
  ];
}

function tagged(of: Tagged['of'], label: string, direction: Tagged['direction']) {
  return { label, tagged: { of, direction } };
}
