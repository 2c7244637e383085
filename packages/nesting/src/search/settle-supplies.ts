import type { BandAnswer } from '../master/band-master.js';
import { money } from '../master/objective.js';
import type { SearchGround } from './ground.js';
import type { SettledMaster } from './settled-master.js';

/** A number of packs this close to a whole one is taken for whole. */
const WHOLE = 1e-5;
const EPSILON = 1e-9;
/**
 * Rounds of column generation for numbers that are gone into. Where few sheets are taken, the
 * patterns of the broken plan may not suit whole ones, so that pieces seem to lack there.
 */
const ROUNDS_FOR_ROOM = 12;

/**
 * Settles how many of each supply are taken, in whole packs, for a linear plan that counts spare
 * pieces (its cost is below 0 by their room): of the dearest that is broken,
 * several whole numbers close to the broken one are tried, since it takes certain numbers of
 * dear and cheap sheets to come up to a cost; then of the others, the next one down
 * or up, whichever costs the linear plan less.
 * @param apart how far from the broken number the dearest is tried
 * @param rounds of column generation for each number that is tried; more for those that are gone into
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
  const { stockClass, supply, packs } = broken;
  const { classes } = master;
  const { unit } = classes[stockClass].supplies[supply];
  const settle = (count: number, mostRounds: number, enough?: number) => {
    master.setSupplies(classes);
    master.settleSupply(stockClass, supply, count * unit);
    return master.solve(mostRounds, enough);
  };
  const tried: { count: number; cost: number }[] = [];
  const first = Math.max(0, Math.floor(packs) - apart);
  for (let count = first; count <= Math.ceil(packs) + apart; count++) {
    const opened = await settle(count, rounds);
    if (opened !== undefined) tried.push({ count, cost: opened.cost });
  }
  tried.sort((a, b) => a.cost - b.cost || a.count - b.count);
  let best: { classes: SettledMaster['classes']; next: BandAnswer } | undefined;
  for (const { count, cost } of tried) {
    // Settling the others as well hardly ever costs less: only if fresh patterns come up, which may
    // well be where pieces lack.
    if (best !== undefined && best.next.cost < 0 && cost >= best.next.cost - EPSILON) break;
    const opened = await settle(count, Math.max(rounds, ROUNDS_FOR_ROOM), 0);
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
): { stockClass: number; supply: number; packs: number } | undefined {
  let dearest: { stockClass: number; supply: number; packs: number; price: number } | undefined;
  supplies.forEach((amounts, stockClass) => {
    amounts.forEach((amount, supply) => {
      const item = master.classes[stockClass].supplies[supply];
      const packs = amount / item.unit;
      const price = of(item);
      if (Math.abs(packs - Math.round(packs)) <= WHOLE || price <= (dearest?.price ?? 0)) return;
      dearest = { stockClass, supply, packs, price };
    });
  });
  return dearest;
}
