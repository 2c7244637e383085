/** Units that a length can be written in. */
export type Unit = 'in' | 'mm' | 'cm';

/** Units that a shop can work in. */
export type ShopUnits = 'in' | 'mm';

export const SHOP_UNITS: readonly ShopUnits[] = ['in', 'mm'];

/** The international inch is 25.4 mm exactly (since 1959; ISO 80000-3). */
export const MILLIMETRES: Readonly<Record<Unit, number>> = { in: 25.4, mm: 1, cm: 10 };

const SPELLINGS: Readonly<Record<string, Unit>> = {
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '\u2033': 'in',
  '\u201d': 'in',
  mm: 'mm',
  cm: 'cm',
};

/** The unit that a word or sign stands for, if any. Case does not matter. */
export function unitSpelt(word: string): Unit | undefined {
  const key = word.toLowerCase();
  return Object.hasOwn(SPELLINGS, key) ? SPELLINGS[key] : undefined;
}
