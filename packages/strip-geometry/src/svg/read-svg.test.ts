import { describe, expect, test } from 'vitest';
import { bounds, perimeter, signedArea } from '../measure.js';
import { lengthOf } from '../segment.js';
import { readSvg, type SvgOptions } from './read-svg.js';
import { SvgError, type SvgFault } from './svg-error.js';

const only = (text: string, options?: SvgOptions) => {
  const outlines = readSvg(text, options);
  expect(outlines).toHaveLength(1);
  const [outline] = outlines;
  if (outline === undefined) {
    throw new Error('no outline');
  }
  return outline;
};

function refusal(text: string, options?: SvgOptions): SvgError {
  try {
    readSvg(text, options);
  } catch (error) {
    if (error instanceof SvgError) {
      return error;
    }
    throw error;
  }
  throw new Error('nothing was refused');
}

const HEART = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="90mm" viewBox="0 0 100 90">
  <title>For the bakery</title>
  <path id="heart" d="M50 88 L10 40 A25 25 0 0 1 50 15 A25 25 0 0 1 90 40 Z"/>
</svg>`;

const RING = `<svg viewBox="0 0 40 40" width="40mm" height="40mm">
  <path id="ring" d="M0 20a20 20 0 1 0 40 0a20 20 0 1 0-40 0z M10 20a10 10 0 1 1 20 0a10 10 0 1 1-20 0z"/>
