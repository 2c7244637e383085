import type { Words } from '../../job-sheet/job-sheet.js';
import type { Flow } from '../flow.js';
import { BODY } from '../look.js';

export function writeWords(flow: Flow, { text }: Words): void {
  flow.paragraph(text, BODY);
}
