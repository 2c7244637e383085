import { refold } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import type { Drawing, Mark, TextMark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { holds, measureTexts, overlaps, readSvg } from '../drawing/read-svg.test.support.js';
import { writeSvg } from '../drawing/svg-sink.js';
import { drawCard } from './card.js';
import { allExhibits } from './exhibit.js';

const RULES = [
  { units: 'mm', mark: 0.5 },
  { units: 'in', mark: 25.4 / 32 },
] as const;

const cards = RULES.flatMap((rule) =>
  allExhibits(rule).map((exhibit) => {
    const name = `${exhibit.title} in ${rule.units}`;
    return { name, exhibit, mark: rule.mark, drawing: drawCard(exhibit, rule) };
  }),
);

const marksOf = ({ layers }: Drawing): readonly Mark[] => layers.flatMap(({ marks }) => marks);

const textsOf = (drawing: Drawing, role?: string): readonly TextMark[] =>
  marksOf(drawing).filter(
    (mark): mark is TextMark => mark.kind === 'text' && (role === undefined || mark.role === role),
  );

const labels = (drawing: Drawing, role: string): readonly string[] =>
  textsOf(drawing, role)
    .map(({ text }) => text)
    .sort();

describe.each(cards)('$name', ({ exhibit, mark, drawing }) => {
  const { strip, title } = exhibit;

  test('has the same numbers and letters on the shape, the strip and in the figures', () => {
    const numbers = strip.bends.map(({ number }) => `${number}`).sort();
    const letters = strip.curves.map((_, index) => 'abcdefghijklmnopqrstuvwxyz'.charAt(index));
    for (const place of ['shape', 'strip', 'figure']) {
      expect(labels(drawing, `${place}-bend`)).toEqual(numbers);
      expect(labels(drawing, `${place}-curve`)).toEqual(letters);
    }
  });

  test('shows the way of each bend twice: dark or light tags, broken or whole lines', () => {
    const lines = (role: string) =>
      marksOf(drawing).filter((mark) => mark.kind === 'line' && mark.role === role);
    for (const way of ['in', 'out'] as const) {
      const going = strip.bends.filter(({ direction }) => direction === way);
      const named = going.map(({ number }) => `${number}`).sort();
      const drawn = lines(`bend-${way}`);
      expect(drawn).toHaveLength(named.length);
      for (const line of drawn) {
        expect(line.kind === 'line' && line.dashes !== undefined).toBe(way === 'out');
      }
      const colour = way === 'out' ? INK.paper : INK.text;
      for (const place of ['shape-bend', 'strip-bend']) {
        const tags = textsOf(drawing, place).filter((mark) => mark.colour === colour);
        expect(tags.map(({ text }) => text).sort()).toEqual(named);
      }
    }
    expect(lines('hem-line').length).toBeGreaterThan(0);
  });

  test('draws the strip true to scale, each bend at its mark', () => {
    const edge = marksOf(drawing).find(
      (mark) => mark.kind === 'polygon' && mark.role === 'strip-edge',
    );
    const corners = edge?.kind === 'polygon' ? edge.points : [];
    const [left, right] = [Math.min, Math.max].map((end) => end(...corners.map(({ x }) => x)));
    const [top, foot] = [Math.min, Math.max].map((end) => end(...corners.map(({ y }) => y)));
    const scale = ((right ?? 0) - (left ?? 0)) / strip.length;
    expect(((foot ?? 0) - (top ?? 0)) / strip.width).toBeCloseTo(scale, 9);
    const bends = marksOf(drawing).flatMap((mark) =>
      mark.kind === 'line' && /^bend-(?:in|out)$/.test(mark.role ?? '') ? [mark.points] : [],
    );
    strip.bends.forEach(({ at }, index) => {
      for (const { x } of bends[index] ?? []) expect((x - (left ?? 0)) / scale).toBeCloseTo(at, 9);
    });
  });

  test('tells the angles drawn and those to fold to, and how near it comes', () => {
    const cells = textsOf(drawing, 'figure-bend-cell').map(({ text }) => text);
    const { folds, closureGap, largestDeviation } = refold(strip, mark);
    // Column by column: mark, fold, drawn, fold to.
    expect(cells).toHaveLength(4 * strip.bends.length);
    const columns = [2, 3].map((column) =>
      cells.slice(column * folds.length, (column + 1) * folds.length),
    );
    expect(columns[0]).toEqual(folds.map(({ drawn }) => drawn.angle.toFixed(1)));
    expect(columns[1]).toEqual(folds.map(({ told }) => told.angle.toFixed(1)));
    const halves = textsOf(drawing, 'figure-curve-cell').filter(({ text }) => text.includes(' + '));
    expect(halves).toHaveLength(strip.curves.length);
    const facts = textsOf(drawing, 'fact').map(({ text }) => text);
    expect(facts.join(' ')).toMatch(/Folded at these marks the ends meet within .* drawing\./);
    expect(closureGap).toBeLessThan(mark);
    expect(largestDeviation).toBeLessThan(mark);
  });

  test('tells how to take care', () => {
    const words = textsOf(drawing, 'caution').map(({ text }) => text);
    expect(words.join(' ')).toMatch(/gloves.*local codes/);
  });

  test('no words lie over others, by the widths of a wide face', () => {
    const texts = textsOf(drawing);
    const frames = marksOf(drawing).flatMap((mark) =>
      mark.kind === 'rect' && mark.role?.endsWith('-frame') === true ? [mark.box] : [],
    );
    expect(overlaps(frames, 0.01)).toEqual([]);
    const touching = overlaps(
      texts.map(({ box }) => box),
      0.01,
    ).map((pair) => pair.map((index) => texts[index]?.text));
    expect(touching).toEqual([]);
    for (const { box } of texts) expect(holds(drawing.page, box, 0.01)).toBe(true);
  });

  test('is well-formed, is named, and tells what it shows', () => {
    const [root, name, description] = readSvg(writeSvg(drawing));
    expect(root?.name).toBe('svg');
    expect(name?.text).toContain(title);
    expect(description?.text).toContain(`${strip.bends.length} bends`);
  });
});

test('nor do they as svgdom measures them with a font of its own', () => {
  for (const { drawing } of cards.slice(0, 12)) {
    const texts = readSvg(writeSvg(drawing)).filter(({ name }) => name === 'text');
    expect(overlaps(measureTexts(texts), 0.4)).toEqual([]);
  }
});
