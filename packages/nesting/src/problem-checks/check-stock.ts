import type { Sheet, Stock } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { checkMetal } from './check-metal.js';
import { checkChoice, checkWhole, checkWholeIfAny } from './check-value.js';
import { DEAREST, LARGEST_PACK, LONGEST, MOST } from './limits.js';

/** @throws ProblemError for the first sheet or offcut that makes no sense */
export function checkStock(all: readonly Stock[]): void {
  all.forEach((stock, i) => {
    const path = `stock[${i}]`;
    checkChoice(stock.kind, ['sheet', 'offcut'], `${path}.kind`);
    checkWhole(stock.length, 1, LONGEST, `${path}.length`);
    checkWhole(stock.width, 1, LONGEST, `${path}.width`);
    checkWholeIfAny(stock.bookValue, 0, DEAREST, `${path}.bookValue`);
    if (stock.rolling !== undefined) {
      checkChoice(stock.rolling, ['along', 'across'], `${path}.rolling`);
    }
    checkMetal(stock, path);
    if (stock.kind === 'sheet') checkSupply(stock, path);
  });
}

function checkSupply(sheet: Sheet, path: string): void {
  checkWhole(sheet.price, 0, DEAREST, `${path}.price`);
  checkWhole(sheet.onHand, 0, MOST, `${path}.onHand`);
  checkWholeIfAny(sheet.packSize, 1, LARGEST_PACK, `${path}.packSize`);
  if (sheet.canBuy === 'any') return;
  checkWhole(sheet.canBuy, 0, MOST, `${path}.canBuy`);
  const pack = sheet.packSize ?? 1;
  if (sheet.canBuy % pack === 0) return;
  const message = `counts sheets and must be a multiple of the ${pack} in a pack; got ${sheet.canBuy}`;
  throw new ProblemError('not whole packs', `${path}.canBuy`, message, sheet.canBuy);
}
