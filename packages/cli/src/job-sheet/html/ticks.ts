import { DONE_ID } from './contents.js';

export const WORK_ID = 'sheet.work';
export const KEPT_ID = 'sheet.kept';
export const CLEAR_ID = 'sheet.clear';

/**
 * The one script of the sheet: keeps what is ticked under the sheet's key, so that it is
 * there after a reload, and counts it. Where the browser refuses to keep anything, or runs
 * no script, the boxes can be ticked all the same.
 */
export const TICKS_SCRIPT = `
(() => {
  const find = (id) => document.getElementById(id);
  const work = find('${WORK_ID}');
  const boxes = [...work.querySelectorAll('input[type=checkbox]')];
  const name = 'stripwright ticks ' + work.dataset.key;
  const ticked = () => boxes.filter((box) => box.checked);
  const told = (kept) => {
    find('${DONE_ID}').textContent = ticked().length + ' of ' + boxes.length + ' steps done';
    find('${KEPT_ID}').textContent = kept
      ? 'Ticks are kept in this browser, on this device.'
      : 'This browser keeps no ticks: they are gone when the page is closed.';
  };
  const keep = () => {
    try {
      localStorage.setItem(name, JSON.stringify(ticked().map((box) => box.value)));
      told(true);
    } catch {
      told(false);
    }
  };
  const recall = () => {
    let text;
    try {
      text = localStorage.getItem(name);
    } catch {
      return told(false);
    }
    let values = [];
    try {
      values = JSON.parse(text ?? '[]');
    } catch {
      // Not what this script wrote: begin anew.
    }
    const known = new Set(Array.isArray(values) ? values : []);
    for (const box of boxes) box.checked = known.has(box.value);
    told(true);
  };
  work.addEventListener('change', keep);
  addEventListener('pageshow', (event) => event.persisted && recall());
  addEventListener('storage', (event) => event.key === name && recall());
  find('${CLEAR_ID}').addEventListener('click', () => {
    if (!confirm('Take away all ticks?')) return;
    for (const box of boxes) box.checked = false;
    keep();
  });
  recall();
  for (const id of ['${DONE_ID}', '${CLEAR_ID}']) find(id).hidden = boxes.length === 0;
})();
`;
