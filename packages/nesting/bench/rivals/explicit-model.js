/**
 * The order as one mixed-integer program that names every copy of every piece, every
 * strip and every sheet, handed to HiGHS. After A. Lodi, S. Martello, D. Vigo, "Models
 * and bounds for two-dimensional level packing problems", Journal of Combinatorial
 * Optimization 8 (2004) 363-379, from memory: a strip is opened by its widest piece,
 * narrower ones join it, and strips are assigned to sheets. Here with several sizes of
 * sheet, strips along or across, and pieces that may turn.
 */
import loadHighs from 'highs';

/** With more copies of pieces the model is too large to be of any use. */
const MOST_COPIES = 30;

export const explicitModel = {
  name: 'explicit model',
  guillotine: true,
  /** What the model describes: sheets to be bought, a plain shear, two stages. */
  suits: ({ pieces, stock, shear, keep }) =>
    shear.firstCut === 'either' &&
    pieces.reduce((sum, { quantity }) => sum + quantity, 0) <= MOST_COPIES &&
    stock.every((item) => item.kind === 'sheet' && item.onHand === 0 && item.canBuy === 'any') &&
    (shear.kerf ?? 0) === 0 &&
    (shear.trim ?? 0) === 0 &&
    shear.longestCut === undefined &&
    shear.narrowestStrip === undefined &&
    (shear.stages ?? 2) === 2 &&
    keep === undefined,
  async solve(problem, seconds) {
    const highs = await loadHighs();
    const model = modelOf(problem);
    const limits = { output_flag: false, mip_rel_gap: 0, time_limit: seconds };
    return { model, answer: solved(highs, model.text, limits) };
  },
  judge(problem, { model, answer }) {
    const values = answer.Columns ?? {};
    const counts = new Array(problem.pieces.length).fill(0);
    const used = new Map();
    for (const [name, value] of Object.entries(values)) {
      if (Math.round(value.Primal ?? 0) !== 1) continue;
      const piece = model.pieceOf.get(name);
      if (piece !== undefined) counts[piece]++;
      const sheet = model.sheetOf.get(name);
      if (sheet !== undefined) used.set(sheet, (used.get(sheet) ?? 0) + 1);
    }
    const complete = problem.pieces.every(({ quantity }, piece) => counts[piece] === quantity);
    if (!complete) {
      const wrong = answer.Status === 'Optimal' || answer.Status === 'Infeasible';
      return { status: answer.Status, faults: wrong ? [`HiGHS says: ${answer.Status}`] : [] };
    }
    const cost = [...used].reduce((sum, [sheet, count]) => sum + count * sheet.price, 0);
    const proven = answer.Status === 'Optimal';
    const told = Math.round(answer.ObjectiveValue);
    return {
      status: answer.Status,
      cost,
      sheets: [...used.values()].reduce((sum, count) => sum + count, 0),
      proven,
      faults: told === cost ? [] : [`HiGHS says ${told}, its sheets cost ${cost}`],
    };
  },
};

/** A model that is too much for HiGHS in WebAssembly is no fault of the comparison. */
function solved(highs, text, limits) {
  try {
    return highs.solve(text, limits);
  } catch (error) {
    return { Status: `threw ${error}` };
  }
}

