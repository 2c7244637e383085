import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../plan-file/plan-file.js';
import { good, offcut, RACK_ORDER, rackShop, refusal, USUAL } from '../rack-shop.test.support.js';

const planOf = (text: string): PlanFile => JSON.parse(text);

describe('a plan', () => {
  test('uses what lies on the usual rack before sheets are bought, and says where it lies', async () => {
    const shop = rackShop();
    const before = planOf(await good(shop, 'plan order.yaml --json'));
    expect(before.rack).toBeUndefined();
    expect(before.cost).toBeGreaterThan(0);
    const [first, small] = shop.stock([offcut(20, 14), offcut(9, 0.9)]);
    const stdout = await good(shop, 'plan order.yaml --out packet');
    expect(stdout).toContain('Buy nothing: the shop has all that is needed.');
    expect(stdout).toMatch(new RegExp(`^ +1 {2}${first} +20 x 14 in +left rack$`, 'm'));
    expect(stdout).toContain('1 of 1 offcut on the rack that fits was considered.\n');
    expect(stdout).toMatch(new RegExp(`^ +\\d {2}rack ${first} +20 x 14 in`, 'm'));
    expect(stdout).toContain('When it is cut:\n  stripwright book packet/plan.json\n');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const file = planOf(readFileSync(join(shop.cwd, 'packet', 'plan.json'), 'utf8'));
    expect(file.rack).toEqual({
      id: 'rack of tests',
      revision: shop.onRack(({ revision }) => revision),
      fitting: 1,
      considered: 1,
      unsureThickness: 0,
    });
    const marked = file.stock.filter(({ mark }) => mark !== undefined);
    expect(marked.map(({ id, mark, place }) => [id, mark, place])).toEqual([
      [`rack ${first}`, first, 'left rack'],
    ]);
    const number = file.layouts.findIndex(({ stock }) => stock.id === `rack ${first}`) + 1;
    const map = readFileSync(join(shop.cwd, 'packet', `cut-map-${number}.svg`), 'utf8');
    expect(map).toContain(`>rack ${first}<`);
    expect(map).toContain('>Offcut, 20 × 14 in, left rack<');
    expect(await good(shop, 'check packet/plan.json')).toContain('good: ');
    // Planning takes nothing.
    expect(shop.free()).toEqual([
      [first, 1],
      [small, 1],
    ]);
  });

  test('uses none with --no-rack, and makes none in the usual place', async () => {
    const shop = rackShop();
    const { cost } = planOf(await good(shop, 'plan order.yaml --json'));
    expect(existsSync(join(shop.cwd, USUAL))).toBe(false);
    shop.stock([offcut(20, 14)]);
    const without = planOf(await good(shop, 'plan order.yaml --no-rack --json'));
    expect(without.rack).toBeUndefined();
    expect(without.cost).toBe(cost);
    const from = planOf(await good(shop, 'plan order.yaml --json'));
    expect(from.rack?.considered).toBe(1);
    expect(from.cost).toBeLessThan(cost);
    expect(await refusal(shop, 'plan order.yaml --no-rack --rack other.rack')).toBe(
      'stripwright: give --rack or --no-rack, not both\n',
    );
    expect(await refusal(shop, 'plan order.yaml --rack=')).toBe(
      'stripwright: --rack is missing; give the file of a rack\n',
    );
  });

  test('takes the rack of --rack before that of the order, and that before the usual one', async () => {
    const shop = rackShop(RACK_ORDER.replace('  units: in', '  units: in\n  rack: racks/own.rack'));
    const names = async (words: string) => planOf(await good(shop, words)).rack?.id;
    shop.stock([offcut(20, 14)], USUAL, 'usual');
    shop.stock([offcut(20, 14)], join('racks', 'own.rack'), 'own');
    shop.stock([offcut(20, 14)], 'given.rack', 'given');
    expect(await names('plan order.yaml --json')).toBe('own');
    expect(await names('plan order.yaml --json --rack given.rack')).toBe('given');
    shop.write('plain.yaml', RACK_ORDER);
    expect(await names('plan plain.yaml --json')).toBe('usual');
    expect(await good(shop, 'plan order.yaml --out packet')).toContain(
      '  stripwright book packet/plan.json --rack racks/own.rack\n',
    );
    // A rack that is named is made.
    expect(await names('plan order.yaml --json --rack new.rack')).toBe('rack of tests');
    expect(existsSync(join(shop.cwd, 'new.rack'))).toBe(true);
  });

  test('has whole sheets of its sizes on hand from the rack, and may not count them too', async () => {
    const sheets = offcut(28, 20, { kind: 'sheets', name: 'Large', count: 2, place: 'cellar' });
    const shop = rackShop();
    const [mark] = shop.stock([sheets]);
    const stdout = await good(shop, 'plan order.yaml');
    expect(stdout).toMatch(new RegExp(`^ +\\d {2}${mark} +28 x 20 in +cellar$`, 'm'));
    expect(stdout).toContain('No other offcut on the rack fits.');
    shop.write('counted.yaml', RACK_ORDER.replace('7.40', '7.40\n    on hand: 1'));
    expect(await refusal(shop, 'plan counted.yaml')).toBe(
      `counted.yaml:15: sheets[0].on hand must be left out: the rack counts these sheets, 2 under ${mark}; found 1\n`,
    );
  });

  test('says how many were passed over for want of a thickness', async () => {
    const shop = rackShop();
    shop.stock([offcut(20, 14, { thickness: 0.28 }), offcut(20, 14, { metal: 'copper' })]);
    const stdout = (await good(shop, 'plan order.yaml')).replaceAll('\n  ', ' ');
    expect(stdout).toContain('Take from the rack: nothing No other offcut on the rack fits.');
    expect(stdout).toContain('1 more that fits was passed over, since its thickness is told');
    expect(stdout).toContain('give the thickness under shop.');
    shop.write('thick.yaml', RACK_ORDER.replace('  hem: 1/4', '  hem: 1/4\n  thickness: 0.28 mm'));
    const thick = await good(shop, 'plan thick.yaml');
    expect(thick).toContain('1 of 1 offcut on the rack that fits was considered.');
    expect(thick).not.toContain('passed over');
  });

  test('considers a choice of a large rack, and says that the bound holds for it', async () => {
    const shop = rackShop();
    shop.stock(Array.from({ length: 300 }, (_, index) => offcut(7 + (index % 9), 4 + (index % 3))));
    const stdout = await good(shop, 'plan order.yaml');
    expect(stdout.replaceAll('\n  ', ' ')).toContain(
      '60 of 300 offcuts on the rack that fit were considered; the bound holds for those.',
    );
  });

  test('keeps offcuts by the rule of the rack where the order has none', async () => {
    const shop = rackShop(RACK_ORDER.replace('  keep offcuts from: 6 x 1 in\n', ''));
    shop.onRack((rack) =>
      rack.setKeepRule({
        metal: 'tinplate',
        leastLength: 152.4,
        leastWidth: 25.4,
        worth: 0,
        trouble: 0,
      }),
    );
    const file = planOf(await good(shop, 'plan order.yaml --json'));
    expect(file.keep).toEqual([{ leastLength: 152.4, leastWidth: 25.4, worth: 0 }]);
    const bare = planOf(await good(shop, 'plan order.yaml --no-rack --json'));
    expect(bare.keep).toBeUndefined();
  });

  test('is refused where the rack is no rack', async () => {
    const shop = rackShop();
    shop.write('text.rack', 'This is a text and no rack.'.repeat(100));
    expect(await refusal(shop, 'plan order.yaml --rack text.rack')).toMatch(/^stripwright: .*rack/);
  });
});
