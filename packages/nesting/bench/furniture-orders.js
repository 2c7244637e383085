/**
 * The 43 orders of a furniture maker, one sheet size each, used in R. Macedo,
 * C. Alves, J.M. Valério de Carvalho, "Arc-flow model for the two-dimensional
 * guillotine cutting stock problem", Computers & Operations Research 37 (2010)
 * 991-1001, and the sheets that free guillotine cuts need, as a commercial solver
 * proved for some of them within its limits (2021).
 */
import { readData } from './harness.js';

/**
 * @param stages and `mayTurn`: which kind of cutting
 * @returns undefined where the files are not there; `published` is the proven
 * optimum of free guillotine cuts, if there is one
 */
export function furnitureOrders(folder, { stages, mayTurn }) {
  const data = readData(folder, 'furniture-a.csv', 'furniture-a-free-guillotine-optima.csv');
  if (data === undefined) return undefined;
  const [lines, optima] = data;
  const published = new Map(
    optima
      .filter((line) => line.status === 'proven' && (line.rotation_allowed === '1') === mayTurn)
      .map((line) => [line.instance, Number(line.sheets)]),
  );
  return [...new Set(lines.map((line) => line.instance))].map((name) => ({
    name,
    published: published.get(name),
    problem: problemOf(
      lines.filter((line) => line.instance === name),
      stages,
      mayTurn,
    ),
  }));
}

function problemOf(lines, stages, mayTurn) {
  const [{ sheet_length, sheet_width }] = lines;
  const size = { length: Number(sheet_length), width: Number(sheet_width) };
  return {
    pieces: lines.map(({ item_length, item_width, demand }, index) => ({
      id: `p${index + 1}`,
      length: Number(item_length),
      width: Number(item_width),
      quantity: Number(demand),
      mayTurn,
    })),
    stock: [{ kind: 'sheet', id: 'sheet', ...size, price: 1, onHand: 0, canBuy: 'any' }],
    shear: { firstCut: 'either', stages },
  };
}
