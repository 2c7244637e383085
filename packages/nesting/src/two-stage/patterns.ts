import type { StripFamily } from './strip-families.js';

/** How one strip is cut to length: which lays, and how many of each. */
export interface StripPattern {
  /** Index of the strip family. */
  readonly family: number;
  /** Index into the family's widths. */
  readonly width: number;
  /** [index into the family's lays, copies at least 1], ascending. */
  readonly lays: readonly (readonly [number, number])[];
}

/** How one sheet is sheared into strips: which widths, and how many of each. */
export interface SheetPattern {
  /** Index of the face. */
  readonly face: number;
  /** [index into the family's widths, strips at least 1], ascending. */
  readonly widths: readonly (readonly [number, number])[];
}

/** A sheet pattern with its strips cut to length: a column of the linear master. */
export interface CutPattern {
  /** Index of the face. */
  readonly face: number;
  /** [strip pattern of the face's family, strips at least 1]. */
  readonly strips: readonly (readonly [StripPattern, number])[];
}

/** The same strip no wider than its widest piece. */
export function narrowed(family: StripFamily, strip: StripPattern): StripPattern {
  if (strip.lays.length === 0) return strip;
  const widest = Math.max(...strip.lays.map(([lay]) => family.lays[lay].across));
  return { ...strip, width: family.widths.indexOf(widest) };
}

/** The sheet pattern that a cut pattern shears first. */
export function sheetOf(cut: CutPattern): SheetPattern {
  const counts = new Map<number, number>();
  for (const [strip, count] of cut.strips) {
    counts.set(strip.width, (counts.get(strip.width) ?? 0) + count);
  }
  return { face: cut.face, widths: [...counts].sort((a, b) => a[0] - b[0]) };
}

/** Sheets cut by patterns as numbers of sheet patterns and of strip patterns. */
export function onTwoLevels(cuts: readonly (readonly [CutPattern, number])[]): {
  readonly sheets: readonly (readonly [SheetPattern, number])[];
  readonly strips: readonly (readonly [StripPattern, number])[];
} {
  return {
    sheets: cuts.map(([cut, count]) => [sheetOf(cut), count] as const),
    strips: cuts.flatMap(([cut, count]) =>
      cut.strips.map(([strip, strips]) => [strip, strips * count] as const),
    ),
  };
}

/** Two strip patterns are the same exactly where their keys are. */
export function stripKey(strip: StripPattern): string {
  return `${strip.family};${strip.width};${strip.lays.join(';')}`;
}

/** Two sheet patterns are the same exactly where their keys are. */
export function sheetKey(sheet: SheetPattern): string {
  return `${sheet.face};${sheet.widths.join(';')}`;
}

/** Patterns without repetition, in the order they came. */
export class PatternPool {
  readonly #strips = new Map<string, StripPattern>();
  readonly #sheets = new Map<string, SheetPattern>();

  addStrip(strip: StripPattern): void {
    const key = stripKey(strip);
    if (!this.#strips.has(key)) this.#strips.set(key, strip);
  }

  addSheet(sheet: SheetPattern): void {
    const key = sheetKey(sheet);
    if (!this.#sheets.has(key)) this.#sheets.set(key, sheet);
  }

  addAll(patterns: {
    readonly strips: readonly StripPattern[];
    readonly sheets: readonly SheetPattern[];
  }): void {
    for (const strip of patterns.strips) this.addStrip(strip);
    for (const sheet of patterns.sheets) this.addSheet(sheet);
  }

  addCut(cut: CutPattern): void {
    this.addSheet(sheetOf(cut));
    for (const [strip] of cut.strips) this.addStrip(strip);
  }

  get strips(): readonly StripPattern[] {
    return [...this.#strips.values()];
  }

  get sheets(): readonly SheetPattern[] {
    return [...this.#sheets.values()];
  }

  get size(): number {
    return this.#strips.size + this.#sheets.size;
  }
}