</svg>`;

describe('what is drawn', () => {
  test('a heart keeps its two lines and two arcs, and its corners', () => {
    const heart = only(HEART);
    expect(heart.name).toBe('heart');
    expect(heart.segments.map(({ kind }) => kind).sort()).toEqual(['arc', 'arc', 'line', 'line']);
    expect(bounds(heart).bottom).toBeCloseTo(2, 9);
    expect(signedArea(heart)).toBeGreaterThan(0);
  });

  test('a ring becomes two outlines, both anticlockwise', () => {
    const [outer, inner] = readSvg(RING);
    expect(outer?.name).toBe('ring outer');
    expect(inner?.name).toBe('ring inner');
    expect([outer?.hole, inner?.hole]).toEqual([undefined, true]);
    expect(outer && perimeter(outer)).toBeCloseTo(40 * Math.PI, 9);
    expect(inner && perimeter(inner)).toBeCloseTo(20 * Math.PI, 9);
    expect(inner && signedArea(inner)).toBeCloseTo(100 * Math.PI, 9);
  });

  test('every kind of element', () => {
    const outlines = readSvg(`<svg width="96" height="96">
      <rect x="1" y="1" width="20" height="10"/><rect width="20" height="10" rx="3"/>
      <circle cx="50" cy="50" r="5"/><ellipse cx="9" cy="9" rx="4" ry="2"/>
      <polygon points="0,0 10,0 10,10"/><polyline points="0 0, 10 0, 10 10, 0 0"/>
      <path d="M0 0Q10 0 10 10z"/><path d="M0 0C10 0 10 5 10 10z"/></svg>`);
    const px = 25.4 / 96;
    expect(outlines.map(({ name }) => name)).toEqual([
      'rect 1',
      'rect 2',
      'circle 1',
      'ellipse 1',
      'polygon 1',
      'polyline 1',
      'path 1',
      'path 2',
    ]);
    const kinds = outlines.map(({ segments }) => [...new Set(segments.map(({ kind }) => kind))]);
    expect(kinds.map((each) => each.sort())).toEqual([
      ['line'],
      ['arc', 'line'],
      ['arc'],
      ['elliptical arc'],
      ['line'],
      ['line'],
      ['line', 'quadratic'],
      ['cubic', 'line'],
    ]);
    const [plain, round, circle, ellipse, polygon, polyline] = outlines.map(perimeter);
    expect(plain).toBeCloseTo(60 * px, 9);
    expect(round).toBeCloseTo((60 - 24 + 6 * Math.PI) * px, 9);
    expect(circle).toBeCloseTo(10 * Math.PI * px, 9);
    // Perimeter of the ellipse with half axes 2 and 1 (from memory).
    expect(ellipse).toBeCloseTo(2 * 9.688448220547674 * px, 6);
    expect(polygon).toBeCloseTo((20 + Math.hypot(10, 10)) * px, 9);
    expect(polyline).toBeCloseTo((20 + Math.hypot(10, 10)) * px, 9);
  });

  test('a rect with rx alone is rounded by it both ways, by no more than half a side', () => {
    // SVG 1.1, 9.2: an auto ry takes the value of rx, and both are clamped.
    const pill = only(
      '<svg width="9" height="9"><rect width="96" height="48" rx="40" ry="99"/></svg>',
    );
    const kinds = pill.segments.filter(({ kind }) => kind === 'elliptical arc');
    expect(kinds).toHaveLength(4);
    for (const arc of kinds) {
      const radii = 'radiusX' in arc ? [arc.radiusX, arc.radiusY].sort((a, b) => a - b) : [];
      expect(radii[0]).toBeCloseTo((24 * 25.4) / 96, 9);
      expect(radii[1]).toBeCloseTo((40 * 25.4) / 96, 9);
    }
  });

  test('y is turned up: what is at the top of the page stays there', () => {
    const box = only('<svg width="96" height="96"><rect width="96" height="24"/></svg>');
    expect(bounds(box).top).toBeCloseTo(25.4, 9);
    expect(bounds(box).bottom).toBeCloseTo(19.05, 9);
  });

  test('nested transforms, the innermost first', () => {
    const box = only(`<svg width="960" height="960"><g transform="translate(100,200)">
      <g transform="rotate(90)"><rect width="30" height="10" transform="scale(2)"/></g></g></svg>`);
    // Scaled to 60 by 20, turned clockwise to 20 by 60 left of the origin, moved to (100, 200).
    const { left, right, top, bottom } = bounds(box);
    const px = 25.4 / 96;
    expect(left).toBeCloseTo(80 * px, 9);
    expect(right).toBeCloseTo(100 * px, 9);
    expect(top).toBeCloseTo((960 - 200) * px, 9);
    expect(bottom).toBeCloseTo((960 - 260) * px, 9);
  });

  test('a skewed circle is the ellipse with the same area', () => {
    const skewed = only('<svg><circle r="96" transform="skewX(30)"/></svg>');
    const [arc] = skewed.segments;
    expect(arc?.kind).toBe('elliptical arc');
    expect(signedArea(skewed)).toBeCloseTo(Math.PI * 25.4 ** 2, 7);
    // A shear by k stretches its axes to the singular values of [[1, k], [0, 1]].
    const k = Math.tan(Math.PI / 6);
    const longest = (k + Math.hypot(k, 2)) / 2;
    const radii = arc && 'radiusX' in arc ? [arc.radiusX, arc.radiusY] : [];
    expect(Math.max(...radii)).toBeCloseTo(25.4 * longest, 9);
    expect(Math.min(...radii)).toBeCloseTo(25.4 / longest, 9);
  });

  test('use draws an element again, elsewhere', () => {
    const outlines = readSvg(`<svg xmlns:xlink="http://www.w3.org/1999/xlink">
      <defs><circle id="dot" r="10"/></defs><symbol id="sign"><rect width="5" height="5"/></symbol>
      <use id="left" href="#dot" x="50"/><use xlink:href="#dot" x="90" transform="scale(2)"/>
      <use href="#sign"/></svg>`);
    expect(outlines.map(({ name }) => name)).toEqual(['left', 'dot', 'rect 1']);
    const [left, right] = outlines.map(bounds);
    expect(left?.left).toBeCloseTo((40 * 25.4) / 96, 9);
    expect(right?.right).toBeCloseTo((200 * 25.4) / 96, 9);
  });

  test('what is hidden or only defined is left out', () => {
    const shown = only(`<svg xmlns:i="urn:editor"><defs><rect width="9" height="9"/></defs>
      <clipPath id="c"><rect width="9" height="9"/></clipPath><i:notes><rect/></i:notes>
      <g display="none"><text>no</text></g><rect width="9" height="9" style="fill:red;display:none"/>
      <g visibility="hidden"><rect width="9" height="9"/><circle visibility="visible" r="3"/></g>
      <path d=""/><path d="M5 5"/><rect width="0" height="5"/><circle/><polygon/></svg>`);
    expect(shown.name).toBe('circle 1');
  });

  test('segments without length are dropped, and ends that almost meet are joined', () => {
    const square = only(
      '<svg viewBox="0 0 50 50" width="50mm"><path d="M0 0 0 0H40 40V40h0H0 L0.004 0.003"/></svg>',
    );
    expect(square.segments).toHaveLength(4);
    const { segments } = square;
    segments.forEach((segment, index) => {
      expect(segment.to).toEqual(segments[(index + 1) % segments.length]?.from);
      expect(lengthOf(segment)).toBeGreaterThan(39.9);
    });
  });

  test('a circle closed by a hair is one circle, not an arc and two bends', () => {
    const circle = only('<svg><path d="M0 0A50 50 0 1 1 0 .001z"/></svg>', { across: 80 });
    expect(circle.segments).toHaveLength(1);
    expect(perimeter(circle)).toBeCloseTo(80 * Math.PI, 3);
  });

  test('curves that are drawn straight are lines', () => {
    const box = only('<svg><path d="M0 0C30 0 60 0 90 0Q90 20 90 40 L0 40z"/></svg>');
    expect(box.segments.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'line']);
  });
});

describe('names', () => {
  test('are the id, or the element and a number, never twice the same', () => {
    const two = 'M0 0h9v9z M20 0h9v9z';
    const names = readSvg(
      `<svg><path d="${two}"/><path id="a" d="${two}"/><rect id="a 1" width="9" height="9"/></svg>`,
    ).map(({ name }) => name);
    expect(names).toEqual(['path 1 1', 'path 1 2', 'a 2', 'a 3', 'a 1']);
  });
});

describe('asking for a size', () => {
  test('the largest outline gets it, the others follow', () => {
    const [outer, inner] = readSvg(RING, { across: 100 });
    expect(outer && bounds(outer).across).toBeCloseTo(100, 9);
    expect(inner && bounds(inner).across).toBeCloseTo(50, 9);
    const [high] = readSvg(HEART, { high: 44 });
    expect(high && bounds(high).high).toBeCloseTo(44, 9);
  });

  test('both sizes may be given if they agree', () => {
    const { across, high } = bounds(only(HEART));
    const both = only(HEART, { across: across / 2, high: high / 2 });
    expect(bounds(both).across).toBeCloseTo(across / 2, 9);
  });
});

describe('a traced drawing', () => {
  const corners = Array.from({ length: 400 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 400;
    return `${50 + 40 * Math.cos(angle)},${50 + 40 * Math.sin(angle)}`;
  });
  const traced = `<svg width="100mm" viewBox="0 0 100 100"><polygon points="${corners.join(' ')}"/></svg>`;

  test('is fitted with few lines and arcs unless that is not wanted', () => {
    expect(only(traced).segments).toHaveLength(1);
    expect(only(traced, { fit: 'never' }).segments).toHaveLength(400);
  });
});

test('too many traces to fit are refused', () => {
  const circle = Array.from({ length: 100 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 100;
    return `${9 * Math.cos(angle)},${9 * Math.sin(angle)}`;
  });
  const dot = `<polygon points="${circle.join(' ')}"/>`;
  expect(refusal(`<svg>${dot.repeat(21)}</svg>`).code).toBe('too large');
  expect(readSvg(`<svg>${dot.repeat(21)}</svg>`, { fit: 'never' })).toHaveLength(21);
});

describe('what is refused', () => {
  const svg = (inside: string) => `<svg xmlns="http://www.w3.org/2000/svg">\n  ${inside}\n</svg>`;

  test.each<[string, string, SvgFault, string]>([
    ['an empty file', '  ', 'not svg', 'empty'],
    ['another format', '<html></html>', 'not svg', '<html>'],
    ['another vocabulary', '<svg xmlns="urn:other"/>', 'not svg', '<svg>'],
    ['broken XML', '<svg><g></svg>', 'not well formed', 'Line 1'],
    ['plain text', 'hello', 'not well formed', 'Line 1'],
    ['own entities', '<!DOCTYPE svg [<!ENTITY a "b">]><svg id="&a;"/>', 'not well formed', 'entit'],
    ['an empty drawing', svg(''), 'no closed shape', 'path, polygon'],
    ['text', svg('<text id="t">Hi</text>'), 'text', 'Line 2, column 3, text "t"'],
    ['an image', svg('<image href="a.png"/>'), 'image', 'Line 2, column 3, image'],
    ['an open path', svg('<path id="p" d="M0 0h96v96"/>'), 'open path', '35.9'],
    ['an open polyline', svg('<polyline points="0 0 9 0 9 9"/>'), 'open path', 'polyline'],
    ['a line', svg('<line x2="9"/>'), 'open path', 'line'],
    ['a figure eight', svg('<path d="M0 0 40 40V0L0 40z"/>'), 'crosses itself', 'path'],
    ['a curve with a loop', svg('<path d="M0 0C99 50-50 50 40 0z"/>'), 'crosses itself', 'path'],
    ['no area', svg('<path d="M0 0h50z"/>'), 'crosses itself', 'path'],
    ['path data', svg('<path d="M0 0 L5"/>'), 'bad path data', 'pos'],
    [
      'a spline of another dialect',
      svg('<path d="M0 0R5 5 9 9 9 0 1 1z"/>'),
      'bad path data',
      '"R"',
    ],
    ['a bad flag', svg('<path d="M0 0a5 5 0 2 1 9 9z"/>'), 'bad path data', 'flag'],
    ['an infinite number', svg('<path d="M0 0h1e999z"/>'), 'bad path data', 'Infinity'],
    ['odd corners', svg('<polygon points="0 0 9"/>'), 'bad path data', 'polygon'],
    ['commands among corners', svg('<polygon points="0 0 h 9"/>'), 'bad number', 'points'],
    ['a transform', svg('<g transform="turn(9)"/>'), 'bad transform', '"turn"'],
    ['a flat transform', svg('<circle r="9" transform="scale(1 0)"/>'), 'bad transform', 'flatten'],
    ['a length', svg('<circle r="9em"/>'), 'bad length', '"9em"'],
    ['a negative size', svg('<rect width="-9" height="9"/>'), 'bad length', '-9'],
    ['an outer reference', svg('<use href="b.svg#a"/>'), 'bad reference', 'b.svg'],
    ['a circle of uses', svg('<g id="a"><use href="#a"/></g>'), 'bad reference', 'itself'],
    ['a drawing in a drawing', svg('<svg/>'), 'not supported', 'within'],
    ['a clip', svg('<g clip-path="url(#c)"/>'), 'not supported', 'clip-path'],
    ['a mask', svg('<g style="mask:url(#c)"/>'), 'not supported', 'mask'],
    ['a view box', '<svg viewBox="0 0 0 9"/>', 'bad number', 'viewBox'],
    ['a page', '<svg width="0"/>', 'bad length', 'width'],
    ['far away', svg('<rect x="1e12" width="9" height="9"/>'), 'out of range', '1000000 mm'],
  ])('%s', (_, text, code, said) => {
    const error = refusal(text);
    expect(error.code).toBe(code);
    expect(error.message).toContain(said);
  });

  test('sizes that contradict the proportions, or are none', () => {
    expect(refusal(RING, { across: 50, high: 60 })).toMatchObject({ code: 'contradictory sizes' });
    expect(refusal(RING, { across: 50, high: 60 }).message).toContain(
      'makes it 50 mm high; got 60 mm',
    );
    expect(refusal(RING, { across: 0 })).toMatchObject({ code: 'out of range' });
    expect(refusal(RING, { high: Number.NaN })).toMatchObject({ code: 'out of range' });
  });

  test('a size for what has no height', () => {
    expect(refusal(svg('<path d="M9 9H50z"/>'), { high: 50 }).code).toBe('no closed shape');
  });

  test('a tolerance that is none', () => {
    expect(refusal(RING, { tolerance: 0 }).code).toBe('out of range');
  });

  test('text, images and open paths may be ignored', () => {
    const text = svg('<text/><image/><path d="M0 0h9v9"/><circle r="9"/>');
    const outline = only(text, { ignore: ['text', 'images', 'open paths'] });
    expect(outline.name).toBe('circle 1');
    expect(refusal(text, { ignore: ['text', 'images'] }).code).toBe('open path');
    expect(refusal(svg('<text/>'), { ignore: ['text'] }).code).toBe('no closed shape');
  });

  test('the place is the element, its id, line and column', () => {
    const { place } = refusal('<svg>\r\n\t<g>\r\n<path\n id="p" d="M0 0h9v9"/></g></svg>');
    expect(place).toEqual({ element: 'path', id: 'p', line: 3, column: 1 });
  });
});

describe('files made to do harm', () => {
  test.each<[string, string]>([
    ['long', `<svg>${' '.repeat(8_000_001)}</svg>`],
    ['deep', '<g>'.repeat(200).replace('<g>', '<svg>')],
    ['many elements', `<svg>${'<g/>'.repeat(20_001)}</svg>`],
    ['many pieces', `<svg><path d="M0 0${'h1v1'.repeat(10_001)}z"/></svg>`],
    ['many numbers after one letter', `<svg><path d="M0 0h${'1 '.repeat(1_000_000)}z"/></svg>`],
    [
      'uses of uses',
      `<svg>${Array.from(
        { length: 40 },
        (_, n) => `<g id="g${n}"><use href="#g${n + 1}"/><use href="#g${n + 1}"/></g>`,
      ).join('')}<g id="g40"/></svg>`,
    ],
    [
      'long attributes, used again and again',
      `<svg><path id="p" d="M0 0${' '.repeat(100_000)}"/>${'<use href="#p"/>'.repeat(5000)}</svg>`,
    ],
  ])('%s', (_, text) => {
    expect(refusal(text).code).toBe('too large');
  });

  test.each<[string, string]>([
    ['spaces in a transform', `<svg><g transform="${' '.repeat(500_000)}x"/></svg>`],
    ['digits in a transform', `<svg><g transform="rotate(${'1'.repeat(500_000)}x)"/></svg>`],
    ['digits in a length', `<svg><circle r="${'1'.repeat(500_000)}!"/></svg>`],
    ['spaces in a length', `<svg><circle r="1${' '.repeat(500_000)}!"/></svg>`],
    ['dots in a view box', `<svg viewBox="${'.'.repeat(500_000)}"/>`],
  ])('%s', (_, text) => {
    expect(refusal(text).code).toMatch(/^bad/);
  });
});
