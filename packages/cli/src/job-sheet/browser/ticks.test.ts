import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { describeInChromium } from '../../rendering/chromium.test.support.js';
import { fileOf, orderOf, sheetOf } from './sheets.test.support.js';

const ticked = (page: Page) =>
  page.evaluate<string[]>('[...document.querySelectorAll("input:checked")].map((box) => box.id)');
const done = (page: Page) => page.locator('nav p').textContent();
const kept = (page: Page) => page.locator('footer p').textContent();

describeInChromium('ticks in Chromium', (browser) => {
  it('survive a reload, and belong to one plan', async () => {
    const [url, other] = [fileOf(await sheetOf(orderOf(2))), fileOf(await sheetOf(orderOf(3)))];
    const page = await (await browser().newContext()).newPage();
    await page.goto(url);
    const boxes = await page.locator('input').count();
    expect(await done(page)).toBe(`0 of ${boxes} steps done`);
    await page.locator('label', { hasText: 'Buy' }).click();
    await page.locator('#layout-2 label').first().click();
    const ids = await ticked(page);
    expect(ids).toEqual(['step.buy-1', expect.stringMatching(/^step\.layout-2-/)]);
    await page.reload();
    expect(await ticked(page)).toEqual(ids);
    expect(await done(page)).toBe(`2 of ${boxes} steps done`);
    expect(await kept(page)).toBe('Ticks are kept in this browser, on this device.');
    await page.goto(other);
    expect(await ticked(page)).toEqual([]);
    await page.goto(url);
    expect(await ticked(page)).toEqual(ids);
    await page.context().close();
  });

  it('are set by the keyboard too, where the focus can be seen', async () => {
    const page = await browser().newPage();
    await page.goto(fileOf(await sheetOf(orderOf(1))));
    await page.locator('input').first().focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    const [, second] = await page.locator('input').all();
    expect(await second?.isChecked()).toBe(true);
    const outline = 'getComputedStyle(document.activeElement).outlineStyle';
    expect(await page.evaluate(outline)).toBe('solid');
    await page.close();
  });

  it('go when they are all taken away, once that is confirmed', async () => {
    const page = await (await browser().newContext()).newPage();
    await page.goto(fileOf(await sheetOf(orderOf(1))));
    await page.locator('label').first().click();
    page.once('dialog', (dialog) => dialog.dismiss());
    await page.locator('button').click();
    expect(await ticked(page)).toHaveLength(1);
    page.once('dialog', (dialog) => dialog.accept());
    await page.locator('button').click();
    expect(await ticked(page)).toEqual([]);
    await page.reload();
    expect(await ticked(page)).toEqual([]);
    await page.context().close();
  });

  it('can be set without a script, which nothing speaks of then', async () => {
    const context = await browser().newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(fileOf(await sheetOf(orderOf(1))));
    await page.locator('label').first().click();
    expect(await page.locator('input').first().isChecked()).toBe(true);
    expect(await page.locator('button').isVisible()).toBe(false);
    expect(await page.locator('nav p').isVisible()).toBe(false);
    await context.close();
  });

  it('can be set where the browser keeps nothing, and the sheet says so', async () => {
    const page = await (await browser().newContext()).newPage();
    const failed: string[] = [];
    page.on('pageerror', (error) => failed.push(error.message));
    await page.addInitScript(
      'Object.defineProperty(window, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } })',
    );
    await page.goto(fileOf(await sheetOf(orderOf(1))));
    await page.locator('label').first().click();
    expect(await ticked(page)).toHaveLength(1);
    expect(await done(page)).toMatch(/^1 of /);
    expect(await kept(page)).toMatch(/keeps no ticks/);
    expect(failed).toEqual([]);
    await page.context().close();
  });

  it.each(['{', '7', '"step"', '[1,null,{}]', 'null'])(
    'pass over %s in their place',
    async (text) => {
      const sheet = await sheetOf(orderOf(1));
      const page = await (await browser().newContext()).newPage();
      const failed: string[] = [];
      page.on('pageerror', (error) => failed.push(error.message));
      const url = fileOf(sheet);
      await page.goto(url);
      await page.evaluate(
        `localStorage.setItem(${JSON.stringify(`stripwright ticks ${sheet.key}`)}, ${JSON.stringify(text)})`,
      );
      await page.reload();
      expect(await ticked(page)).toEqual([]);
      await page.locator('label').first().click();
      await page.reload();
      expect(await ticked(page)).toHaveLength(1);
      expect(failed).toEqual([]);
      await page.context().close();
    },
  );
});
