import {
  type GaugeTable,
  type Metal,
  MetalError,
  metalNamed,
  metals,
  type SheetThickness,
  sheetThickness,
} from '@stripwright/strip-geometry';
import { foldSpelling } from '../faults/nearest-spelling.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { parsePositiveLength } from '../length/parse-length.js';
import type { Unit } from '../length/unit.js';

/** The metal where none is named: what cutters are usually made of. */
export const USUAL_METAL = 'tinplate';

export const METAL_NAMES: readonly string[] = metals.map(({ name }) => name);

/** The metal of that name, whatever its case and hyphens; tinplate where none is named. */
export function metalSpelt(name: string | undefined): Metal {
  const named = metalNamed(foldSpelling(name ?? USUAL_METAL)) ?? metalNamed(USUAL_METAL);
  if (named === undefined) throw new Error(`There is no metal "${USUAL_METAL}".`);
  return named;
}

/** The tables that gauges of a metal are read in. Others are not sold by the gauges known here. */
const GAUGE_TABLES: Readonly<Record<string, GaugeTable>> = {
  'uncoated steel': 'uncoated',
  'galvanized steel': 'galvanized',
};

/** A figure and how the trade names what it counts. */
const TRADE_FIGURE =
  /^(?:(\d+(?:\.\d+)?)\s*(lbs?|pounds?|ga|gauge|oz|ounces?)|(gauge)\s+(\d+))\.?$/i;

/**
 * Reads the thickness of a sheet, in millimetres: a length, or `100 lb` a base
 * box of tinplate, `28 ga` of uncoated or galvanized steel, `16 oz` a square
 * foot of copper.
 */
export function readThickness(text: string, metal: Metal, units: Unit): Reading<number> {
  const figure = TRADE_FIGURE.exec(text.trim());
  if (figure === null) {
    const length = parsePositiveLength(text, units);
    if (length.ok || length.complaint.code !== 'not a length') return length;
    return refuse({ code: 'not a thickness' });
  }
  const number = Number(figure[1] ?? figure[4]);
  const word = (figure[2] ?? figure[3] ?? '').toLowerCase();
  const given = tradeThickness(number, word, metal);
  if (!given.ok) return given;
  try {
    return accept(sheetThickness(given.value));
  } catch (error) {
    if (!(error instanceof MetalError)) throw error;
    return refuse({ code: 'metal', reason: error.message });
  }
}

function tradeThickness(number: number, word: string, { name }: Metal): Reading<SheetThickness> {
  const soldSo = (measure: string, sold: readonly string[]) =>
    refuse({ code: 'measure of another metal', measure, sold, metal: name });
  switch (word[0]) {
    case 'l':
    case 'p':
      return name === 'tinplate'
        ? accept({ by: 'base weight', pounds: number })
        : soldSo('pounds a base box', ['tinplate']);
    case 'g': {
      const table = GAUGE_TABLES[name];
      return table === undefined
        ? soldSo('a gauge', Object.keys(GAUGE_TABLES))
        : accept({ by: 'gauge', table, gauge: number });
    }
    default:
      return name === 'copper'
        ? accept({ by: 'copper weight', ounces: number })
        : soldSo('ounces a square foot', ['copper']);
  }
}
