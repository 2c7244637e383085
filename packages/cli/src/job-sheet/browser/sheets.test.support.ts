import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Planner } from '../../environment.js';
import { realPlanner, temporaryFolder } from '../../environment.test.support.js';
import { onePieceASheet } from '../../one-piece-a-sheet.test.support.js';
import { orderToProblem } from '../../order/order-to-problem.js';
import { read } from '../../order/small-order.test.support.js';
import { packetSheet } from '../../packet/packet-sheet.js';
import { planFileSchema } from '../../plan-file/plan-file.js';
import { toPlanFile } from '../../plan-file/to-plan-file.js';
import { jobSheetPage } from '../html/job-sheet-page.js';
import type { JobSheet } from '../job-sheet.js';

/** The job sheet of an order, planned. @param renamed gives its names others, as a plan may have */
export async function sheetOf(
  order: string,
  planner: Planner = onePieceASheet,
  renamed: (name: string) => string = (name) => name,
): Promise<JobSheet> {
  const sized = read(order);
  const problem = orderToProblem(sized);
  const outcome = await planner.planCutting(problem);
  if (outcome.status !== 'planned') throw new Error(`The order is ${outcome.status}.`);
  const file = toPlanFile(sized, problem, outcome.plan);
  const text = JSON.stringify(file, (_, value: unknown) =>
    typeof value === 'string' ? renamed(value) : value,
  );
  return packetSheet({ sized, file: planFileSchema.parse(JSON.parse(text)) });
}

const demos = new Map<string, Promise<JobSheet>>();

/** The order of the bakery, in one of its units, really planned. */
export function demoSheet(units: 'inch' | 'metric'): Promise<JobSheet> {
  const path = `../../../../../test-data/orders/bakery-co-op-${units}.yaml`;
  const order = () => readFileSync(new URL(path, import.meta.url), 'utf8');
  const made = demos.get(units) ?? sheetOf(order(), realPlanner);
  demos.set(units, made);
  return made;
}

/** Names that orders may have, and that nothing may break on. */
export const HOSTILE_NAMES: readonly string[] = [
  '</title><script>throw 1</script>',
  `"><img src=x onerror="throw 2">'`,
  '<!-- <bdi> --> ]]> &amp; &lt;b&gt; &notit;',
  '../../etc/passwd and C:\\shop\\tin.html?#x',
  'קן ציפור 12',
  '\u202Eedirrevo dna \u2066detalosi',
  '🐻‍❄️👩‍👩‍👧‍👦 biscuit tin 🫖',
  'Unbreakable'.repeat(20),
  `A very long name ${'and longer '.repeat(20)}`,
  `tower${'\u0301'.repeat(20)}`,
];

/** An order of so many kinds, each cut from sheets of its own by `onePieceASheet`. */
export function orderOf(kinds: number): string {
  const items = Array.from({ length: kinds }, (_, index) => {
    const quantity = `quantity: ${index + 1}`;
    const made = [
      'outline: heart, across: 90 mm, depth: 25 mm',
      'outline: sailboat, across: 90 mm, depth: 25 mm',
      `blank: ${60 + index} x 40 mm`,
    ][index % 3];
    return `  - { name: Kind ${index}, ${made}, ${quantity} }`;
  });
  return [
    'name: Order of many kinds',
    'shop: { units: mm, smallest mark: 0.5 mm, currency: €, hem: 6 mm, tab: 12 mm, keep offcuts from: 100 x 30 mm }',
    'sheets:',
    '  - { name: Sheet, size: 700 x 500 mm, price: 7.40, can buy: yes }',
    'items:',
    ...items,
    '',
  ].join('\n');
}

/** Every name of it is hostile. */
export function hostileSheet(): Promise<JobSheet> {
  const [title = '', sheet = '', ...kinds] = HOSTILE_NAMES;
  const others = new Map([
    ['Order of many kinds', title],
    ['Sheet', sheet],
    ...kinds.map((name, index) => [`Kind ${index}`, name] as const),
  ]);
  return sheetOf(orderOf(kinds.length), onePieceASheet, (name) => others.get(name) ?? name);
}

/** A sheet as a file. @returns its address */
export function fileOf(sheet: JobSheet): string {
  const path = join(temporaryFolder(), 'job-sheet.html');
  writeFileSync(path, jobSheetPage(sheet));
  return pathToFileURL(path).href;
}
