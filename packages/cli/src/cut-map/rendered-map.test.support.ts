import type { Page } from 'playwright-core';

/** What is wrong with the labels of a map, as a browser draws it. */
export interface LabelFaults {
  /** How many texts were measured. */
  readonly texts: number;
  readonly overlapping: readonly string[];
  readonly outOfTheirBox: readonly string[];
  readonly offThePage: readonly string[];
}

/**
 * Runs in the browser. Boxes are those of the glyphs as laid out by it, in its pixels: a
 * text's box goes from the ascent to the descent of its font. `slack` is what may be shared
 * for nothing: boxes are rounded out to fractions of pixels.
 */
const MEASURE = `
(() => {
  const slack = 0.3;
  const svg = document.querySelector('svg');
  const box = (element) => element.getBoundingClientRect();
  const within = (outer, inner) =>
    inner.left >= outer.left - slack && inner.right <= outer.right + slack &&
    inner.top >= outer.top - slack && inner.bottom <= outer.bottom + slack;
  const boxesOf = (...classes) =>
    classes.flatMap((name) => [...svg.getElementsByClassName(name)].map(box));
  const pieces = boxesOf('piece');
  const homes = {
    number: pieces,
    name: pieces,
    size: pieces,
    remnant: boxesOf('keep', 'scrap'),
    'cut-number': boxesOf('cut-badge', 'flag'),
  };
  const page = box(svg);
  const texts = [...svg.querySelectorAll('text')]
    .filter((text) => text.textContent.trim() !== '')
    .map((text) => ({ said: text.getAttribute('class') + ' "' + text.textContent + '"',
      role: text.getAttribute('class'), box: box(text) }));
  const overlapping = [];
  const sorted = [...texts].sort((one, other) => one.box.left - other.box.left);
  for (let i = 0; i < sorted.length; i++) {
    const one = sorted[i];
    for (let j = i + 1; j < sorted.length; j++) {
      const other = sorted[j];
      if (other.box.left > one.box.right - slack) break;
      const high = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      if (high > slack) overlapping.push(one.said + ' on ' + other.said);
    }
  }
  return {
    texts: texts.length,
    overlapping,
    outOfTheirBox: texts
      .filter(({ role, box }) => homes[role] && !homes[role].some((home) => within(home, box)))
      .map(({ said }) => said),
    offThePage: texts.filter(({ box }) => !within(page, box)).map(({ said }) => said),
  };
})()`;

/** Shows a map in a browser, at its true size, and measures every text of it. */
export async function measureLabels(page: Page, svg: string): Promise<LabelFaults> {
  await page.setContent(
    `<!doctype html><body style="margin:0">${svg.replace(/^<\?xml.*\?>/u, '')}`,
  );
  return page.evaluate<LabelFaults>(MEASURE);
}

/** Measures the map that is shown after a script has changed it. */
export async function measureChanged(page: Page, script: string): Promise<LabelFaults> {
  await page.evaluate(script);
  return page.evaluate<LabelFaults>(MEASURE);
}