function modelOf(problem) {
  const copies = problem.pieces.flatMap(({ quantity, ...piece }, index) =>
    Array.from({ length: quantity }, () => ({ ...piece, index })),
  );
  const byHand = costByHand(copies, problem.stock);
  const sheets = problem.stock.flatMap((sheet) => {
    const most = Math.min(copies.length, Math.floor(byHand / sheet.price));
    return Array.from({ length: most }, (_, number) => ({ sheet, number }));
  });
  const directions = ['along', 'across'];
  const objective = [];
  const rows = [];
  const binaries = [];
  const pieceOf = new Map();
  const sheetOf = new Map();
  /** For each copy, whatever cuts it. */
  const ways = copies.map(() => []);

  for (const sheet of problem.stock) {
    for (const direction of directions) {
      const along = direction === 'along';
      const length = along ? sheet.length : sheet.width;
      const breadth = along ? sheet.width : sheet.length;
      const lies = copies.flatMap((copy, c) => liesOf(copy, c, along, length, breadth));
      const own = sheets.filter((entry) => entry.sheet === sheet);
      const strips = lies.map((opener, o) => {
        const name = `y_${sheet.id}_${direction}_${o}`;
        binaries.push(name);
        pieceOf.set(name, copies[opener.copy].index);
        ways[opener.copy].push(name);
        const guests = lies.flatMap((guest, g) => {
          if (guest.copy === opener.copy || !joins(guest, opener)) return [];
          const put = `x_${sheet.id}_${direction}_${o}_${g}`;
          binaries.push(put);
          pieceOf.set(put, copies[guest.copy].index);
          ways[guest.copy].push(put);
          return [`${guest.along} ${put}`];
        });
        if (guests.length > 0) {
          rows.push(`${guests.join(' + ')} - ${length - opener.along} ${name} <= 0`);
        }
        return { name, across: opener.across };
      });
      // Every strip that is opened lies on one of the sheets.
      own.forEach(({ number }) => {
        const use = `u_${sheet.id}_${number}_${direction}`;
        binaries.push(use);
        sheetOf.set(use, sheet);
        objective.push(`${sheet.price} ${use}`);
        const laid = strips.map(({ across }, s) => `${across} ${laidOn(use, s)}`);
        if (laid.length > 0) rows.push(`${laid.join(' + ')} - ${breadth} ${use} <= 0`);
        for (const s of strips.keys()) binaries.push(laidOn(use, s));
      });
      strips.forEach(({ name }, s) => {
        const on = own.map(({ number }) => laidOn(`u_${sheet.id}_${number}_${direction}`, s));
        rows.push(`${on.join(' + ')} - ${name} = 0`);
      });
    }
  }
  for (const { sheet, number } of sheets) {
    const uses = (n) => directions.map((direction) => `u_${sheet.id}_${n}_${direction}`);
    rows.push(`${uses(number).join(' + ')} <= 1`);
    // Sheets of a size are alike: they are taken in turn.
    if (number > 0) rows.push(`${uses(number).join(' + ')} - ${uses(number - 1).join(' - ')} <= 0`);
  }
  for (const names of ways) rows.push(`${names.join(' + ')} = 1`);
  const text = [
    'Minimize',
    ` cost: ${objective.join(' + ')}`,
    'Subject To',
    ...rows.map((row, r) => ` r${r}: ${row}`),
    'Binaries',
    ` ${binaries.join(' ')}`,
    'End',
  ].join('\n');
  return { text, pieceOf, sheetOf };
}

const laidOn = (use, strip) => `w_${use}_${strip}`;

function liesOf({ length, width, mayTurn }, copy, along, within, breadth) {
  const straight = { copy, along: along ? length : width, across: along ? width : length };
  const turned = { copy, along: straight.across, across: straight.along };
  const lies = mayTurn && length !== width ? [straight, turned] : [straight];
  return lies.filter((lie) => lie.along <= within && lie.across <= breadth);
}

/** A piece joins strips of wider ones; among those as wide, of an earlier copy. */
function joins(guest, opener) {
  if (guest.across !== opener.across) return guest.across < opener.across;
  return guest.copy > opener.copy;
}

/**
 * What a plan costs that fills sheets of one size by strips, the widest piece first,
 * each piece and each strip where it first fits: no better plan buys more than that.
 */
function costByHand(copies, stock) {
  const costs = stock.flatMap((sheet) => {
    const lies = copies.map((copy, c) => liesOf(copy, c, true, sheet.length, sheet.width)[0]);
    if (lies.includes(undefined)) return [];
    const strips = [];
    for (const { along, across } of lies.sort((a, b) => b.across - a.across)) {
      const strip = strips.find(({ used }) => used + along <= sheet.length);
      if (strip === undefined) strips.push({ across, used: along });
      else strip.used += along;
    }
    const sheets = [];
    for (const { across } of strips) {
      const open = sheets.findIndex((used) => used + across <= sheet.width);
      if (open === -1) sheets.push(across);
      else sheets[open] += across;
    }
    return [sheets.length * sheet.price];
  });
  return Math.min(...costs);
}
