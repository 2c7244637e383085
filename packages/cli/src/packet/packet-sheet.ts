import { cuttingListSections } from '../cutting-list/cutting-list-sections.js';
import type { JobSheet, Planned } from '../job-sheet/job-sheet.js';
import { jobSheet } from '../job-sheet/make-job-sheet.js';
import { quoteSections } from '../quote/quote-sections.js';
import { templates } from '../template/templates.js';

/** The job sheet of a plan with all that the packet has: cutting lists, templates, the quote. */
export function packetSheet(planned: Planned): JobSheet {
  return jobSheet(planned, {
    shear: cuttingListSections(planned),
    mark: templates(planned),
    charge: quoteSections(planned),
  });
}
