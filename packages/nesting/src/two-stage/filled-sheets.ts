import type { IntegerPlan } from './integer-master.js';
import { narrowed, type StripPattern, stripKey } from './patterns.js';
import type { Faces } from './strip-families.js';

/** A sheet with all its strips chosen, and how many are cut so. */
export interface FilledSheet {
  readonly face: number;
  /** One entry for each strip. */
  readonly strips: readonly StripPattern[];
  readonly count: number;
}

/**
 * Puts the strips of a plan into its sheets, in as few different sheets as comes
 * naturally: the strips there are most of go in first, as often as they last.
 */
export function fillSheets(plan: IntegerPlan, faces: Faces): readonly FilledSheet[] {
  const left = new Map<string, { strip: StripPattern; count: number }[]>();
  const slot = (family: number, width: number) => `${family} ${width}`;
  for (const [strip, count] of plan.strips) {
    const key = slot(strip.family, strip.width);
    const same = left.get(key) ?? [];
    left.set(key, same);
    same.push({ strip, count });
  }
  const filled: FilledSheet[] = [];
  for (const [sheet, sheets] of [...plan.sheets].sort((a, b) => b[1] - a[1])) {
    const { family } = faces.faces[sheet.face];
    for (let remaining = sheets; remaining > 0; ) {
      let times = remaining;
      const chosen: StripPattern[] = [];
      const takes: { entry: { strip: StripPattern; count: number }; each: number }[] = [];
      for (const [width, slots] of sheet.widths) {
        let open = slots;
        const most = [...(left.get(slot(family, width)) ?? [])].sort((a, b) => b.count - a.count);
        for (const entry of most) {
          const each = Math.min(open, entry.count);
          if (each === 0) break;
          open -= each;
          times = Math.min(times, Math.floor(entry.count / each));
          takes.push({ entry, each });
          for (let i = 0; i < each; i++) chosen.push(entry.strip);
        }
      }
      if (chosen.length === 0) break;
      for (const { entry, each } of takes) entry.count -= each * times;
      filled.push({ face: sheet.face, strips: chosen, count: times });
      remaining -= times;
    }
  }
  return filled;
}

/**
 * Takes out the pieces beyond the demand, so that each piece comes out exactly
 * as often as it is wanted. Whole groups of equal sheets are changed alike where
 * that can be, and a strip is narrowed to its widest piece.
 */
export function dropSurplus(
  sheets: readonly FilledSheet[],
  faces: Faces,
  demand: readonly number[],
): readonly FilledSheet[] {
  let current = [...sheets];
  demand.forEach((wanted, piece) => {
    const holds = (sheet: FilledSheet) => pieceCount(sheet, faces, piece);
    let over = current.reduce((sum, sheet) => sum + holds(sheet) * sheet.count, 0) - wanted;
    current.sort((a, b) => a.count - b.count);
    current = current.map((sheet) => {
      const each = Math.min(holds(sheet), Math.floor(over / sheet.count));
      if (each <= 0) return sheet;
      over -= each * sheet.count;
      return without(sheet, faces, piece, each);
    });
    while (over > 0) {
      const index = current.findIndex((sheet) => holds(sheet) > 0);
      const sheet = current[index];
      const each = Math.min(holds(sheet), over);
      over -= each;
      current.splice(
        index,
        1,
        { ...sheet, count: sheet.count - 1 },
        without({ ...sheet, count: 1 }, faces, piece, each),
      );
      current = current.filter((other) => other.count > 0);
    }
  });
  const narrow = current.map((sheet) => ({
    ...sheet,
    strips: sheet.strips.map((strip) => narrowed(faces.families[strip.family], strip)),
  }));
  return merged(narrow.filter((sheet) => sheet.strips.length > 0));
}

/** Equal sheets brought together, the most numerous first. */
function merged(sheets: readonly FilledSheet[]): readonly FilledSheet[] {
  const groups = new Map<string, FilledSheet>();
  for (const sheet of sheets) {
    const strips = [...sheet.strips].sort(
      (a, b) => b.width - a.width || stripKey(a).localeCompare(stripKey(b), 'en'),
    );
    const key = `${sheet.face}|${strips.map(stripKey).join('|')}`;
    const known = groups.get(key);
    groups.set(key, { face: sheet.face, strips, count: sheet.count + (known?.count ?? 0) });
  }
  return [...groups.values()].sort((a, b) => b.count - a.count);
}

function pieceCount(sheet: FilledSheet, faces: Faces, piece: number): number {
  let count = 0;
  for (const strip of sheet.strips) {
    for (const [lay, copies] of strip.lays) {
      if (faces.families[strip.family].lays[lay].piece === piece) count += copies;
    }
  }
  return count;
}

function without(sheet: FilledSheet, faces: Faces, piece: number, copies: number): FilledSheet {
  let left = copies;
  const strips = [...sheet.strips].reverse().flatMap((strip): StripPattern[] => {
    const family = faces.families[strip.family];
    const lays = strip.lays.flatMap(([lay, count]): (readonly [number, number])[] => {
      if (family.lays[lay].piece !== piece) return [[lay, count]];
      const taken = Math.min(count, left);
      left -= taken;
      return count > taken ? [[lay, count - taken]] : [];
    });
    return lays.length === 0 ? [] : [{ ...strip, lays }];
  });
  return { ...sheet, strips: strips.reverse() };
}
