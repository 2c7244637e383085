import { choiceText } from '../faults/fault-text.js';
import { printBareLength, printLength, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';

/** `single hem to the outside, fold line 1/4 in from the raw edge; fold it flat before bending` */
export function edgeText({ edge }: PlanFileStrip, rule: Rule): string {
  const [kind, lines] = [edge?.kind ?? 'raw edge', edge?.foldLines ?? []];
  if (lines.length === 0) return `${kind}, nothing to fold`;
  const wire = edge?.wire === undefined ? '' : `, wire ${printLength(edge.wire, rule)}`;
  const places = choiceText(
    lines.map((line) => printBareLength(line, rule)),
    'and',
  );
  const noun = lines.length === 1 ? 'fold line' : 'fold lines';
  const face = `${kind} to the ${edge?.face ?? 'outside'}${wire}`;
  return `${face}, ${noun} ${places} ${rule.units} from the raw edge${stageText(edge?.stage)}`;
}

/** When to fold it; a plan of an earlier day does not tell. */
function stageText(stage: 'closed' | 'square' | undefined): string {
  switch (stage) {
    case 'closed':
      return '; fold it flat before bending';
    case 'square':
      return '; fold it square before bending, flat after';
    case undefined:
      return '';
  }
}

/** `tucked tab, 1/2 in at the far end; the ends meet at bend 6; leave 17/32 in of hem open ...` */
export function seamText(strip: PlanFileStrip, rule: Rule): string {
  const { seam } = strip;
  if (seam === undefined) return 'butt joint';
  const { kind, atStart, atEnd, openHem, lines } = seam;
  const added = [
    ...(atStart > 0 ? [`${printLength(atStart, rule)} at the square end`] : []),
    ...(atEnd > 0 ? [`${printLength(atEnd, rule)} at the far end`] : []),
  ].join(' and ');
  const open = ticksUp(openHem, rule.mark) * rule.mark;
  const across = lines.map(({ purpose, at }) => {
    const place = printLength(Math.round(at / rule.mark) * rule.mark, rule);
    return purpose === 'fold' ? `fold at ${place}` : `rivets at ${place}`;
  });
  return [
    added === '' ? `${kind}, nothing added` : `${kind}, ${added}`,
    meetingText(strip, rule),
    ...across,
    ...(openHem > 0 ? [`leave ${printLength(open, rule)} of hem open at the square end`] : []),
  ].join('; ');
}

/** Where on the outline the ends meet, or what they are joined to. */
function meetingText({ part, bends, developed, seam }: PlanFileStrip, { mark }: Rule): string {
  if (part !== undefined) {
    const next = part.number === part.of ? 1 : part.number + 1;
    return `the far end is joined to the square end of part ${next}`;
  }
  const end = (seam?.atStart ?? 0) + developed;
  const last = bends.at(-1);
  return last !== undefined && Math.abs(last.at - end) <= mark
    ? `the ends meet at bend ${last.number}`
    : 'the ends meet between bends';
}
