import { choiceText } from '../faults/fault-text.js';
import { inUnits } from '../length/in-units.js';
import type { Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { wrap } from './table.js';

type Warning = NonNullable<PlanFileStrip['warnings']>[number];

/** Where a message says that something is. */
const PLACES: readonly RegExp[] = [
  /\bbend \d+/i,
  /\bcurve \d+/i,
  /\bbends \d+ and \d+/i,
  /\bflat from [\d.]+ mm to [\d.]+ mm/i,
];

/**
 * Warnings, one paragraph each, in lines of at most 80 columns.
 *
 * @param whose put before each, such as the name of a blank
 */
export function warningLines(
  warnings: readonly Warning[],
  rule: Rule,
  whose?: string,
): readonly string[] {
  return warningTexts(warnings, rule).flatMap((said) =>
    wrap(whose === undefined ? `  ${said}` : `  ${whose}: ${said}`, '    '),
  );
}

/**
 * Warnings, each with the source of its limit. What is found in several places alike is
 * said once, with the places.
 */
export function warningTexts(warnings: readonly Warning[], { units }: Rule): readonly string[] {
  const alike = new Map<string, { readonly first: Warning; readonly others: string[] }>();
  for (const warning of warnings) {
    const place = placeIn(warning.message);
    const what = `${warning.kind}: ${place === undefined ? '' : warning.message.replace(place, '')}`;
    const known = place === undefined ? undefined : alike.get(what);
    if (known === undefined || place === undefined) {
      alike.set(place === undefined ? warning.message : what, { first: warning, others: [] });
    } else {
      known.others.push(place);
    }
  }
  return [...alike.values()].map(({ first, others }) => {
    const from = first.source === undefined ? '' : ` (${first.source})`;
    const same = others.length === 0 ? '' : ` The same at ${placesText(others)}.`;
    return inUnits(`${first.message}${from}${same}`, units);
  });
}

function placeIn(message: string): string | undefined {
  for (const pattern of PLACES) {
    const found = pattern.exec(message)?.[0];
    if (found !== undefined) return found;
  }
  return undefined;
}

/** `bends 3, 7 and 9`, or `bends 3 and 4; bends 6 and 7` */
function placesText(places: readonly string[]): string {
  const words = places.map((place) => place.toLowerCase());
  const [noun] = /^(bend|curve) /.exec(words[0] ?? '') ?? [];
  if (noun === undefined) return words.join('; ');
  if (words.length === 1) return words[0] ?? '';
  return `${noun.trim()}s ${choiceText(
    words.map((word) => word.slice(noun.length)),
    'and',
  )}`;
}
