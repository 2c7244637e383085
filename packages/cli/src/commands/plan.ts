import { dirname, isAbsolute, join, resolve } from 'node:path';
import { families } from '@stripwright/strip-geometry';
import { CSV_NAMES } from '../csv/csv-files.js';
import type { Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import { type Reading, refuse } from '../faults/reading.js';
import { readDrawings } from '../order/drawings.js';
import { readChoice, readCount, readNumber } from '../order/fields.js';
import { orderToProblem } from '../order/order-to-problem.js';
import { orderTree } from '../order/order-tree.js';
import { readItemTable } from '../order/read-item-table.js';
import { contradictedOrder, readOrder } from '../order/read-order.js';
import type { SizedOrder } from '../order/strips.js';
import { packetFiles, planText } from '../packet/packet-files.js';
import { checkPacketFolder, writePacket } from '../packet/packet-folder.js';
import {
  cutMapName,
  JOB_SHEET_NAME,
  JOB_SHEET_PDF_NAME,
  PLAN_NAME,
} from '../packet/packet-names.js';
import { PAPER_NAMES, type PaperName, USUAL_PAPER } from '../pdf/paper.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { toPlanFile } from '../plan-file/to-plan-file.js';
import { makePlan, type PlanningLimits } from '../planning/make-plan.js';
import { viewRack } from '../rack-stock/rack-view.js';
import { withStockFromRack } from '../rack-stock/stock-from-rack.js';
import { readInput } from '../read-input.js';
import { counted } from '../report/counted.js';
import { emphasised } from '../report/emphasis.js';
import { planReport } from '../report/plan-report.js';
import { quoted } from '../report/quoted.js';
import { wrap } from '../report/table.js';
import { type Command, flagOption, type Given, textOption } from './command.js';
import { OptionReader } from './option-reader.js';
import { rackOption, rackToPlanFrom } from './rack-options.js';

/** `stripwright plan`: from an order to what to buy and how to cut it. */
export const plan: Command = {
  name: 'plan',
  subject: { name: 'order', meaning: 'the order, a YAML file' },
  summary: 'plan how to cut an order: what to buy, cut maps, strips, job sheet',
  options: {
    out: textOption('write plan.json, the cut maps and the job sheet into this folder'),
    json: flagOption('print plan.json, and nothing else'),
    items: textOption('a table (CSV) of what to make, in place of the items of the order'),
    'time-limit': textOption('seconds to search for at most'),
    seed: textOption('a whole number that the search starts from'),
    rack: rackOption(),
    'no-rack': flagOption('use no rack'),
    paper: textOption('print the PDF on a4 or letter; letter goes with inches'),
    quiet: flagOption('print no report'),
  },
  examples: [
    { command: 'stripwright plan order.yaml', meaning: 'print what to buy and what to cut' },
    {
      command: 'stripwright plan order.yaml --out packet',
      meaning: 'write plan.json, a cut map for each layout and the job sheet too',
    },
    {
      command: 'stripwright plan order.yaml --json --time-limit 60',
      meaning: 'print the plan for another program',
    },
  ],
  epilogue: ['Ctrl-C ends the search, and the best plan so far is used. Once more quits.'],
  async run(given, environment) {
    const { stdout, stderr, files, cwd } = environment;
    const { paper, ...limits } = readOptions(given);
    const watched = stderr.isTerminal && !given.flag('json') && !given.flag('quiet');
    const shownFolder = given.text('out');
    if (shownFolder === '') {
      const complaint = { code: 'missing', hint: 'the name of a folder' } as const;
      throw new CommandError(EXIT.badInput, complaintText('--out', complaint));
    }
    const folder = shownFolder === undefined ? undefined : resolve(cwd, shownFolder);
    const text = await readInput(given.subject, environment);
    const table = await readItemTable(text, given.subject, itemsGiven(given), environment);
    const { value } = orderTree(text, given.subject, families, table);
    const drawings = await readDrawings(value, given.subject, environment);
    const order = readOrder(text, given.subject, families, drawings, table);
    if (folder !== undefined) await checkPacketFolder(folder, shownFolder ?? '', files);

    const { problem, used } = withRack(text, order, given, environment);
    const watch = watched ? stderr : undefined;
    const made = await makePlan(order, problem, environment, limits, watch);
    const file = toPlanFile(order, problem, made, used);

    const usual = USUAL_PAPER[file.order.units];
    const packet =
      folder === undefined ? [] : await packetFiles({ sized: order, file }, paper ?? usual);
    if (folder !== undefined) await writePacket(folder, shownFolder ?? '', packet, files);
    if (given.flag('json')) {
      stdout.write(planText(file));
    } else if (!given.flag('quiet')) {
      const report = [...planReport(file), '', ...whereFilesLie(file, shownFolder, given.subject)];
      if (shownFolder !== undefined && used !== undefined) {
        const named = given.text('rack') ?? rackOfOrder(given.subject, order);
        report.push(...howToBook(join(shownFolder, PLAN_NAME), named));
      }
      stdout.write(`${emphasised(report, stdout).join('\n')}\n`);
    }
    return EXIT.done;
  },
};

/** The table of items that stands in place of those of the order. */
function itemsGiven(given: Given): string | undefined {
  const named = given.text('items');
  if (named?.trim() !== '') return named;
  const complaint = { code: 'missing', hint: 'the file of a table' } as const;
  throw new CommandError(EXIT.badInput, complaintText('--items', complaint));
}

/**
 * The order as a problem, with what the rack has for it.
 * @param text the order as written
 * @throws DocumentError where the order contradicts the rack
 */
function withRack(text: string, sized: SizedOrder, given: Given, environment: Environment) {
  const { shop } = sized.order;
  const problem = orderToProblem(sized);
  const rack = rackToPlanFrom(given, { file: given.subject, rack: shop.rack }, environment);
  if (rack === undefined) return { problem, used: undefined };
  try {
    const view = viewRack(rack, problem, shop.metal.name, shop.rule.mark);
    const both = withStockFromRack(problem, shop, view);
    if (both.faults.length > 0) throw contradictedOrder(text, given.subject, families, both.faults);
    return both;
  } finally {
    rack.close();
  }
}

/** Larger than any seed that tells one search from another needs to be. */
const LARGEST_SEED = 2 ** 31 - 1;

function readOptions(given: Given): PlanningLimits & { readonly paper?: PaperName } {
  const options = new OptionReader(given);
  const timeLimitSeconds = options.optional('time-limit', readSeconds);
  const seed = options.optional('seed', (text) => readCount(text, 0, LARGEST_SEED));
  const paper = options.optional('paper', (text) => readChoice(text, PAPER_NAMES));
  options.raiseFaults();
  return {
    ...(paper === undefined ? {} : { paper }),
    ...(timeLimitSeconds === undefined ? {} : { timeLimitSeconds }),
    ...(seed === undefined ? {} : { seed }),
  };
}

function readSeconds(text: string): Reading<number> {
  const seconds = readNumber(text);
  return seconds.ok && seconds.value <= 0 ? refuse({ code: 'must be above zero' }) : seconds;
}

function whereFilesLie(
  file: PlanFile,
  folder: string | undefined,
  order: string,
): readonly string[] {
  if (folder === undefined) {
    return [
      'For the job sheet, the cut maps and plan.json, name a folder:',
      `  stripwright plan ${quoted(order)} --out packet`,
    ];
  }
  const last = file.layouts.length;
  const maps = last === 1 ? cutMapName(1) : `${cutMapName(1)} to ${cutMapName(last)}`;
  const cutters = file.blanks.some(({ strip }) => strip !== undefined);
  return wrap(
    `Written to ${join(folder, '/')}: ${JOB_SHEET_NAME} to work by, ${JOB_SHEET_PDF_NAME} to ` +
      `print, ${PLAN_NAME}, ${counted(last, 'cut map')}, ${maps}, ` +
      `${cutters ? 'strip templates, ' : ''}and for spreadsheets ${CSV_NAMES.join(', ')}.`,
    '  ',
  );
}

/** The rack that an order names, its path as one would type it beside the order's. */
function rackOfOrder(file: string, { order }: SizedOrder): string | undefined {
  const { rack } = order.shop;
  if (rack === undefined) return undefined;
  return isAbsolute(rack) ? rack : join(dirname(file), rack);
}

function howToBook(path: string, rack: string | undefined): readonly string[] {
  const option = rack === undefined ? '' : ` --rack ${quoted(rack)}`;
  return ['When it is cut:', `  stripwright book ${quoted(path)}${option}`];
}
