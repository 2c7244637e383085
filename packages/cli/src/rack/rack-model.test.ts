import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markOf } from './offcut-mark.js';
import { cuttingOf, offcutOf, plannedOf, sheetsOf } from './planned-cutting.test.support.js';
import type { NewStock, PlannedCutting, Rack } from './rack.js';
import { RackError } from './rack-error.js';
import { RackModel } from './rack-model.test.support.js';
import { SqliteRack } from './sqlite-rack.js';
import { layOutRack } from './store/rack-file.js';

/** Sequences of deeds, in all. */
const SEQUENCES = 2_000;

/** Kept in memory: what is asked here is what it does, not whether it lasts. */
function newRack(): Rack {
  const connection = new Database(':memory:');
  layOutRack(connection, 'id');
  return new SqliteRack(connection, 'a rack in memory', () => '2026-03-02T09:00:00.000Z');
}

type Both = fc.Command<RackModel, Rack>;

/** What came of it: nothing, or the code of the refusal. */
function outcome(deed: () => unknown): string {
  try {
    deed();
    return 'done';
  } catch (error) {
    if (error instanceof RackError) return error.code;
    throw error;
  }
}

/** How often each outcome was met. */
const met = new Map<string, number>();

/** A deed on both, which must come to the same. */
class Deed implements Both {
  readonly #name: string;
  readonly #onModel: (model: RackModel) => unknown;
  readonly #onRack: (rack: Rack) => unknown;
  readonly #prepare: (model: RackModel) => void;

  constructor(
    name: string,
    onModel: (model: RackModel) => unknown,
    onRack: (rack: Rack) => unknown,
    prepare: (model: RackModel) => void = () => undefined,
  ) {
    this.#name = name;
    this.#onModel = onModel;
    this.#onRack = onRack;
    this.#prepare = prepare;
  }

  check(): boolean {
    return true;
  }

