import { type CutNode, type CuttingNode, cuttingTree, gaugeSettings } from '@stripwright/nesting';
import { ticksToMillimetres } from '../length/ticks.js';
import type { PlanOnFile } from '../plan-file/read-plan-file.js';
import { mergeLines } from './merge-lines.js';
import { stripLetters } from './strip-letters.js';

/**
 * What is done at the shear for one layout, in the order of its cuts. Each cut takes
 * metal that has a name, lays its lower or left edge, as on the map, against the back
 * gauge, and parts off what lies between blade and gauge. Lengths in millimetres.
 */
export interface CuttingList {
  /** 1 for the first layout of the plan. */
  readonly layout: number;
  /** One for each time that the gauge is set. */
  readonly settings: readonly Setting[];
}

export interface Setting {
  /** How far the gauge stands behind the blade: how wide what falls off is. */
  readonly gauge: number;
  readonly lines: readonly Line[];
}

/** Cuts that are made one after the other in the same way. */
export interface Line {
  /** Their numbers on the map, from 1. */
  readonly cuts: { readonly from: number; readonly to: number };
  /** What is taken in hand; several, one after the other, where each is cut in the same way. */
  readonly takes: readonly Metal[];
  /** How many cuts are made in each. */
  readonly times: number;
  /** Which edge of it, as it lies on the map, goes against the gauge. */
  readonly edge: 'lower' | 'left';
  /** What each cut parts off, in order; where several are taken, what those of each do. */
  readonly falls: readonly Outcome[];
  /** What is in the hand after the last of them. */
  readonly rest: Outcome;
}

/** Metal on the bench. */
export interface Metal {
  /** The letters of a strip; absent for the whole stock. */
  readonly strip?: string;
  /** Whether something has been cut off it. */
  readonly begun: boolean;
}

/** What becomes of a part. */
export type Outcome =
  /** A blank, by its place in the order's list of strips, from 1. */
  | { readonly kind: 'piece'; readonly blank: number }
  | { readonly kind: 'offcut'; readonly length: number; readonly width: number }
  | { readonly kind: 'scrap' }
  /** A trimmed edge, which is scrap too. */
  | { readonly kind: 'edge' }
  /** Nothing is left: the kerf takes it. */
  | { readonly kind: 'nothing' }
  /** It is cut further and has a name from now on. */
  | { readonly kind: 'strip'; readonly strip: string }
  /** It is cut further under the name that it has. */
  | { readonly kind: 'same' };

/**
 * The cutting lists of a plan, one for each layout.
 * @param onFile a plan that was verified
 * @throws CuttingTreeError where a layout is none of a plan that holds
 */
export function cuttingLists(onFile: PlanOnFile): readonly CuttingList[] {
  return onFile.plan.layouts.map((_, index) => cuttingList(onFile, index));
}

