import { across, type Bed, cutUpOnce, laySize, other } from '../pattern/cut-up.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import type { Part, Slice } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import type { Room } from './fill-room.js';

/** Scrap in a pattern that could be cut on, and the pattern with slices added there. */
export interface ScrapRoom extends Room {
  /** Says where it is; the same as long as nothing is added there. */
  readonly name: string;
  filled(slices: readonly Slice[]): Part;
}

/** In free cutting the direction is changed no more than so often within one room. */
const FREE_LEVELS = 2;

/**
 * The scrap of a pattern that the stages left to it allow to cut on: behind the
 * last slice of every rectangle, and beside pieces that are trimmed to size
 * before the last stage. The largest comes first.
 */
export function scrapRooms(part: Part, box: CutBox, rules: CuttingRules): readonly ScrapRoom[] {
  const { kerf } = rules.limits;
  const rooms: ScrapRoom[] = [];

  function add(
    depth: number,
    breadth: number,
    runs: Rolling,
    stage: number,
    path: string,
    filled: (slices: readonly Slice[]) => Part,
  ): void {
    const levels = rules.stages === 'free' ? FREE_LEVELS : rules.stages - stage + 1;
    if (levels < 1 || depth <= kerf || breadth <= kerf) return;
    if (keptValue(depth - kerf, breadth - kerf, box.keep) > 0) return;
    rooms.push({ name: `${path}${runs} ${depth}`, runs, depth, breadth, levels, filled });
  }

  function visit(bed: Bed, path: string, rebuilt: (part: Part) => Part): void {
    const { part, at, stage, around } = bed;
    if (part.kind === 'split') {
      const inner = cutUpOnce(bed, rules, {}) ?? [];
      const runs = part.cuts;
      const own = around === undefined || around === runs ? stage : stage + 1;
      const taken = part.parts.reduce((sum, { extent }) => sum + extent, 0);
      const depth = across(at, runs) - taken;
      add(depth, across(at, other(runs)), runs, own, path, (slices) =>
        rebuilt({ ...part, parts: [...part.parts, ...slices] }),
      );
      inner.forEach((each, i) => {
        visit(each, `${path}${i}.`, (changed) => {
          const parts = part.parts.map((slice, j) =>
            j === i ? { ...slice, part: changed } : slice,
          );
          return rebuilt({ ...part, parts });
        });
      });
      return;
    }
    if (around === undefined) return;
    // First the way the cuts around it run, then square to that, as it would be trimmed.
    const size = laySize(part, rules);
    const square = other(around);
    const side = across(size, square) < across(at, square);
    const narrow: Part = {
      kind: 'split',
      cuts: square,
      parts: [{ extent: across(size, square), part }],
    };
    add(
      across(at, around) - across(size, around),
      across(at, square),
      around,
      stage,
      path,
      (slices) =>
        rebuilt({
          kind: 'split',
          cuts: around,
          parts: [{ extent: across(size, around), part: side ? narrow : part }, ...slices],
        }),
    );
    if (side && across(size, around) === across(at, around)) {
      add(
        across(at, square) - across(size, square),
        across(at, around),
        square,
        stage + 1,
        path,
        (slices) => rebuilt({ ...narrow, parts: [...narrow.parts, ...slices] }),
      );
    }
  }

  const at = { x: 0, y: 0, length: box.length, width: box.width };
  visit({ part, at, stage: 1, around: undefined }, '', (changed) => changed);
  return rooms.sort((a, b) => b.depth * b.breadth - a.depth * a.breadth);
}
