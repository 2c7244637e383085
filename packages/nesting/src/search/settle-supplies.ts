import type { BandAnswer } from '../master/band-master.js';
import { money } from '../master/objective.js';
import type { SearchGround } from './ground.js';
import type { SettledMaster } from './settled-master.js';

/** A number of sheets this close to a whole one is taken for whole. */
const WHOLE = 1e-5;

/**
 * Settles how many of each supply are taken: of the dearest that is broken, several
 * whole numbers close to the broken one are tried, since it takes certain numbers of
 * dear and cheap sheets to come up to a cost; then of the others, the next one down
 * or up, whichever costs the linear plan less.
 * @param apart how far from the broken number the dearest is tried
 * @param rounds of column generation after each trial
 * @returns the linear plan then; undefined where there is none in time
 */
export async function settleSupplies(
  ground: SearchGround,
  master: SettledMaster,
  start: BandAnswer | undefined,
  apart: number,
  rounds: number,
): Promise<BandAnswer | undefined> {
  const { of } = ground.objective.cost ?? money;
  const broken = start && dearestBroken(master, start, of);
  if (broken === undefined) return start;
  const { stockClass, supply, amount } = broken;
  const { classes } = master;
  let best: { classes: SettledMaster['classes']; next: BandAnswer } | undefined;
  const first = Math.max(0, Math.floor(amount) - apart);
  for (let count = first; count <= Math.ceil(amount) + apart; count++) {
    master.setSupplies(classes);
    master.settleSupply(stockClass, supply, count);
    const opened = await master.solve(rounds);
    const next = opened && (await settleSupplies(ground, master, opened, 0, rounds));
    if (next !== undefined && (best === undefined || next.cost < best.next.cost)) {
      best = { classes: master.classes, next };
    }
  }
  master.setSupplies(best?.classes ?? classes);
  return best?.next;
}

function dearestBroken(
  master: SettledMaster,
  { supplies }: BandAnswer,
  of: (supply: SettledMaster['classes'][number]['supplies'][number]) => number,
): { stockClass: number; supply: number; amount: number } | undefined {
  let dearest: { stockClass: number; supply: number; amount: number; price: number } | undefined;
  supplies.forEach((amounts, stockClass) => {
    amounts.forEach((amount, supply) => {
      const price = of(master.classes[stockClass].supplies[supply]);
      if (Math.abs(amount - Math.round(amount)) <= WHOLE || price <= (dearest?.price ?? 0)) return;
      dearest = { stockClass, supply, amount, price };
    });
  });
  return dearest;
}
