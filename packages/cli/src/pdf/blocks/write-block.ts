import type { Block } from '../../job-sheet/job-sheet.js';
import type { Flow } from '../flow.js';
import { writeCaution } from './write-caution.js';
import { writePicture } from './write-picture.js';
import { writeSteps } from './write-steps.js';
import { writeTable } from './write-table.js';
import { writeWords } from './write-words.js';

/** Writes a block of any kind where the pages have come to. */
export function writeBlock(flow: Flow, block: Block): void {
  switch (block.kind) {
    case 'words':
      writeWords(flow, block);
      break;
    case 'caution':
      writeCaution(flow, block);
      break;
    case 'table':
      writeTable(flow, block);
      break;
    case 'steps':
      writeSteps(flow, block);
      break;
    case 'picture':
      writePicture(flow, block);
      break;
  }
}
