import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { altered, faultsOf, SMALL_ORDER } from './small-order.test.support.js';

const everyOutline = families
  .map(({ name }) => name)
  .filter((name) => name !== 'polygon')
  .join(', ');

test('the small order is in order', () => {
  expect(faultsOf(SMALL_ORDER)).toEqual([]);
});

describe('a bad order is told with its line, its field, what was found and what would be right', () => {
  test.each<[name: string, order: string, ...faults: string[]]>([
    [
      'unknown field',
      altered('quantity: 3', 'quantity: 3\n    colour: red'),
      'order.yaml:28: items[0].colour is not a known field; known here: name, quantity, turn, rolled, spares, outline, depth, edge, hem, wire, hem face, seam, tab, lap, seam width, handwork, seam at, size is, corner angle, across, high',
    ],
    [
      'misspelt field',
      altered('on hand', 'on hnad'),
      'order.yaml:15: sheets[0].on hnad is not a known field; did you mean "on hand"?',
    ],
    [
      'misspelt outline, and what else is wrong with its cutter',
      altered('outline: heart\n    across: 4 in', 'outline: hart\n    acros: 0'),
      'order.yaml:23: items[0].across is missing; give a length: over both lobes',
      expect.stringMatching(/^order\.yaml:24: .* found hart; did you mean "heart"\?$/),
      'order.yaml:25: items[0].acros is not a known field; did you mean "across"?',
    ],
    [
      'misspelt field that tells what an item is',
      altered('blank: 6 x 4 in', 'blnk: 6 x 4 in'),
      'order.yaml:40: items[3].outline is missing; give the outline of a cutter, svg: with its drawing, or blank: with the size of a plain rectangle',
      'order.yaml:41: items[3].blnk is not a known field; did you mean "blank"?',
    ],
    [
      'missing field',
      altered('    price: 3.90\n', ''),
      'order.yaml:17: sheets[1].price is missing; give the price of one sheet, 0 if it is free',
    ],
    [
      'missing size of an outline',
      altered('    across: 4 in\n', ''),
      'order.yaml:23: items[0].across is missing; give a length: over both lobes',
    ],
    [
      'size zero',
      altered('across: 4 in', 'across: 0'),
      'order.yaml:25: items[0].across must be above 0; found 0',
    ],
    [
      'negative size',
      altered('across: 4 in', 'across: -4 in'),
      'order.yaml:25: items[0].across must be 0 or more; found -4 in',
    ],
    [
      'quantity 1.5',
      altered('quantity: 3', 'quantity: 1.5'),
      'order.yaml:27: items[0].quantity must be a whole number of at least 1; found 1.5',
    ],
    [
      'quantity 0',
      altered('quantity: 3', 'quantity: 0'),
      'order.yaml:27: items[0].quantity must be a whole number of at least 1; found 0',
    ],
    [
      'quantity in words',
      altered('quantity: 3', 'quantity: a dozen'),
      'order.yaml:27: items[0].quantity must be a whole number of at least 1; found a dozen',
    ],
    [
      'quantity too large',
      altered('quantity: 3', 'quantity: 99999999999999999999'),
      'order.yaml:27: items[0].quantity must be at most 100000; found 99999999999999999999',
    ],
    [
      'length too large',
      altered('across: 4 in', 'across: 4000000 in'),
      'order.yaml:25: items[0].across must be at most 100 m; found 4000000 in',
    ],
    [
      'strip too long',
      altered('across: 4 in', 'across: 3900 in'),
      'order.yaml:23: items[0] gives no strip: its strip is longer than 100 m',
    ],
    [
      'fraction over zero',
      altered('across: 4 in', 'across: 1/0 in'),
      'order.yaml:25: items[0].across must be a fraction that does not divide by zero; found 1/0 in',
    ],
    [
      'unknown unit',
      altered('across: 4 in', 'across: 4 ft'),
      'order.yaml:25: items[0].across must be in inches (in), mm or cm, not in "ft"; found 4 ft',
    ],
    [
      'price with three decimals',
      altered('7.40', '7.405'),
      'order.yaml:14: sheets[0].price must be a price with at most two decimals, such as 7.40; found 7.405',
    ],
    [
      'stock limit in words',
      altered('can buy: yes', 'can buy: perhaps'),
      'order.yaml:16: sheets[0].can buy must be yes, no, or how many can be bought; found perhaps',
    ],
    [
      'misspelt outline',
      altered('outline: heart', 'outline: haert'),
      `order.yaml:24: items[0].outline must be ${everyOutline} or polygon; found haert; did you mean "heart"?`,
    ],
    [
      'neither outline nor blank',
      altered('    outline: heart\n', ''),
      'order.yaml:23: items[0].outline is missing; give the outline of a cutter, svg: with its drawing, or blank: with the size of a plain rectangle',
    ],
    [
      'two letters on one cutter',
      altered('outline: heart', 'outline: letter').replace('across: 4', 'letter: AB\n    high: 4'),
      'order.yaml:25: items[0].letter gives no outline: "letter" must be one letter from A to Z; got string AB; found AB',
    ],
    [
      'contradictory sizes',
      altered('across flats: 3', 'side: 1\n    across flats: 3'),
      'order.yaml:32: items[1].across flats gives no outline: A regular polygon takes only one of "side", "across flats" and "across corners"; got "side" and "across flats"; found 3',
    ],
    [
      'two corners',
      altered('[[0, 0], [3, 0], [3, 2], [1 1/2, 3 1/4], [0, 2]]', '[[0, 0], [3, 0]]'),
      'order.yaml:37: items[2].corners must be a list of at least three corners such as [[0, 0], [3, 0], [3, 2]]; found a list',
    ],
    [
      'a name used twice',
      altered('name: Hexagon', 'name: Heart'),
      'order.yaml:28: items[1].name must be a name of its own; found Heart, as in items[0].name',
    ],
    [
      'a sheet and an offcut of one name',
      altered('name: A,', 'name: Small,'),
      'order.yaml:21: offcuts[0].name must be a name of its own; found Small, as in sheets[1].name',
    ],
    [
      'a name with a line break',
      altered('name: Heart', 'name: "Heart\\nbreak"'),
      'order.yaml:23: items[0].name must be one line of plain text; found Heart\\nbreak',
    ],
    [
      'a name that is long',
      altered('name: Heart', `name: ${'long '.repeat(20)}`),
      `order.yaml:23: items[0].name must be a text of at most 60 characters; found ${'long '.repeat(12).slice(0, 57)}...`,
    ],
    [
      'units of another kind',
      altered('units: in', 'units: inn'),
      'order.yaml:3: shop.units must be in or mm; found inn; did you mean "in"?',
    ],
    [
      'a mark of nothing',
      altered('smallest mark: 1/32 in', 'smallest mark: 0'),
      'order.yaml:4: shop.smallest mark must be above 0; found 0',
    ],
    [
      'a mark that is too fine',
      altered('smallest mark: 1/32 in', 'smallest mark: 0.001 mm'),
      'order.yaml:4: shop.smallest mark must be at least 0.01 mm; found 0.001 mm',
    ],
    [
      'a sheet smaller than a mark',
      altered('size: 28 x 20 in', 'size: 28 x 1/64 in'),
      'order.yaml:13: sheets[0].size must be at least 1/32 x 1/32 in; found 28 x 1/64 in',
    ],
    [
      'a bend rule without its numbers',
      altered('hem: 1/4', 'hem: 1/4\n  bend rule: neutral axis\n  thickness: 0.011'),
      'order.yaml:2: shop.inside radius is missing; give the radius of the inside face of a sharp bend, which the neutral axis rule needs',
      'order.yaml:2: shop.neutral axis factor is missing; give a number such as 0.44, the depth of the neutral line, as a part of the thickness, which the neutral axis rule needs',
    ],
    [
      'an edge without its wire',
      altered('across: 4 in', 'across: 4 in\n    edge: wired edge\n    seam: soldered lap'),
      'order.yaml:23: items[0].wire is missing; give a length: diameter of the wire, which a wired edge needs',
      'order.yaml:23: items[0].lap is missing; give a length: how far the end lies over the start, which a soldered lap needs',
    ],
    [
      'a length of another seam',
      altered('across: 4 in', 'across: 4 in\n    seam: butt joint\n    lap: 1/4'),
      'order.yaml:27: items[0].lap is no length of a butt joint, which takes none; leave it out',
    ],
    [
      'a hem of no width',
      altered('across: 4 in', 'across: 4 in\n    edge: double hem\n    hem: 0'),
      'order.yaml:27: items[0].hem must be above 0; found 0',
    ],
    [
      'an edge and a seam that nobody makes',
      altered('across: 4 in', 'across: 4 in\n    edge: doubel hem\n    seam: glue'),
      'order.yaml:26: items[0].edge must be raw edge, single hem, double hem or wired edge; found doubel hem; did you mean "double hem"?',
      'order.yaml:27: items[0].seam must be tucked tab, soldered lap, riveted lap, grooved seam or butt joint; found glue',
    ],
    [
      'a seam where it does not fit',
      altered('across flats: 3', 'across flats: 3\n    seam at: 7'),
      'order.yaml:32: items[1].seam at gives no strip: The outline has the corners 1 to 6; got corner 7',
    ],
    [
      'a seam at no place',
      altered('across flats: 3', 'across flats: 3\n    seam at: the back'),
      'order.yaml:32: items[1].seam at must be the number of a corner, a distance such as 2 in, or middle; found the back',
    ],
    [
      'a face that metal does not have',
      altered('across flats: 3', 'across flats: 3\n    size is: upside'),
      'order.yaml:32: items[1].size is must be inside, outside or middle; found upside; did you mean "inside"?',
    ],
    [
      'a corner angle past square',
      altered('across flats: 3', 'across flats: 3\n    corner angle: 120'),
      'order.yaml:32: items[1].corner angle gives no strip: The cornerAngle must be from 0 to 89 degrees; got 120',
    ],
    [
      'a thickness that tinplate is not sold by',
      altered('hem: 1/4', 'hem: 1/4\n  thickness: 28 ga'),
      'order.yaml:7: shop.thickness is a gauge, the measure of uncoated steel and galvanized steel and not of tinplate; found 28 ga; give a length, or name the metal',
    ],
    [
      'no hem anywhere',
      altered('  hem: 1/4\n', ''),
      'order.yaml:22: items[0].hem is missing; give it here or under shop, 0 for a raw edge',
      'order.yaml:34: items[2].hem is missing; give it here or under shop, 0 for a raw edge',
    ],
    [
      'no items',
      'items: []',
      'order.yaml:1: name is missing; give a name for the report and the cut maps',
      'order.yaml:1: shop is missing; give a shop section with at least its units',
      'order.yaml:1: items is empty; give at least one entry',
      'order.yaml:1: sheets is missing; give at least one sheet or offcut to cut from',
    ],
    [
      'items that are no list',
      SMALL_ORDER.replace(/items:[\s\S]*/, 'items: hearts\n'),
      'order.yaml:22: items must be a list, each entry on a line that starts with a dash; found hearts',
    ],
    [
      'an item that is no section',
      SMALL_ORDER.replace(/items:[\s\S]*/, 'items:\n  - hearts\n'),
      'order.yaml:23: items[0] must be a section of "field: value" lines; found hearts',
    ],
    [
      'a list where a length belongs',
      altered('across: 4 in', 'across: [4, in]'),
      'order.yaml:25: items[0].across must be a length such as 1 5/8, 1.625 in or 41.3 mm; found a list',
    ],
    [
      'a field given twice',
      altered('quantity: 3', 'quantity: 3\n    quantity: 4'),
      'order.yaml:28: not readable as YAML: this field is given twice in the same section; keep one',
    ],
    [
      'a tab for indentation',
      altered('    quantity: 3', '\t quantity: 3'),
      'order.yaml:27: not readable as YAML: a tab indents this line; indent with blanks',
    ],
    [
      'a text with a colon in it',
      altered('name: Heart', 'name: Heart: large'),
      'order.yaml:23: not readable as YAML: indent this line like its neighbours, and put a text with ": " in it into quotes',
    ],
    [
      'an empty file',
      '',
      'order.yaml:1: the file is empty; an order needs shop, sheets or offcuts, and items',
    ],
    [
      'only comments',
      '# nothing\n',
      'order.yaml:1: the file is empty; an order needs shop, sheets or offcuts, and items',
    ],
    [
      'a list',
      '- a\n- b\n',
      'order.yaml:1: must be a section of "field: value" lines; found a list',
    ],
    [
      'a single text',
      'hearts',
      'order.yaml:1: must be a section of "field: value" lines; found hearts',
    ],
  ])('%s', (_name, order, ...faults) => {
    expect(faultsOf(order)).toEqual(faults);
  });

  test('not YAML', () => {
    const faults = faultsOf(altered('can buy: yes', 'can buy: [yes'));
    expect(faults.length).toBeGreaterThan(0);
    for (const fault of faults) expect(fault).toMatch(/^order\.yaml:1\d: not readable as YAML: \S/);
  });
});

test('all faults are told at once, in the order of their lines', () => {
  const order = SMALL_ORDER.replace('7.40', 'cheap')
    .replace('across: 4 in', 'across: wide')
    .replace('sides: 6', 'sides: 2')
    .replace('blank: 6 x 4 in', 'blank: 6')
    .replace('name: Small\n', 'name: Large\n')
    .replace('units: in', 'units: ell');
  expect(faultsOf(order).map((fault) => fault.split(' ')[0])).toEqual([
    'order.yaml:3:',
    'order.yaml:14:',
    'order.yaml:17:',
    'order.yaml:25:',
    'order.yaml:30:',
    'order.yaml:41:',
  ]);
});
