import type { BandAnswer } from '../master/band-master.js';
import type { SettledMaster } from './settled-master.js';

/** What is settled, and what the linear plan has in all. */
type Settled = Pick<SettledMaster, 'bands'>;
type Amounts = Pick<BandAnswer, 'bands'>;

const EPSILON = 1e-6;
/** How far noise may change the weight of what is broken, as a share. */
const NOISE = 0.6;

/** The bands that are broken, most first. */
export function brokenBands(
  master: Settled,
  answer: Amounts,
  random: () => number,
): readonly number[] {
  const open: { band: number; part: number }[] = [];
  answer.bands.forEach((amount, band) => {
    const left = amount - (master.bands[band] ?? 0);
    if (left > EPSILON) open.push({ band, part: left * (1 + NOISE * (random() - 0.5)) });
  });
  return open.sort((a, b) => b.part - a.part || a.band - b.band).map(({ band }) => band);
}

/** How many bands the linear plan has that are not settled. */
export function openBands(master: Settled, { bands }: Amounts): number {
  return bands.reduce((sum, amount, band) => sum + amount - (master.bands[band] ?? 0), 0);
}

/** The bands that the linear plan has at least one of, in any order. */
export function wholeBands({ bands }: Amounts, random: () => number): readonly number[] {
  return [...bands.keys()]
    .filter((band) => bands[band] >= 1 - EPSILON)
    .map((band) => ({ band, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ band }) => band);
}
