import type { Layout } from '../plan.js';
import type { CuttingProblem, Stock } from '../problem.js';

interface Metal {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly stage: number;
}

/**
 * Makes the cuts of a layout on an imagined sheet and says what is wrong with it,
 * by means of its own: it knows plan and problem, nothing of patterns.
 */
export function layoutFaults(
  layout: Layout,
  stock: Stock,
  problem: CuttingProblem,
): readonly string[] {
  const { shear } = problem;
  const kerf = shear.kerf ?? 0;
  const narrowest = shear.narrowestStrip ?? 0;
  const longest = shear.longestCut ?? Number.POSITIVE_INFINITY;
  const trim = stock.kind === 'sheet' ? (shear.trim ?? 0) : 0;
  const lastStage = (shear.stages ?? 2) === 'free' ? Infinity : Number(shear.stages ?? 2) + 1;
  const faults: string[] = [];
  let gone = 0;

  let bench: Metal[] = [{ x: 0, y: 0, length: stock.length, width: stock.width, stage: 0 }];
  let stageBefore = 0;
  let first: 'along' | 'across' | undefined;
  layout.cuts.forEach((cut, at) => {
    const say = (what: string) => faults.push(`cut ${at + 1} of stage ${cut.stage} ${what}`);
    if (cut.stage < stageBefore) say('comes late');
    stageBefore = cut.stage;
    const level = cut.y1 === cut.y2;
    if (!level && cut.x1 !== cut.x2) say('is slanted');
    const line = level ? cut.y1 : cut.x1;
    const ends = level ? [cut.x1, cut.x2] : [cut.y1, cut.y2];
    const along = (m: Metal) => (level ? [m.x, m.x + m.length] : [m.y, m.y + m.width]);
    const across = (m: Metal) => (level ? [m.y, m.y + m.width] : [m.x, m.x + m.length]);
    const edge = cut.stage === 0;
    const from = bench.find(
      (m) =>
        along(m)[0] === ends[0] &&
        along(m)[1] === ends[1] &&
        (across(m)[0] < line || (edge && across(m)[0] === line)) &&
        line < across(m)[1],
    );
    if (from === undefined) {
      say('does not run through one rectangle');
      return;
    }
    bench = bench.filter((m) => m !== from);
    const [start, end] = across(from);
    const near = line - start;
    const far = Math.max(0, end - line - kerf);
    gone += (ends[1] - ends[0]) * (end - start - near - far);
    const part = (at: number, size: number): Metal =>
      level
        ? { ...from, y: at, width: size, stage: cut.stage }
        : { ...from, x: at, length: size, stage: cut.stage };
    if (near > 0) bench.push(part(start, near));
    if (far > 0) bench.push(part(line + kerf, far));
    if (ends[1] - ends[0] > longest) say('is too long');
    if (edge) {
      const outside = (m: Metal) =>
        m.x + m.length <= trim ||
        m.y + m.width <= trim ||
        m.x >= stock.length - trim ||
        m.y >= stock.width - trim;
      for (const m of bench.filter(outside)) gone += m.length * m.width;
      bench = bench.filter((m) => !outside(m));
      return;
    }
    if (near < narrowest || (far > 0 && far < narrowest)) say('parts off too narrow a strip');
    if (from.stage > cut.stage) say(`divides metal of stage ${from.stage}`);
    if (cut.stage > lastStage) say('has no stage');
    if (cut.stage === lastStage) {
      if (from.stage === lastStage) say('divides what was trimmed');
      const freed = layout.pieces.some(
        (piece) =>
          piece.x === from.x &&
          piece.y === from.y &&
          (level ? piece.width === near : piece.length === near),
      );
      if (!freed) say('trims no piece');
    }
    const runs = level ? 'along' : 'across';
    first ??= cut.stage % 2 === 1 ? runs : level ? 'across' : 'along';
    if ((cut.stage % 2 === 1) !== (runs === first)) say('runs the wrong way for its stage');
  });
  const edges = layout.cuts.filter((cut) => cut.stage === 0).length;
  if (edges !== (trim > 0 ? 4 : 0)) faults.push(`${edges} edges trimmed`);
  if (shear.firstCut !== 'either' && first !== undefined && first !== shear.firstCut) {
    faults.push('first cuts run the wrong way');
  }

  const where = ({ x, y, length, width }: Omit<Metal, 'stage'>) =>
    `${length} x ${width} at ${x}, ${y}`;
  const left = bench.map(where).sort().join('; ');
  const listed = [...layout.pieces, ...layout.remnants].map(where).sort().join('; ');
  if (left !== listed) faults.push(`cuts leave ${left}; listed are ${listed}`);
  const area = [...layout.pieces, ...layout.remnants].reduce(
    (sum, { length, width }) => sum + length * width,
    gone,
  );
  if (area !== stock.length * stock.width) faults.push(`${area} square ticks`);

  for (const placed of layout.pieces) {
    const piece = problem.pieces.find(({ id }) => id === placed.piece);
    const size = placed.turned ? [piece?.width, piece?.length] : [piece?.length, piece?.width];
    if (placed.length !== size[0] || placed.width !== size[1]) faults.push(`${placed.piece} size`);
    if (placed.turned && piece?.mayTurn === false) faults.push(`${placed.piece} turned`);
  }
  const rule = problem.keep?.[0];
  for (const { length, width, keep, value } of layout.remnants) {
    const [short, long] = length < width ? [length, width] : [width, length];
    const wanted = rule !== undefined && long >= rule.leastLength && short >= rule.leastWidth;
    const coins = wanted
      ? (BigInt(length * width) * BigInt(rule.coinsPerMillion)) /
          (1_000_000n * BigInt(rule.millions ?? 1)) -
        BigInt(rule.trouble ?? 0)
      : 0n;
    if (keep !== wanted) faults.push(`${length} x ${width}: keep ${keep}`);
    if (value !== (coins > 0n ? Number(coins) : 0)) faults.push(`${length} x ${width}: ${value}`);
  }
  return faults;
}
