import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holds, overlaps } from '../drawing/read-svg.test.support.js';
import { type LabelWish, meets, placeLabels, type Stretch } from './place-labels.js';

const ROOM = { x: 0, y: 0, width: 100, height: 80 };
const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
const anyPoint = fc.record({ x: number(100), y: number(80) });
const anyLine = fc.tuple(anyPoint, anyPoint);
const anyWish: fc.Arbitrary<LabelWish> = fc
  .record({ at: anyPoint, angle: number(6.28), width: number(12), height: number(5) })
  .map(({ at, angle, width, height }) => {
    const away = { x: Math.cos(angle), y: Math.sin(angle) };
    return { at, away, width: width + 2, height: height + 2 };
  });

test('labels stand inside the room, clear of lines, of each other and of ties', () => {
  const wishes = fc.array(anyWish, { maxLength: 25 });
  fc.assert(
    fc.property(wishes, fc.array(anyLine, { maxLength: 6 }), (wanted, lines) => {
      const placed = placeLabels(wanted, lines, ROOM);
      expect(placed).toHaveLength(wanted.length);
      const labels = placed.filter((label) => label !== undefined);
      expect(
        overlaps(
          labels.map(({ box }) => box),
          0,
        ),
      ).toEqual([]);
      for (const { box, middle } of labels) {
        expect(holds(ROOM, box, 0)).toBe(true);
        expect(middle.x).toBeCloseTo(box.x + box.width / 2, 9);
        for (const line of lines) expect(meets(line, box)).toBe(false);
        for (const other of labels)
          if (other.box !== box) expect(meets(other.tie, box)).toBe(false);
      }
    }),
  );
});

test('a lone label stands where it is wished, at the edge of the least distance', () => {
  const wish = { at: { x: 50, y: 40 }, away: { x: 0, y: -1 }, width: 6, height: 4 };
  const [label] = placeLabels([wish], [], ROOM);
  expect(label?.middle.x).toBeCloseTo(50, 9);
  expect(label?.tie[1].y).toBeCloseTo(label === undefined ? 0 : label.box.y + 4, 9);
});

test('a label that cannot stand clear is left out, not drawn over something', () => {
  const wish = { at: { x: 5, y: 5 }, away: { x: 1, y: 0 }, width: 6, height: 4 };
  expect(placeLabels([wish], [], { x: 0, y: 0, width: 5, height: 5 })).toEqual([undefined]);
});

test('meets agrees with many points along the stretch', () => {
  fc.assert(
    fc.property(anyLine, anyPoint, number(30), number(30), (line, corner, width, height) => {
      const box = { ...corner, width, height };
      const [from, to]: Stretch = line;
      const touched = Array.from({ length: 201 }, (_, step) => step / 200).some((share) => {
        const x = from.x + (to.x - from.x) * share;
        const y = from.y + (to.y - from.y) * share;
        return x >= box.x && x <= box.x + width && y >= box.y && y <= box.y + height;
      });
      // Points may step over a corner of the box, but never see what is not there.
      if (touched) expect(meets(line, box)).toBe(true);
    }),
  );
  expect(
    meets(
      [
        { x: 0, y: 0 },
        { x: 10, y: 10 },
      ],
      { x: 6, y: 0, width: 4, height: 3 },
    ),
  ).toBe(false);
});
