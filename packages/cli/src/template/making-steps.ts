import type { Step, Steps } from '../job-sheet/job-sheet.js';
import type { Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { edgeText, seamText } from '../report/edge-and-seam-text.js';
import { notchText, snipText } from '../report/hem-cuts-text.js';

/** How a cutter is made from its strip, in the order of the bench. @param id of its section */
export function makingSteps(id: string, strip: PlanFileStrip, rule: Rule): Steps {
  const { edge, bends, curves, part } = strip;
  const folded = (edge?.foldLines.length ?? 0) > 0;
  const cuts = [notchText(strip), snipText(strip, rule)].filter((text) => text !== undefined);
  const step = (name: string, text: string, detail?: string): Step => {
    return { id: `${id}-${name}`, text, ...(detail === undefined ? {} : { detail }) };
  };
  return {
    kind: 'steps',
    steps: [
      step('mark', 'Mark out the strip from its square end.', 'All readings run from that end.'),
      ...(cuts.length === 0 ? [] : [step('notch', 'Cut notches and snips.', cuts.join('; '))]),
      ...(folded ? [step('edge', 'Fold the edge.', edgeText(strip, rule))] : []),
      ...(bends.length === 0
        ? []
        : [step('bend', 'Bend at the marks, to the degrees under "fold to".')]),
      ...(curves.length === 0 ? [] : [step('form', 'Form the curves between their marks.')]),
      ...(edge?.stage === 'square' ? [step('close', 'Close the edge flat.')] : []),
      step(
        'check',
        part === undefined
          ? 'Lay it on the outline and true it up.'
          : 'Lay it on its part of the outline.',
      ),
      step(
        'join',
        part === undefined ? 'Join the ends.' : 'Join it to its neighbours.',
        seamText(strip, rule),
      ),
      step('finish', 'Dull what is sharp, except the cutting edge, and wash before use.'),
    ],
  };
}