  run(model: RackModel, rack: Rack): void {
    this.#prepare(model);
    const expected = outcome(() => model.whole(() => this.#onModel(model)));
    const before = rack.revision;
    expect(outcome(() => this.#onRack(rack))).toBe(expected);
    expect(rack.revision).toBe(expected === 'done' ? before + 1 : before);
    const key = `${this.#name}: ${expected}`;
    met.set(key, (met.get(key) ?? 0) + 1);
    compare(model, rack);
  }

  toString(): string {
    return this.#name;
  }
}

function compare(model: RackModel, rack: Rack): void {
  const inModel = [...model.things].map(([mark, { length, count, promises }]) => {
    const promised = [...promises.values()].reduce((total, each) => total + each, 0);
    return { mark, length, count, promised };
  });
  const onRack = rack
    .list({ gone: true })
    .map(({ mark, length, count, promised }) => ({ mark, length, count, promised }));
  expect(onRack).toEqual(inModel);
  expect(rack.jobs().map(({ plan, state }) => [plan, state])).toEqual(
    [...model.jobs.keys()].reverse().map((plan) => [plan, model.state(plan)]),
  );
}

const markAt = (model: RackModel, at: number) => {
  const marks = [...model.things.keys()];
  return marks.length === 0 ? 'CCC' : (marks[at % marks.length] ?? 'CCC');
};

/** A deed on a plan over what lies on the rack: a new plan, or one that is known. */
function onPlan(
  name: string,
  deed: (target: RackModel | Rack, cutting: PlannedCutting) => unknown,
): fc.Arbitrary<Both> {
  return fc
    .record({
      known: fc.option(fc.nat(), { freq: 2 }),
      picked: fc.array(fc.record({ at: fc.nat(), times: fc.integer({ min: 1, max: 3 }) }), {
        maxLength: 3,
      }),
      bought: fc.option(fc.record({ count: fc.integer({ min: 1, max: 4 }), beside: fc.nat(2) })),
    })
    .map(({ known, picked, bought }) => {
      let cutting: PlannedCutting;
      const prepare = (model: RackModel) => {
        const plans = [...model.jobs.values()];
        const again = known === null ? undefined : plans[known % Math.max(1, plans.length)];
        cutting = again?.cutting ?? newPlan(model, picked, bought);
      };
      return new Deed(
        name,
        (model) => deed(model, cutting),
        (rack) => deed(rack, cutting),
        prepare,
      );
    });
}

function newPlan(
  model: RackModel,
  picked: readonly { readonly at: number; readonly times: number }[],
  bought: { readonly count: number; readonly beside: number } | null,
): PlannedCutting {
  const marks = new Set(picked.map(({ at }) => markAt(model, at)));
  const cuts = [...marks].flatMap((mark, index) => {
    const thing = model.things.get(mark);
    if (thing === undefined) return [];
    const times = thing.kind === 'offcut' ? 1 : (picked[index]?.times ?? 1);
    // Of sheets, more may be bought than what lies there.
    const more = thing.kind === 'offcut' ? 0 : (picked[index]?.at ?? 0) % 3;
    const told = { fromRack: times, bought: more };
    return [{ stock: plannedOf(mark, thing, told), times: times + more }];
  });
  if (bought !== null || cuts.length === 0) {
    const { count, beside } = bought ?? { count: 2, beside: 0 };
    const stock = plannedOf(undefined, sheetsOf(1, { length: 900 }), { bought: count, beside });
    cuts.push({ stock, times: count + beside });
  }
  return cuttingOf(`plan ${model.jobs.size}`, cuts);
}

const added = (stock: NewStock) =>
  new Deed(
    `add ${stock.kind}`,
    (model) => model.add(stock),
    (rack) => rack.add([stock]),
  );
const marked = (
  name: string,
  onModel: (model: RackModel, mark: string) => unknown,
  onRack: (rack: Rack, mark: string) => unknown,
) =>
  fc.nat().map((at) => {
    let mark = '';
    return new Deed(
      name,
      (model) => onModel(model, mark),
      (rack) => onRack(rack, mark),
      (model) => {
        mark = markAt(model, at);
      },
    );
  });

const corrected = fc.constantFrom(600, 700, 900).chain((length) =>
  marked(
    'correct',
    (model, mark) => model.correct(mark, length),
    (rack, mark) => rack.correct(mark, { length }),
  ),
);

const deeds: fc.Arbitrary<Both>[] = [
  fc.constantFrom(400, 400.3, 500).map((length) => added(offcutOf({ length }))),
  fc
    .record({ length: fc.constantFrom(700, 900, 900.3), count: fc.integer({ min: 1, max: 3 }) })
    .map(({ length, count }) => added(sheetsOf(count, { length }))),
  marked(
    'remove',
    (model, mark) => model.remove(mark, 1),
    (rack, mark) => rack.remove(mark, 1, 'lost'),
  ),
  // More often than others: few plans meet one.
  corrected,
  corrected,
  corrected,
  corrected,
  onPlan('hold', (target, cutting) => target.hold(cutting)),
  onPlan('receive', (target, cutting) => target.receive(cutting)),
  onPlan('book', (target, cutting) => target.book(cutting)),
  fc
    .record({ layout: fc.nat(2), times: fc.integer({ min: 1, max: 2 }) })
    .chain((part) => onPlan('book a part', (target, cutting) => target.book(cutting, [part]))),
  onPlan('let go', (target, { plan }) => target.letGo(plan)),
  fc.constant(
    new Deed(
      'undo',
      (model) => model.undo(),
      (rack) => rack.undo(),
    ),
  ),
];

describe('a rack and a plain model of it', () => {
  it(`agree over ${SEQUENCES} random sequences of deeds`, { timeout: 900_000 }, () => {
    fc.assert(
      fc.property(fc.commands(deeds, { maxCommands: 40, size: '+1' }), (sequence) => {
        const rack = newRack();
        try {
          fc.modelRun(() => ({ model: new RackModel(markOf), real: rack }), sequence);
        } finally {
          rack.close();
        }
      }),
      { numRuns: SEQUENCES },
    );
    const changed = [...met].filter(([what]) => what.endsWith(': changed'));
    expect(changed.reduce((sum, [, times]) => sum + times, 0)).toBeGreaterThan(20);
    // Or what they agree on would be little.
    for (const often of [
      'add offcut: done',
      'book: done',
      'book: promised',
      'book: booked already',
      'book: not enough',
      'book a part: done',
      'hold: done',
      'let go: done',
      'receive: done',
      'undo: done',
      'undo: cannot be undone',
      'correct: bad value',
      'remove: promised',
    ]) {
      expect([often, met.get(often) ?? 0]).toEqual([
        often,
        expect.toSatisfy((n: number) => n > 20),
      ]);
    }
  });
});
