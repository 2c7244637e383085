import { join, resolve } from 'node:path';
import type { Ask, Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import type { Reading } from '../faults/reading.js';
import { fileReason } from '../file-reason.js';
import { SHOP_UNITS, type ShopUnits } from '../length/unit.js';
import { readChoice } from '../order/fields.js';
import { quoted } from '../report/quoted.js';
import { readSheetAnswer, type SheetAnswer } from '../starter/sheet-answer.js';
import {
  isLargeEnough,
  LEAST_SHEET,
  type StarterAnswers,
  starterOrder,
  USUAL_SHEETS,
} from '../starter/starter-order.js';
import { type Command, type Given, textOption } from './command.js';

const NAME = 'order.yaml';
const USUAL_UNITS: ShopUnits = 'in';
const SHEET_EXAMPLE = '28 x 20 in at 7.40';

/** `stripwright new`: an order to start from. */
export const newOrder: Command = {
  name: 'new',
  subject: {
    name: 'folder',
    meaning: 'where to write order.yaml; here if left out',
    optional: true,
  },
  summary: 'write an order to start from, with comments',
  options: {
    units: textOption('units of the shop: in or mm'),
    sheet: {
      ...textOption(`a sheet that can be bought, such as "${SHEET_EXAMPLE}"; may be repeated`),
      array: true,
      nargs: 1,
    },
  },
  examples: [
    { command: 'stripwright new bakery', meaning: 'write bakery/order.yaml' },
    {
      command: 'stripwright new metric --units mm --sheet "700 x 500 mm at 8"',
      meaning: 'without being asked',
    },
  ],
  epilogue: ['On a terminal it asks for what is not given. No file is ever overwritten.'],
  async run(given, environment) {
    const { cwd, stdout } = environment;
    const folder = given.subject === '' ? '.' : given.subject;
    const shown = join(folder, NAME);
    const answers = await answersOf(given, environment);
    await create(resolve(cwd, folder), shown, starterOrder(answers), environment);
    const lines = [
      `Written: ${shown}`,
      'Change it to your order, then:',
      `  stripwright plan ${quoted(shown)} --out ${quoted(join(folder, 'packet'))}`,
    ];
    stdout.write(`${lines.join('\n')}\n`);
    return EXIT.done;
  },
};

/** What the options say, and the user where they say nothing. */
async function answersOf(given: Given, environment: Environment): Promise<StarterAnswers> {
  const faults: string[] = [];
  const read = <T>(option: string, text: string, reading: Reading<T>): readonly T[] => {
    if (reading.ok) return [reading.value];
    faults.push(complaintText(`--${option}`, reading.complaint, text));
    return [];
  };
  const unitsText = given.text('units');
  const told =
    unitsText === undefined ? [] : read('units', unitsText, readChoice(unitsText, SHOP_UNITS));
  const texts = given.texts('sheet');
  const sheetsIn = (units: ShopUnits) =>
    texts.flatMap((text) => read('sheet', text, readSheetAnswer(text, units)));
  const raiseFaults = () => {
    if (faults.length > 0) throw new CommandError(EXIT.badInput, faults.join('\n'));
  };
  // Before anything is asked: what no units make right needs no answers.
  sheetsIn(told[0] ?? 'mm');
  raiseFaults();

  const { ask } = environment;
  const units = told[0] ?? (ask === undefined ? USUAL_UNITS : await askUnits(ask, environment));
  const sheets = [...sheetsIn(units)];
  raiseFaults();
  if (sheets.length === 0 && ask !== undefined) {
    sheets.push(...(await askSheets(ask, units, environment)));
  }
  if (sheets.length === 0) sheets.push(...usualSheets(units));
  if (!sheets.some((sheet) => isLargeEnough(sheet, units))) {
    const complaint = { code: 'too small', limit: LEAST_SHEET[units] } as const;
    throw new CommandError(
      EXIT.badInput,
      complaintText('--sheet', complaint, sheets.map(({ sizeText }) => sizeText).join(', ')),
    );
  }
  return { units, sheets };
}

function usualSheets(units: ShopUnits): readonly SheetAnswer[] {
  return USUAL_SHEETS[units].flatMap((text) => {
    const sheet = readSheetAnswer(text, units);
    return sheet.ok ? [sheet.value] : [];
  });
}

async function askUnits(ask: Ask, { stderr }: Environment): Promise<ShopUnits> {
  for (;;) {
    const text = await answer(ask, `Units of the shop, in or mm (${USUAL_UNITS}): `);
    if (text === '') return USUAL_UNITS;
    const units = readChoice(text, SHOP_UNITS);
    if (units.ok) return units.value;
    stderr.write(`${complaintText('The answer', units.complaint, text)}\n`);
  }
}

/** None where the user names none. */
async function askSheets(
  ask: Ask,
  units: ShopUnits,
  { stderr }: Environment,
): Promise<readonly SheetAnswer[]> {
  const [example = SHEET_EXAMPLE] = USUAL_SHEETS[units];
  stderr.write(`Sheets that can be bought, size and price of one, such as ${example}.\n`);
  const sheets: SheetAnswer[] = [];
  for (;;) {
    const isEnough = sheets.some((sheet) => isLargeEnough(sheet, units));
    const or = isEnough ? 'no more' : 'the usual ones';
    const text = await answer(ask, `Sheet ${sheets.length + 1} (or Enter for ${or}): `);
    if (text === '') return isEnough ? sheets : [...sheets, ...usualSheets(units)];
    const sheet = readSheetAnswer(text, units);
    if (sheet.ok) sheets.push(sheet.value);
    else stderr.write(`${complaintText('The answer', sheet.complaint, text)}\n`);
  }
}

async function answer(ask: Ask, question: string): Promise<string> {
  const text = await ask(question);
  if (text !== undefined) return text.trim();
  throw new CommandError(EXIT.badInput, 'not all was answered, so nothing was written');
}

async function create(
  folder: string,
  shown: string,
  text: string,
  { files }: Environment,
): Promise<void> {
  try {
    await files.makeFolder(folder);
    await files.create(join(folder, NAME), text);
  } catch (error) {
    const isThere = error instanceof Error && 'code' in error && error.code === 'EEXIST';
    const reason = isThere
      ? 'a file of that name is there already; name another folder'
      : fileReason(error);
    if (reason === undefined) throw error;
    throw new CommandError(EXIT.badInput, `${shown}: cannot be written: ${reason}`);
  }
}
