import { run, temporaryFolder } from '../../environment.test.support.js';
import { shellWords } from '../../shell-words.test.support.js';

/** A shop with a rack of its own. */
export interface Shop {
  readonly cwd: string;
  /** Runs `stripwright rack` with the rest of a command line. */
  rack(line: string): ReturnType<typeof run>;
  /** The same, for what must go well. @returns what it printed */
  good(line: string): Promise<string>;
  /** The same, for what must be refused. @returns what it said */
  bad(line: string): Promise<string>;
}

export function newShop(): Shop {
  const cwd = temporaryFolder();
  const rack = (line: string) => run(['rack', ...shellWords(line)], { cwd });
  return {
    cwd,
    rack,
    async good(line) {
      const { exitCode, stdout, stderr } = await rack(line);
      if (exitCode !== 0 || stderr !== '') throw new Error(`${line}: ${exitCode} ${stderr}`);
      return stdout;
    },
    async bad(line) {
      const { exitCode, stdout, stderr } = await rack(line);
      if (exitCode !== 2 || stdout !== '') throw new Error(`${line}: ${exitCode} ${stdout}`);
      return stderr;
    },
  };
}

/** The shop of the examples: marks CCY, CDV, CER of offcuts and CFN of sheets. */
export async function shopWithMetal(): Promise<Shop> {
  const shop = newShop();
  for (const line of [
    'add "17 1/2 x 6 in" --thickness 0.011in --rolled along --place "left rack" --from "spring order" --value 1.20',
    'add "300 x 90 mm" --metal copper --count 2',
    'receive "28 x 20 in" --count 10 --name "Tinplate 20 x 28" --thickness 0.011in --value 6.10',
  ]) {
    await shop.good(line);
  }
  return shop;
}
