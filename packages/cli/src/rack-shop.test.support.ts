import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { run, temporaryFolder } from './environment.test.support.js';
import { altered } from './order/small-order.test.support.js';
import type { NewStock, Rack } from './rack/rack.js';
import { sqliteRacks } from './rack/sqlite-racks.js';

/** The small order without sheets on hand, which the rack counts. */
export const RACK_ORDER = altered('    on hand: 1\n', '');

/** Where the usual rack lies in a shop of tests. */
export const USUAL = join('usual', 'rack.sqlite');

/** An offcut of tinplate, in inches. */
export const offcut = (length: number, width: number, told: Partial<NewStock> = {}): NewStock => ({
  kind: 'offcut',
  name: '',
  length: length * 25.4,
  width: width * 25.4,
  metal: 'tinplate',
  place: 'left rack',
  origin: 'spring order',
  count: 1,
  ...told,
});

/** A folder with an order and a rack, and the command in it. */
export function rackShop(order = RACK_ORDER) {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'order.yaml'), order);
  /** Works on a rack from outside the command. */
  const onRack = <T>(work: (rack: Rack) => T, file = USUAL, id = 'rack of tests'): T => {
    mkdirSync(dirname(join(cwd, file)), { recursive: true });
    const surroundings = { now: () => '2026-03-01T09:00:00.000Z', newId: () => id };
    const rack = sqliteRacks(surroundings).open(join(cwd, file));
    try {
      return work(rack);
    } finally {
      rack.close();
    }
  };
  return {
    cwd,
    onRack,
    write: (name: string, text: string) => writeFileSync(join(cwd, name), text),
    /** Puts things on a rack; their marks. */
    stock: (things: readonly NewStock[], file = USUAL, id?: string) =>
      onRack((rack) => rack.add(things), file, id),
    /** The marks of all that is free on the rack, with how many there are. */
    free: (file = USUAL) =>
      onRack(
        (rack) =>
          rack.list({ free: true }).map(({ mark, count, promised }) => [mark, count - promised]),
        file,
      ),
    run: (words: string) =>
      run(
        words.split(' ').filter((word) => word !== ''),
        { cwd },
      ),
  };
}

export type RackShop = ReturnType<typeof rackShop>;

/** Runs a command that must end well, without a word on stderr; what it prints. */
export async function good(shop: RackShop, words: string): Promise<string> {
  const { exitCode, stdout, stderr } = await shop.run(words);
  if (exitCode !== 0 || stderr !== '') throw new Error(`${words}: ${exitCode}: ${stderr}`);
  return stdout;
}

/** Runs a command that must be refused with exit code 2; why. */
export async function refusal(shop: RackShop, words: string): Promise<string> {
  const { exitCode, stdout, stderr } = await shop.run(words);
  if (exitCode !== 2 || stdout !== '') throw new Error(`${words}: ${exitCode}: ${stdout}`);
  return stderr;
}