function cuttingList({ file, problem, plan }: PlanOnFile, index: number): CuttingList {
  const layout = plan.layouts[index];
  if (layout === undefined) throw new Error(`The plan has no layout ${index + 1}.`);
  const { kerf = 0 } = problem.shear;
  const long = (ticks: number) => ticksToMillimetres(ticks, file.order.smallestMark);
  const numbers = new Map(file.blanks.map(({ id }, place) => [id, place + 1]));
  const nodes = cutNodes(cuttingTree(problem, layout));
  const names = namesOf(nodes);
  const gauges = gaugeSettings(problem, layout);

  const outcome = (part: CuttingNode | undefined, left: number, of: CutNode): Outcome => {
    if (part === undefined) return { kind: left > 0 ? 'edge' : 'nothing' };
    switch (part.kind) {
      case 'piece': {
        const piece = layout.pieces[part.index];
        return { kind: 'piece', blank: numbers.get(piece?.piece ?? '') ?? 0 };
      }
      case 'remnant': {
        const remnant = layout.remnants[part.index];
        if (remnant?.keep !== true) return { kind: 'scrap' };
        return { kind: 'offcut', length: long(remnant.length), width: long(remnant.width) };
      }
      case 'cut': {
        const strip = names.get(part.index);
        return strip === undefined || strip === names.get(of.index)
          ? { kind: 'same' }
          : { kind: 'strip', strip };
      }
    }
  };

  const settings: { readonly gauge: number; readonly lines: Line[] }[] = [];
  const begun = new Set<string | undefined>();
  layout.cuts.forEach((cut, at) => {
    const node = nodes.get(at);
    const gauge = gauges[at];
    if (node === undefined || gauge === undefined) throw new Error(`Cut ${at + 1} cuts nothing.`);
    const isLevel = cut.y1 === cut.y2;
    const extent = isLevel ? node.of.width : node.of.length;
    const strip = names.get(at);
    const line: Line = {
      cuts: { from: at + 1, to: at + 1 },
      takes: [{ ...(strip === undefined ? {} : { strip }), begun: begun.has(strip) }],
      times: 1,
      edge: isLevel ? 'lower' : 'left',
      falls: [outcome(node.near, gauge, node)],
      rest: outcome(node.far, extent - gauge - kerf, node),
    };
    begun.add(strip);
    const last = settings.at(-1);
    if (last !== undefined && last.gauge === long(gauge)) last.lines.push(line);
    else settings.push({ gauge: long(gauge), lines: [line] });
  });
  return {
    layout: index + 1,
    settings: settings.map(({ gauge, lines }) => ({ gauge, lines: mergeLines(lines) })),
  };
}

/** A strip that is cut further, where it lies on the stock. Millimetres. */
export interface LetteredStrip {
  readonly letter: string;
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * The strips that a cutting list calls by letters.
 * @throws CuttingTreeError where the layout is none of a plan that holds
 */
export function letteredStrips(
  { file, problem, plan }: PlanOnFile,
  index: number,
): readonly LetteredStrip[] {
  const layout = plan.layouts[index];
  if (layout === undefined) return [];
  const long = (ticks: number) => ticksToMillimetres(ticks, file.order.smallestMark);
  const nodes = cutNodes(cuttingTree(problem, layout));
  const first = new Map<string, LetteredStrip>();
  for (const [at, letter] of namesOf(nodes)) {
    const of = nodes.get(at)?.of;
    // Later cuts under the same letter are made in what is left of the strip.
    if (of === undefined || first.has(letter)) continue;
    const [x, y, length, width] = [of.x, of.y, of.length, of.width].map(long);
    if (x === undefined || y === undefined || length === undefined || width === undefined) continue;
    first.set(letter, { letter, x, y, length, width });
  }
  return [...first.values()];
}

/** Every cut of a tree by its index. Iterative, since trees can be deep. */
function cutNodes(root: CuttingNode): ReadonlyMap<number, CutNode> {
  const found = new Map<number, CutNode>();
  const walk: CuttingNode[] = [root];
  for (let node = walk.pop(); node !== undefined; node = walk.pop()) {
    if (node.kind !== 'cut') continue;
    found.set(node.index, node);
    for (const part of [node.near, node.far]) if (part !== undefined) walk.push(part);
  }
  return found;
}

/**
 * The letters of what each cut is made in; none for the whole stock. What lies beyond
 * a cut keeps its name; what is parted off gets the next letter, in the order of the
 * cuts, unless what lies beyond is no more than a trimmed edge.
 */
function namesOf(nodes: ReadonlyMap<number, CutNode>): ReadonlyMap<number, string> {
  const names = new Map<number, string>();
  let given = 0;
  for (const index of [...nodes.keys()].sort((one, other) => one - other)) {
    const { near, far } = nodes.get(index) ?? {};
    const own = names.get(index);
    if (far?.kind === 'cut' && own !== undefined) names.set(far.index, own);
    if (near?.kind !== 'cut') continue;
    const name = far === undefined ? own : stripLetters(given++);
    if (name !== undefined) names.set(near.index, name);
  }
  return names;
}
