/**
 * A general-purpose packer of rectangles, made for putting many pictures into few:
 * it fills sheets of one size, and what it packs can often not be cut by a shear at
 * all, since no cut goes from edge to edge. It is given each size of sheet in turn
 * and the cheapest result counts. Offcuts are filled first, in the order they come.
 */
import { MaxRectsBin, MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs';

export const picturePacker = {
  name: 'picture packer',
  guillotine: false,
  suits: ({ shear, pieces }) =>
    (shear.kerf ?? 0) === 0 && (shear.trim ?? 0) === 0 && pieces.every(({ mayTurn }) => mayTurn),
  solve(problem) {
    const sizes = problem.stock.filter(({ kind }) => kind === 'sheet');
    const results = sizes.map((sheet) => packInto(sheet, problem));
    return results.sort((a, b) => a.cost - b.cost)[0];
  },
  judge(problem, { cost, sheets, bins }) {
    return { cost, sheets, faults: bins.flatMap(binFaults).concat(countFaults(problem, bins)) };
  },
};

const OPTIONS = { smart: false, pot: false, square: false, allowRotation: true };

function packInto(sheet, problem) {
  let left = problem.pieces
    .flatMap(({ id, length, width, quantity }) =>
      Array.from({ length: quantity }, () => {
        const rectangle = new Rectangle(length, width, 0, 0, false, true);
        rectangle.data = id;
        return rectangle;
      }),
    )
    .sort((a, b) => Math.max(b.width, b.height) - Math.max(a.width, a.height));
  const bins = [];
  let cost = 0;
  for (const offcut of problem.stock.filter(({ kind }) => kind === 'offcut')) {
    const bin = new MaxRectsBin(offcut.length, offcut.width, 0, OPTIONS);
    left = left.filter((rectangle) => bin.add(rectangle) === undefined);
    if (bin.rects.length === 0) continue;
    cost += offcut.bookValue ?? 0;
    bins.push({ stock: offcut, rectangles: bin.rects });
  }
  const packer = new MaxRectsPacker(sheet.length, sheet.width, 0, OPTIONS);
  packer.addArray(left);
  for (const bin of packer.bins) bins.push({ stock: sheet, rectangles: bin.rects });
  return { bins, sheets: packer.bins.length, cost: cost + packer.bins.length * sheet.price };
}

function binFaults({ stock, rectangles }) {
  const outside = rectangles.some(
    ({ x, y, width, height }) =>
      x < 0 || y < 0 || x + width > stock.length || y + height > stock.width,
  );
  const overlap = rectangles.some((a, index) =>
    rectangles
      .slice(index + 1)
      .some(
        (b) =>
          a.x < b.x + b.width &&
          b.x < a.x + a.width &&
          a.y < b.y + b.height &&
          b.y < a.y + a.height,
      ),
  );
  return [
    ...(outside ? ['a rectangle lies beyond the edge'] : []),
    ...(overlap ? ['rectangles overlap'] : []),
  ];
}

function countFaults({ pieces }, bins) {
  const packed = new Map();
  for (const { rectangles } of bins) {
    for (const { data } of rectangles) packed.set(data, (packed.get(data) ?? 0) + 1);
  }
  return pieces
    .filter(({ id, quantity }) => packed.get(id) !== quantity)
    .map(({ id, quantity }) => `${packed.get(id) ?? 0} of ${quantity} '${id}' packed`);
}
