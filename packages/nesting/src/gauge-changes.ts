import { type CuttingNode, cuttingTree } from './cutting-tree.js';
import type { Layout } from './plan.js';
import type { CuttingProblem } from './problem.js';

/**
 * What the shear's gauge is set to for each cut of a layout, in ticks: how far
 * the cut lies from the near edge of the rectangle that it divides.
 * @throws CuttingTreeError where the layout is none of a plan that holds
 */
export function gaugeSettings(problem: CuttingProblem, layout: Layout): readonly number[] {
  const settings = new Array<number>(layout.cuts.length);
  const nodes: CuttingNode[] = [cuttingTree(problem, layout)];
  for (let node = nodes.pop(); node !== undefined; node = nodes.pop()) {
    if (node.kind !== 'cut') continue;
    const { x1, y1, y2 } = layout.cuts[node.index];
    settings[node.index] = y1 === y2 ? y1 - node.of.y : x1 - node.of.x;
    for (const part of [node.near, node.far]) if (part !== undefined) nodes.push(part);
  }
  return settings;
}

/**
 * How often the gauge is set anew when the cuts of a layout are made in their
 * order. The first setting counts; one that is the same as that of the cut
 * before does not, whichever way the two cuts run.
 * @throws CuttingTreeError where the layout is none of a plan that holds
 */
export function gaugeChanges(problem: CuttingProblem, layout: Layout): number {
  const settings = gaugeSettings(problem, layout);
  return settings.filter((setting, i) => i === 0 || setting !== settings[i - 1]).length;
}
