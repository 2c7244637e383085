import { describe, expect, test } from 'vitest';
import { faultText } from '../faults/fault-text.js';
import { agreementFaults } from './agreement-faults.js';
import type { PlanFile } from './plan-file.js';
import { at, copyOf, smallPlan } from './small-plan.test.support.js';

describe('parts of a plan file that contradict each other', () => {
  test('there are none in a plan as written', async () => {
    expect(agreementFaults((await smallPlan()).file)).toEqual([]);
  });

  const stripOf = (file: PlanFile, index: number) => {
    const { strip } = at(file.blanks, index);
    if (strip === undefined) throw new Error('It is a plain rectangle.');
    return strip;
  };

  test.each<[name: string, spoil: (file: PlanFile) => void, path: string]>([
    [
      'the size of a sheet',
      (file) => {
        at(file.layouts, 0).stock.length += 25.4;
      },
      'layouts[0].stock.length',
    ],
    [
      'stock that is not listed',
      (file) => {
        at(file.layouts, 0).stock.id = 'None';
      },
      'layouts[0].stock.id',
    ],
    [
      'a strip that is short',
      (file) => {
        at(file.blanks, 0).length -= 25.4 / 32;
      },
      'blanks[0].length',
    ],
    [
      'a strip that is narrow',
      (file) => {
        at(file.blanks, 0).width -= 25.4 / 32;
      },
      'blanks[0].width',
    ],
    [
      'a hem left out',
      (file) => {
        stripOf(file, 0).hem = 0;
      },
      'blanks[0].width',
    ],
    [
      'a seam that takes other than the tab',
      (file) => {
        const { seam } = stripOf(file, 0);
        if (seam === undefined) throw new Error('It has no seam.');
        seam.atEnd += 1;
      },
      'blanks[0].strip.seam.atEnd',
    ],
    [
      'a seam that takes more at the square end',
      (file) => {
        const { seam } = stripOf(file, 0);
        if (seam === undefined) throw new Error('It has no seam.');
        seam.atStart += 25.4;
      },
      'blanks[0].length',
    ],
    [
      'a fold line off the hem',
      (file) => {
        stripOf(file, 0).edge?.foldLines.push(25.4);
      },
      'blanks[0].strip.edge.foldLines',
    ],
    [
      'bends out of order',
      (file) => {
        stripOf(file, 1).bends.reverse();
      },
      'blanks[1].strip.bends[1].at',
    ],
    [
      'a bend off the end',
      (file) => {
        at(stripOf(file, 1).bends, 5).at = 25400;
      },
      'blanks[1].strip.bends[5].at',
    ],
    [
      'a bend off the marks',
      (file) => {
        at(stripOf(file, 1).bends, 5).at += 0.1;
      },
      'blanks[1].strip.bends[5].at',
    ],
    [
      'a bend with a wrong number',
      (file) => {
        at(stripOf(file, 1).bends, 5).number = 5;
      },
      'blanks[1].strip.bends[5].number',
    ],
    [
      'a curve that ends before it starts',
      (file) => {
        at(stripOf(file, 0).curves, 0).to = 0;
      },
      'blanks[0].strip.curves[0].to',
    ],
  ])('%s', async (_name, spoil, path) => {
    const file = copyOf((await smallPlan()).file);
    spoil(file);
    const texts = agreementFaults(file).map((fault) => faultText('plan.json', fault));
    expect(texts.filter((text) => text.startsWith(`plan.json: ${path} must be `))).not.toEqual([]);
    expect(texts.join()).not.toMatch(/undefined|NaN/);
  });
});
