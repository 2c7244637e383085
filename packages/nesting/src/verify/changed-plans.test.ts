import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingPlan, Layout } from '../plan.js';
import type { CuttingProblem } from '../problem.js';
import { type DrawnPlan, drawnPlan } from './drawn-plan.test.support.js';
import { verifyPlan } from './verify-plan.js';

/** What a plan becomes when one thing in it is changed, and what that was. */
type Change = readonly [what: string, plan: CuttingPlan];

/** A copy with the value at a path changed. */
function bent(data: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(data)) {
    return data.map((item, i) => (i === key ? bent(item, rest, value) : item));
  }
  const record = data as Readonly<Record<string, unknown>>;
  return { ...record, [key]: bent(record[key], rest, value) };
}

/** Every number, flag and name in a plan, by its path; the planner's effort is not to be seen. */
function values(
  data: unknown,
  path: readonly (string | number)[] = [],
): readonly { readonly path: readonly (string | number)[]; readonly value: unknown }[] {
  if (typeof data !== 'object' || data === null) return [{ path, value: data }];
  return Object.entries(data).flatMap(([key, value]) =>
    key === 'effort' ? [] : values(value, [...path, Array.isArray(data) ? Number(key) : key]),
  );
}

function everySingleChange({ problem, plan }: DrawnPlan): readonly Change[] {
  return values(plan).flatMap(({ path, value }): readonly Change[] => {
    if (sameByAnyName(problem, plan, path)) return [];
    const changes =
      typeof value === 'number'
        ? [value + 1, value - 1, value + 0.5, Number.NaN]
        : typeof value === 'boolean'
          ? [!value]
          : [`${value}, but another`];
    return changes.map((now) => [
      `${path.join('.')} ${value} -> ${now}`,
      bent(plan, path, now) as CuttingPlan,
    ]);
  });
}

/** Where two values mean one thing: how a square lies, and the stage of an only cut. */
function sameByAnyName(
  problem: CuttingProblem,
  plan: CuttingPlan,
  path: readonly (string | number)[],
): boolean {
  const [, at, , item, field] = path;
  const layout = plan.layouts[Number(at)];
  if (field === 'turned') {
    const placed = layout.pieces[Number(item)];
    const piece = problem.pieces.find(({ id }) => id === placed.piece);
    return placed.length === placed.width && piece?.mayTurn === true && !piece.rolling;
  }
  if (field === 'stage') return layout.cuts.filter((cut) => cut.stage > 0).length === 1;
  return false;
}

function everyListChanged({ plan }: DrawnPlan): readonly Change[] {
  const lists = [
    ['layouts'],
    ['buy'],
    ['spares'],
    ...plan.layouts.flatMap((_, i) =>
      ['pieces', 'cuts', 'remnants'].map((list) => ['layouts', i, list]),
    ),
  ];
  return lists.flatMap((path): readonly Change[] => {
    const list = path.reduce<unknown>(
      (data, key) => (data as Readonly<Record<string, unknown>>)[key],
      plan,
    ) as readonly unknown[];
    return list.flatMap((item, i): readonly Change[] => [
      [
        `${path.join('.')}.${i} left out`,
        bent(
          plan,
          path,
          list.filter((_, j) => j !== i),
        ) as CuttingPlan,
      ],
      [`${path.join('.')}.${i} twice`, bent(plan, path, [...list, item]) as CuttingPlan],
    ]);
  });
}

function everyPairSwapped({ plan }: DrawnPlan): readonly Change[] {
  return plan.layouts.flatMap((layout, at) =>
    layout.pieces.slice(1).flatMap((b, i): readonly Change[] => {
      const a = layout.pieces[i];
      if (a.length === b.length && a.width === b.width) return [];
      const pieces = layout.pieces.with(i, { ...a, x: b.x, y: b.y });
      const swapped: Layout = { ...layout, pieces: pieces.with(i + 1, { ...b, x: a.x, y: a.y }) };
      const layouts = plan.layouts.with(at, swapped);
      return [[`pieces ${i} and ${i + 1} of layout ${at} swapped`, { ...plan, layouts }]];
    }),
  );
}

function everyCutShifted({ plan }: DrawnPlan): readonly Change[] {
  return plan.layouts.flatMap((layout, at) =>
    layout.cuts.flatMap((cut, i) =>
      [-3, -1, 1, 3].map((by): Change => {
        const shifted =
          cut.y1 === cut.y2
            ? { ...cut, y1: cut.y1 + by, y2: cut.y2 + by }
            : { ...cut, x1: cut.x1 + by, x2: cut.x2 + by };
        const layouts = plan.layouts.with(at, { ...layout, cuts: layout.cuts.with(i, shifted) });
        return [`cut ${i} of layout ${at} shifted by ${by}`, { ...plan, layouts }];
      }),
    ),
  );
}

describe('verifyPlan on plans drawn at random', () => {
  it('passes them all', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(drawnPlan, ({ problem, plan }) => {
        expect(verifyPlan(problem, plan)).toEqual([]);
        const { kerf = 0, trim = 0, stages } = problem.shear;
        kinds.add(`${stages}${kerf > 0 ? ' kerf' : ''}${trim > 0 ? ' trim' : ''}`);
        if (plan.spares.length > 0) kinds.add('spares');
        if (plan.parts.kept > 0) kinds.add('kept');
        if (plan.parts.fromShop > 0) kinds.add('from the shop');
      }),
      { numRuns: 500 },
    );
    // Every kind of stages with and without kerf and trim, and the three others.
    expect(kinds.size).toBe(3 * 4 + 3);
  });

  it.each<[string, (drawn: DrawnPlan) => readonly Change[], runs: number]>([
    ['any number, flag or name changed', everySingleChange, 15],
    ['anything left out or listed twice', everyListChanged, 40],
    ['two pieces in each other’s place', everyPairSwapped, 60],
    ['a cut elsewhere', everyCutShifted, 40],
  ])('notices %s', (_, changes, numRuns) => {
    let seen = 0;
    fc.assert(
      fc.property(drawnPlan, (drawn) => {
        const changed = changes(drawn);
        const missed = changed.filter(([, plan]) => verifyPlan(drawn.problem, plan).length === 0);
        expect(missed.map(([what]) => what)).toEqual([]);
        seen += changed.length;
      }),
      { numRuns },
    );
    expect(seen).toBeGreaterThan(400);
  });
});
