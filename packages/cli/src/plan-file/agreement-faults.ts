import type { Fault, FieldPath } from '../faults/fault.js';
import { FILE_ROUNDING, ticksExactly, ticksUp } from '../length/ticks.js';
import { readOffcutMark } from '../rack/offcut-mark.js';
import { idOnRack } from '../rack-stock/id-on-rack.js';
import type { PlanFile, PlanFileStrip } from './plan-file.js';

/**
 * Where parts of a plan file contradict each other. The layouts against the
 * order are the plan verifier's business; this is what only the file says twice:
 * the size of the stock in a layout, what comes from the rack, and the strips against the blanks that they
 * are cut as.
 */
export function agreementFaults(file: PlanFile): readonly Fault[] {
  return [...stockFaults(file), ...rackFaults(file), ...stripFaults(file)];
}

function stockFaults({ layouts, stock }: PlanFile): readonly Fault[] {
  return layouts.flatMap((layout, index) => {
    const path = ['layouts', index, 'stock'];
    const listed = stock.find(({ id }) => id === layout.stock.id);
    if (listed === undefined) {
      return [disagrees([...path, 'id'], 'the id of an entry of stock', layout.stock.id)];
    }
    return (['kind', 'length', 'width'] as const)
      .filter((name) => layout.stock[name] !== listed[name])
      .map((name) => {
        const expected = `${listed[name]}, as in the list of stock`;
        return disagrees([...path, name], expected, `${layout.stock[name]}`);
      });
  });
}

/** Marks that are none or stand twice, without a rack, or in another number than it says. */
function rackFaults({ rack, stock }: PlanFile): readonly Fault[] {
  const faults: Fault[] = [];
  const seen = new Set<string>();
  stock.forEach(({ mark }, index) => {
    if (mark === undefined) return;
    const path = ['stock', index, 'mark'];
    if (readOffcutMark(mark) !== mark) {
      faults.push(disagrees(path, 'a mark of the rack, with its check sign', mark));
    } else if (seen.has(mark)) {
      faults.push(disagrees(path, 'a mark of its own', mark));
    } else if (rack === undefined) {
      faults.push(disagrees(path, 'left out, since the plan names no rack', mark));
    }
    seen.add(mark);
  });
  if (rack === undefined) return faults;
  const given = stock.filter(({ id, mark }) => mark !== undefined && id === idOnRack(mark)).length;
  if (rack.considered !== given) {
    const expected = `${given}, the stock that is named by its mark`;
    faults.push(disagrees(['rack', 'considered'], expected, `${rack.considered}`));
  }
  if (rack.fitting < rack.considered) {
    const expected = `at least ${rack.considered}, those that were considered`;
    faults.push(disagrees(['rack', 'fitting'], expected, `${rack.fitting}`));
  }
  return faults;
}

function stripFaults({ blanks, order }: PlanFile): readonly Fault[] {
  const mark = order.smallestMark;
  return blanks.flatMap(({ strip, length, width }, index) => {
    if (strip === undefined) return [];
    const path = ['blanks', index];
    const faults: Fault[] = [];
    const rounded = (name: 'length' | 'width', found: number, whole: number, sum: string) => {
      const ticks = ticksExactly(found, mark) ?? 0;
      // The file rounds its lengths, which may tip one over a mark.
      const least = ticksUp(whole - 2 * FILE_ROUNDING, mark);
      if (ticks >= least && ticks <= ticksUp(whole + 2 * FILE_ROUNDING, mark)) return;
      faults.push(
        disagrees([...path, name], `${sum} of its strip, rounded up to a mark`, `${found}`),
      );
    };
    const whole = (strip.seam?.atStart ?? 0) + strip.developed + strip.tab;
    rounded('length', length, whole, 'the developed length and seam');
    rounded('width', width, strip.depth + strip.hem, 'the depth and hem');
    const { seam, edge } = strip;
    const within = [...path, 'strip'];
    if (seam !== undefined && seam.atEnd !== strip.tab) {
      faults.push(disagrees([...within, 'seam', 'atEnd'], `${strip.tab}, as tab`, `${seam.atEnd}`));
    }
    const wall = edge?.foldLines.at(-1) ?? 0;
    if (edge !== undefined && wall !== strip.hem) {
      const found = `${wall}`;
      faults.push(disagrees([...within, 'edge', 'foldLines'], `up to ${strip.hem}, as hem`, found));
    }
    return [...faults, ...markFaults(strip, length, mark, [...path, 'strip'])];
  });
}

/** Marks in ascending order, on the rule, and on the strip. */
function markFaults(
  { bends, curves }: PlanFileStrip,
  length: number,
  mark: number,
  path: FieldPath,
): readonly Fault[] {
  const faults: Fault[] = [];
  const check = (at: number, from: number, where: FieldPath) => {
    if (ticksExactly(at, mark) === undefined) {
      faults.push({ complaint: { code: 'not marks', mark }, path: where, found: `${at}` });
    } else if (at < from || at > length) {
      faults.push(disagrees(where, `from ${from} to ${length} mm`, `${at}`));
    }
  };
  bends.forEach(({ number, at }, index) => {
    const where = [...path, 'bends', index];
    check(at, bends[index - 1]?.at ?? 0, [...where, 'at']);
    if (number !== index + 1) {
      faults.push(disagrees([...where, 'number'], `${index + 1}`, `${number}`));
    }
  });
  curves.forEach(({ from, to }, index) => {
    const where = [...path, 'curves', index];
    check(from, curves[index - 1]?.to ?? 0, [...where, 'from']);
    check(to, from, [...where, 'to']);
  });
  return faults;
}

function disagrees(path: FieldPath, expected: string, found: string): Fault {
  return { complaint: { code: 'disagrees', expected }, path, found };
}
