import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { DocumentError } from '../faults/fault.js';
import { SMALL_ORDER } from '../order/small-order.test.support.js';
import { planFileSchema } from './plan-file.js';
import { planJsonSchema } from './plan-json-schema.js';
import { readPlanFile } from './read-plan-file.js';
import { at, copyOf, smallPlan } from './small-plan.test.support.js';

const committed: unknown = JSON.parse(
  readFileSync(new URL('../../plan.schema.json', import.meta.url), 'utf8'),
);

describe('the published JSON Schema', () => {
  test('is the one that plan files are read with; write-plan-schema.js writes it', () => {
    expect(committed).toEqual(JSON.parse(planJsonSchema()));
  });

  test('accepts a real plan and refuses a spoilt one, by an independent validator', async () => {
    const validate = new Ajv2020({ strict: true, strictTypes: false }).compile(committed as object);
    const { file } = await smallPlan();
    const accepted = validate(JSON.parse(JSON.stringify(file)));
    expect(validate.errors ?? []).toEqual([]);
    expect(accepted).toBe(true);
    expect(validate({ ...file, surprise: 1 })).toBe(false);
    expect(validate({ ...file, cost: '33.50' })).toBe(false);
    expect(validate({ ...file, schemaVersion: 2 })).toBe(false);
  });

  test('describes every field', () => {
    const bare: string[] = [];
    const visit = (node: unknown, path: string) => {
      if (typeof node !== 'object' || node === null) return;
      const { properties = {}, ...rest } = node as { properties?: Record<string, object> };
      for (const [name, field] of Object.entries(properties)) {
        if (!('description' in field)) bare.push(`${path}.${name}`);
        visit(field, `${path}.${name}`);
      }
      for (const [name, part] of Object.entries(rest)) visit(part, `${path}/${name}`);
    };
    visit(committed, '');
    expect(bare).toEqual([]);
  });
});

describe('a plan file', () => {
  test('reads back as the problem and the plan that it was written from', async () => {
    const { file, problem, plan } = await smallPlan();
    const onFile = readPlanFile(JSON.stringify(file), 'plan.json');
    expect(onFile.problem).toEqual(problem);
    expect(onFile.plan).toEqual(plan);
    expect(onFile.file).toEqual(file);
  });

  test('does so in millimetres and with odd marks too', async () => {
    for (const mark of ['0.5 mm', '1/12 in', '1/3 mm']) {
      const units = mark.endsWith('mm') ? 'units: mm' : 'units: in';
      const text = SMALL_ORDER.replace('smallest mark: 1/32 in', `smallest mark: ${mark}`)
        .replace('units: in', units)
        .replaceAll(/(hem|tab|across flats|depth): ([\d/]+)$/gm, '$1: $2 in')
        .replace(
          /\[\[.*\]\]/,
          '[[0, 0], [3 in, 0], [3 in, 2 in], [1 1/2 in, 3 1/4 in], [0, 2 in]]',
        );
      const { file, problem, plan } = await smallPlan(text);
      const onFile = readPlanFile(JSON.stringify(file), 'plan.json');
      expect(onFile.problem, mark).toEqual(problem);
      expect(onFile.plan, mark).toEqual(plan);
    }
  });

  test('gives marks that are on the rule, each rounded by itself', async () => {
    const { file, order } = await smallPlan();
    const hexagon = at(file.blanks, 1).strip;
    const exact = at(order.blanks, 1).cutter?.strip.bends ?? [];
    expect(hexagon?.bends).toHaveLength(6);
    hexagon?.bends.forEach((bend, index) => {
      const marks = bend.at / file.order.smallestMark;
      expect(Math.abs(marks - Math.round(marks))).toBeLessThan(1e-5);
      expect(Math.abs(bend.at - at(exact, index).at)).toBeLessThanOrEqual(25.4 / 64 + 1e-6);
      expect(bend).toMatchObject({ number: index + 1, direction: 'in', angle: 60 });
    });
  });

  test('keeps the offcuts that the order asks for, either way round', async () => {
    const { file } = await smallPlan();
    for (const { remnants } of file.layouts) {
      for (const { length, width, keep } of remnants) {
        const [longer, shorter] = [Math.max(length, width), Math.min(length, width)];
        expect(keep).toBe(longer >= 6 * 25.4 && shorter >= 25.4);
      }
    }
    const none = await smallPlan(SMALL_ORDER.replace(/ {2}keep offcuts from:.*\n/, ''));
    expect(none.file.layouts.flatMap(({ remnants }) => remnants).some(({ keep }) => keep)).toBe(
      false,
    );
  });

  test('holds money as decimals', async () => {
    const { file } = await smallPlan(SMALL_ORDER.replace('on hand: 1', 'on hand: 0'));
    expect(planFileSchema.safeParse(file).success).toBe(true);
    expect(file.cost).toBe(file.buy.reduce((sum, { cost }) => sum + cost, 0));
    expect(at(file.stock, 0)).toMatchObject({ price: 7.4 });
  });
});

describe('a spoilt plan file is refused with the path of the field', () => {
  const refusal = (text: string): string => {
    try {
      readPlanFile(text, 'plan.json');
      return 'read';
    } catch (error) {
      if (error instanceof DocumentError) return error.message;
      throw error;
    }
  };

  test('a length off the marks', async () => {
    const file = copyOf((await smallPlan()).file);
    at(at(file.layouts, 0).pieces, 0).x = 12.3;
    expect(refusal(JSON.stringify(file))).toBe(
      'plan.json: layouts[0].pieces[0].x must be a whole number of marks of 0.79375 mm; found 12.3',
    );
  });

  test('an amount with parts of a coin', async () => {
    const file = copyOf((await smallPlan()).file);
    file.bound.cost = 0.001;
    expect(refusal(JSON.stringify(file))).toBe(
      'plan.json: bound.cost must be a price with at most two decimals, such as 7.40; found 0.001',
    );
  });

  test('a missing field, an unknown one and one of the wrong kind, all at once', async () => {
    const { cost, ...rest } = copyOf((await smallPlan()).file);
    const spoilt = { ...rest, price: cost, bound: { cost: 'little', proven: true } };
    const lines = refusal(JSON.stringify(spoilt)).split('\n');
    expect(lines).toContain('plan.json: cost is missing');
    expect(lines).toContain(`plan.json: price is not a field of a plan; found ${cost}`);
    expect(lines.some((line) => /^plan\.json: bound\.cost .*found little$/.test(line))).toBe(true);
  });

  test.each([
    ['', 'JSON'],
    ['{', 'JSON'],
    ['[]', 'found a list'],
    ['null', 'found'],
    ['7', 'found 7'],
  ])('the text %j', (text, said) => {
    expect(refusal(text)).toMatch(/^plan\.json: /);
    expect(refusal(text)).toContain(said);
    expect(refusal(text)).not.toMatch(/undefined|NaN|\[object/);
  });
});
