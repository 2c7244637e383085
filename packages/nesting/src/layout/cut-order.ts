import { cutUp, type PatternCut } from '../pattern/cut-up.js';
import type { CuttingRules } from '../pattern/cutting-rules.js';
import type { Part } from '../pattern/part.js';

/**
 * The cuts of a pattern in the order that they are made at a hand shear: stage by
 * stage; in each stage all cuts of one setting of the gauge together, whichever
 * strips they are in, the widest first, as far as each strip is cut from its near
 * end on; the trims to size come last, since by then the pieces are loose.
 * @param part with its slices in order
 */
export function cutsInOrder(
  part: Part,
  box: { readonly length: number; readonly width: number },
  rules: CuttingRules,
): readonly PatternCut[] {
  const cuts: PatternCut[] = [];
  cutUp(part, box, rules, { cut: (cut) => cuts.push(cut) });
  const stages = new Map<number, PatternCut[]>();
  for (const cut of cuts) {
    const key = 2 * cut.stage + Number(cut.trim);
    const ofStage = stages.get(key) ?? [];
    stages.set(key, ofStage);
    ofStage.push(cut);
  }
  const inOrder = [...stages].sort(([a], [b]) => a - b);
  return inOrder.flatMap(([, ofStage]) => byGauge(ofStage));
}

/**
 * Cuts of one stage, those of one setting of the gauge together. Where each strip's
 * cuts grow narrower from its near end on, as they do in a part whose slices are in
 * order, there are as many settings as different widths: none can have fewer.
 */
function byGauge(cuts: readonly PatternCut[]): readonly PatternCut[] {
  const strips = new Map<string, PatternCut[]>();
  for (const cut of cuts) {
    const strip = stripOf(cut);
    const known = strips.get(strip);
    if (known === undefined) strips.set(strip, [cut]);
    else known.push(cut);
  }
  /** What is left of strips, by the setting that each needs next. */
  const waiting = new Map<number, Rest[]>();
  const wait = (rest: Rest) => {
    const near = rest.strip[rest.next]?.near;
    if (near === undefined) return;
    const others = waiting.get(near) ?? [];
    waiting.set(near, others);
    others.push(rest);
  };
  [...strips.values()].forEach((strip, place) => {
    wait({ strip, place, next: 0 });
  });
  const ordered: PatternCut[] = [];
  while (waiting.size > 0) {
    const setting = [...waiting.keys()].reduce((widest, near) => Math.max(widest, near));
    const rests = waiting.get(setting) ?? [];
    waiting.delete(setting);
    for (const rest of rests.sort((a, b) => a.place - b.place)) {
      for (; rest.strip[rest.next]?.near === setting; rest.next++) {
        ordered.push(rest.strip[rest.next]);
      }
      wait(rest);
    }
  }
  return ordered;
}

/** A strip of which the cuts before the next are made. */
interface Rest {
  readonly strip: readonly PatternCut[];
  /** Of the strip among the others. */
  readonly place: number;
  next: number;
}

/** The same for the cuts that take one strip apart: its far end stays where it is. */
function stripOf({ runs, from: { x, y, length, width } }: PatternCut): string {
  return runs === 'across' ? `${x + length},${y},${width}` : `${x},${length},${y + width}`;
}

/** How often the gauge is set for cuts made in this order; it measures what lies nearer. */
export function gaugeSettings(cuts: readonly PatternCut[]): number {
  return cuts.filter((cut, i) => i === 0 || cuts[i - 1].near !== cut.near).length;
}
