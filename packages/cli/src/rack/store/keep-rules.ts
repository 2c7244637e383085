import type { ShopKeepRule } from '../rack.js';
import { RackError } from '../rack-error.js';
import { millimetres, nanometres } from './nanometres.js';
import type { Connection } from './rack-file.js';

interface KeepRuleRow {
  readonly metal: string;
  /** 0 where it is not told. */
  readonly thickness: number;
  readonly least_length: number;
  readonly least_width: number;
  readonly worth: number;
  readonly trouble: number;
}

/** By metal, then thickness. */
export function keepRulesOf(connection: Connection): readonly ShopKeepRule[] {
  return connection
    .prepare<[], KeepRuleRow>('SELECT * FROM keep_rule ORDER BY metal, thickness')
    .all()
    .map(({ metal, thickness, least_length, least_width, worth, trouble }) => ({
      metal,
      ...(thickness === 0 ? {} : { thickness: millimetres(thickness) }),
      leastLength: millimetres(least_length),
      leastWidth: millimetres(least_width),
      worth,
      trouble,
    }));
}

/** Puts a rule in the place of that for the same metal and thickness. */
export function setKeepRuleOf(connection: Connection, rule: ShopKeepRule): void {
  const sides = [
    nanometres(rule.leastLength, 'the least length'),
    nanometres(rule.leastWidth, 'the least width'),
  ];
  for (const [name, coins] of [
    ['worth', rule.worth],
    ['trouble', rule.trouble],
  ] as const) {
    if (Number.isSafeInteger(coins) && coins >= 0) continue;
    throw new RackError('bad value', `${name} must be a price; found ${coins}`);
  }
  const thickness = rule.thickness === undefined ? 0 : nanometres(rule.thickness, 'thickness');
  connection
    .prepare('INSERT OR REPLACE INTO keep_rule VALUES (?, ?, ?, ?, ?, ?)')
    .run(rule.metal, thickness, Math.max(...sides), Math.min(...sides), rule.worth, rule.trouble);
}
