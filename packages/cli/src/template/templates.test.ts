import { describe, expect, it } from 'vitest';
import { readSvg } from '../drawing/read-svg.test.support.js';
import { type Section, TRUE_PAGE } from '../job-sheet/job-sheet.js';
import { altered } from '../order/small-order.test.support.js';
import { smallPlan } from '../plan-file/small-plan.test.support.js';
import { templateFiles, templates } from './templates.js';

const HOSTILE = '../a/"><script>& W\\u05D0';

const order = altered(
  '  - name: Heart\n',
  `  - name: "${HOSTILE.replaceAll('"', '\\"')}"\n    outline: house\n    across: 11 in\n    depth: 1\n` +
    '    quantity: 1\n    seam at: 2 in\n  - name: Heart\n',
);

const planned = async () => {
  const { order: sized, file } = await smallPlan(order);
  return { sized, file };
};

const pictures = ({ blocks }: Section) => blocks.filter((block) => block.kind === 'picture');

describe('the templates of a plan', () => {
  it('are a section for each strip that is bent, by its number on the cut maps', async () => {
    const { file } = await planned();
    const sections = templates(await planned());
    const bent = file.blanks.flatMap(({ strip }, index) =>
      strip ? [`template-${index + 1}`] : [],
    );
    expect(sections.map(({ id }) => id)).toEqual(bent);
    // The lid is cut flat; the house takes two strips.
    expect(bent).toHaveLength(file.blanks.length - 1);
    expect(sections.filter(({ title }) => / part [12] of 2$/.test(title))).toHaveLength(2);
  });

  it('have true-scale pages, cautions, and the marks of the plan file', async () => {
    const { file } = await planned();
    for (const section of templates(await planned())) {
      const strip = file.blanks[Number(section.id.replace('template-', '')) - 1]?.strip;
      if (strip === undefined) throw new Error('no strip');
      expect(pictures(section).length).toBeGreaterThan(0);
      for (const { drawing, trueScale } of pictures(section)) {
        expect(trueScale).toBe(true);
        expect(drawing.page.width).toBeLessThanOrEqual(TRUE_PAGE.width);
        expect(drawing.page.height).toBeLessThanOrEqual(TRUE_PAGE.height);
      }
      const kinds = section.blocks.map(({ kind }) => kind);
      expect(kinds).toContain('caution');
      const rows = section.blocks.flatMap((block) => (block.kind === 'table' ? block.rows : []));
      expect(rows).toHaveLength(strip.bends.length + strip.curves.length);
    }
  });

  it('have steps that no other has', async () => {
    const ids = templates(await planned()).flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'steps' ? block.steps.map(({ id }) => id) : [])),
    );
    expect(ids.length).toBeGreaterThan(8);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('are the same each time', async () => {
    expect(templateFiles(await planned())).toEqual(templateFiles(await planned()));
  });

  it('become files whose names hold nothing of the order', async () => {
    const files = templateFiles(await planned());
    for (const { name, svg } of files) {
      expect(name).toMatch(/^template-\d+(-\d+)?\.svg$/);
      const elements = readSvg(svg);
      expect(elements.map((element) => element.name)).not.toContain('script');
      expect(elements[1]?.name).toBe('title');
    }
    expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
    const titles = files.map(({ svg }) => readSvg(svg)[1]?.text);
    expect(titles).toContain('Template 1: ../a/"><script>& Wא, part 1 of 2, page 1 of 2');
  });
});
