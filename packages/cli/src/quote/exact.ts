import { accept, type Reading, refuse } from '../faults/reading.js';
import type { Coins } from '../money.js';

/** A number without rounding: `over / under`, `under` above zero. */
export interface Exact {
  readonly over: bigint;
  readonly under: bigint;
}

export const exactly = (whole: number | bigint): Exact => ({ over: BigInt(whole), under: 1n });

export function times(...factors: readonly Exact[]): Exact {
  return factors.reduce((one, other) => ({
    over: one.over * other.over,
    under: one.under * other.under,
  }));
}

/** To the nearest whole coin; half a coin goes up. */
export function roundedHalfUp({ over, under }: Exact): Coins {
  const doubled = 2n * over + under;
  const floor = doubled / (2n * under);
  const isBelow = doubled < 0n && doubled % (2n * under) !== 0n;
  return Number(isBelow ? floor - 1n : floor);
}

/** Finer or larger than anyone reckons work or margins. */
const MOST_DECIMALS = 6;
const LARGEST = 1_000_000;

/** Reads `0.75`, `12` or `1/2` exactly; a per cent sign may follow where `isPercent`. */
export function readExact(text: string, isPercent = false): Reading<Exact> {
  const trimmed = (isPercent ? text.replace(/\s*%\s*$/u, '') : text).trim();
  if (/^-\s*[\d.]/u.test(trimmed)) return refuse({ code: 'must not be negative' });
  const match = /^(\d+)(?:\.(\d+)|\s*\/\s*(\d+))?$/u.exec(trimmed);
  const [, whole = '', decimals = '', under = '1'] = match ?? [];
  if (match === null || decimals.length > MOST_DECIMALS) return refuse({ code: 'not a number' });
  if (/^0+$/u.test(under)) return refuse({ code: 'zero denominator' });
  const value = {
    over: BigInt(whole + decimals),
    under: BigInt(under) * 10n ** BigInt(decimals.length),
  };
  if (value.over > BigInt(LARGEST) * value.under) {
    return refuse({ code: 'too large', limit: `${LARGEST}` });
  }
  return accept(value);
}

/** As a decimal of at most so many places, for print. */
export function printExact({ over, under }: Exact, places = 3): string {
  return `${Number((Number(over) / Number(under)).toFixed(places))}`;
}
