import { Appraiser } from '../layout/appraise.js';
import { merged } from '../layout/drop-surplus.js';
import type { CuttingRules, FillBox } from '../pattern/cutting-rules.js';
import type { Part } from '../pattern/part.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { patternOf } from '../pattern/pattern-of.js';
import { fillRoom } from './fill-room.js';
import { scrapRooms } from './rooms.js';

/** The same sheets with spares on them. */
export interface WithSpares {
  readonly sheets: readonly PatternCount[];
  /** Spares that found room, one number for each piece. */
  readonly spares: readonly number[];
}

/** So many sheets are filled whether there is time or not. */
const FILLED_ANYWAY = 200;

/**
 * Puts spares into the scrap of sheets that are cut anyway, as much of them by
 * area as is found to fit. Nothing else changes: no sheet more, and what goes to
 * the rack is worth no less. Equal sheets are filled alike first; then single
 * ones take what fewer are wanted of.
 * @param wanted most spares of each piece
 * @param boxes one for each stock class
 * @param over true leaves the sheets after the first hundreds as they are
 */
export function addSpares(
  sheets: readonly PatternCount[],
  wanted: readonly number[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
  over = () => false,
): WithSpares {
  const left = [...wanted];
  const take = (counts: ReadonlyMap<number, number>, sheets: number) => {
    for (const [piece, copies] of counts) left[piece] -= copies * sheets;
  };
  let tried = 0;
  const late = () => ++tried > FILLED_ANYWAY && over();
  const appraisers = boxes.map((box) => new Appraiser(box, rules));

  const alike = sheets.map(({ pattern: { part, stockClass }, count }) => {
    const each = left.map((copies) => Math.floor(copies / count));
    if (late() || each.every((copies) => copies === 0)) return { part, stockClass, count };
    const filled = fillScrap(part, each, boxes[stockClass], appraisers[stockClass]);
    take(filled.counts, count);
    return { part: filled.part, stockClass, count };
  });
  const apart = alike.flatMap(({ part, stockClass, count }) => {
    const groups: { part: Part; stockClass: number; count: number }[] = [];
    let plain = count;
    while (plain > 0 && left.some((copies) => copies > 0) && !late()) {
      const filled = fillScrap(part, left, boxes[stockClass], appraisers[stockClass]);
      if (filled.counts.size === 0) break;
      const reach = [...filled.counts].map(([piece, copies]) => Math.floor(left[piece] / copies));
      const some = Math.min(plain, ...reach);
      take(filled.counts, some);
      groups.push({ part: filled.part, stockClass, count: some });
      plain -= some;
    }
    return plain > 0 ? [...groups, { part, stockClass, count: plain }] : groups;
  });
  return {
    sheets: merged(
      apart.map(({ part, stockClass, count }) => ({
        pattern: patternOf(part, stockClass, boxes[stockClass], rules),
        count,
      })),
    ),
    spares: wanted.map((copies, piece) => copies - left[piece]),
  };
}

/** One sheet with as many spares in its scrap as are wanted and fit. */
function fillScrap(
  part: Part,
  wanted: readonly number[],
  box: FillBox,
  appraiser: Appraiser,
): { readonly part: Part; readonly counts: ReadonlyMap<number, number> } {
  const { rules } = appraiser;
  const left = [...wanted];
  const counts = new Map<number, number>();
  const tried = new Set<string>();
  const kept = appraiser.appraise(part).kept;
  let best = part;
  const areas = rules.pieces.map(({ length, width }) => length * width);
  let rooms = scrapRooms(best, box, rules);
  while (left.some((copies) => copies > 0)) {
    const room = rooms.find(({ name }) => !tried.has(name));
    if (room === undefined) break;
    tried.add(room.name);
    const filling = fillRoom(room, left, areas, box.lays, rules);
    if (filling.worth === 0) continue;
    const fuller = room.filled(filling.slices);
    const appraisal = appraiser.appraise(fuller);
    if (!appraisal.legal || appraisal.kept < kept) continue;
    best = fuller;
    rooms = scrapRooms(best, box, rules);
    for (const [piece, copies] of filling.counts) {
      left[piece] -= copies;
      counts.set(piece, (counts.get(piece) ?? 0) + copies);
    }
  }
  return { part: best, counts };
}
