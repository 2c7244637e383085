import { describe, expect, test } from 'vitest';
import { faultText } from '../faults/fault-text.js';
import { altered } from '../order/small-order.test.support.js';
import { agreementFaults } from './agreement-faults.js';
import type { PlanFile } from './plan-file.js';
import { at, copyOf, smallPlan } from './small-plan.test.support.js';

/** The small plan as it would be with an offcut and sheets of a rack. */
async function fromRack(): Promise<PlanFile> {
  const { file } = await smallPlan(altered('name: A,', 'name: rack CCY,'));
  const copy = copyOf(file);
  copy.rack = { id: 'a rack', revision: 2, fitting: 5, considered: 1, unsureThickness: 0 };
  at(copy.stock, 0).mark = 'CDV';
  at(copy.stock, 2).mark = 'CCY';
  return copy;
}

describe('what a plan says of its rack', () => {
  test('agrees in a plan as written', async () => {
    expect(agreementFaults(await fromRack())).toEqual([]);
  });

  test.each<[name: string, spoil: (file: PlanFile) => void, fault: string]>([
    [
      'a mark that was misread',
      (file) => {
        at(file.stock, 0).mark = 'CDW';
      },
      'stock[0].mark must be a mark of the rack, with its check sign; found CDW',
    ],
    [
      'a mark in small letters',
      (file) => {
        at(file.stock, 0).mark = 'cdv';
      },
      'stock[0].mark must be a mark of the rack, with its check sign; found cdv',
    ],
    [
      'a mark that stands twice',
      (file) => {
        at(file.stock, 0).mark = 'CCY';
      },
      'stock[2].mark must be a mark of its own; found CCY',
    ],
    [
      'no rack',
      (file) => {
        delete file.rack;
        delete at(file.stock, 2).mark;
      },
      'stock[0].mark must be left out, since the plan names no rack; found CDV',
    ],
    [
      'more considered than there are',
      (file) => {
        if (file.rack !== undefined) file.rack.considered = 2;
      },
      'rack.considered must be 1, the stock that is named by its mark; found 2',
    ],
    [
      'more considered than fit',
      (file) => {
        if (file.rack !== undefined) file.rack.fitting = 0;
      },
      'rack.fitting must be at least 1, those that were considered; found 0',
    ],
  ])('is refused with %s', async (_name, spoil, fault) => {
    const file = await fromRack();
    spoil(file);
    expect(agreementFaults(file).map((each) => faultText('p', each))).toEqual([`p: ${fault}`]);
  });
});
