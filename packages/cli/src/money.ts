import { accept, type Reading, refuse } from './faults/reading.js';

/** Whole coins: hundredths of the currency, so that sums are exact. */
export type Coins = number;

export const COINS_IN_ONE = 100;
/** Dearer sheets would leave the sums of large orders inexact. */
const DEAREST = 1_000_000;

/** Reads `7`, `7.4` or `7.40` exactly. More than two decimals, signs and separators are refused. */
export function parsePrice(text: string): Reading<Coins> {
  const trimmed = text.trim();
  if (/^-\s*[\d.]/.test(trimmed)) return refuse({ code: 'must not be negative' });
  const match = /^(\d+)(?:\.(\d{1,2}))?$/.exec(trimmed);
  if (match === null) return refuse({ code: 'not a price' });
  const coins = Number(match[1]) * COINS_IN_ONE + Number((match[2] ?? '').padEnd(2, '0'));
  if (coins > DEAREST * COINS_IN_ONE) return refuse({ code: 'too large', limit: `${DEAREST}` });
  return accept(coins);
}

/** Coins of a decimal number such as 7.4, or `undefined` where it has more than two decimals. */
export function coinsOf(amount: number): Coins | undefined {
  const coins = Math.round(amount * COINS_IN_ONE);
  return coins / COINS_IN_ONE === amount ? coins : undefined;
}

/** The decimal number of some coins: 740 is 7.4. */
export function amountOf(coins: Coins): number {
  return coins / COINS_IN_ONE;
}

/** `$7.40`, `7.40 kr`, or `7.40` where the order names no currency. */
export function printMoney(coins: Coins, currency: string): string {
  const amount = (coins / COINS_IN_ONE).toFixed(2);
  if (currency === '') return amount;
  return /\p{L}/u.test(currency) ? `${amount} ${currency}` : `${currency}${amount}`;
}
