import { csvFiles } from '../csv/csv-files.js';
import { drawCutMap } from '../cut-map/draw-cut-map.js';
import { jobSheetPage } from '../job-sheet/html/job-sheet-page.js';
import type { Planned } from '../job-sheet/job-sheet.js';
import type { PaperName } from '../pdf/paper.js';
import { writePdf } from '../pdf/write-pdf.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { templateFiles } from '../template/templates.js';
import { cutMaps } from './cut-maps.js';
import { cutMapName, JOB_SHEET_NAME, JOB_SHEET_PDF_NAME, PLAN_NAME } from './packet-names.js';
import { packetSheet } from './packet-sheet.js';
import type { PacketFile } from './whole-packet.js';

/**
 * All files of a plan's packet. The same plan and paper give the same bytes.
 * @param paper that the PDF is for
 */
export async function packetFiles(
  planned: Planned,
  paper: PaperName,
): Promise<readonly PacketFile[]> {
  const maps = cutMaps(planned.file).map((map, index) => ({
    name: cutMapName(index + 1),
    text: drawCutMap(map),
  }));
  const sheet = packetSheet(planned);
  return [
    ...maps,
    ...templateFiles(planned).map(({ name, svg }) => ({ name, text: svg })),
    ...csvFiles(planned),
    { name: JOB_SHEET_NAME, text: jobSheetPage(sheet) },
    { name: JOB_SHEET_PDF_NAME, text: await writePdf(sheet, paper) },
    { name: PLAN_NAME, text: planText(planned.file) },
  ];
}

/** A plan as its file. */
export function planText(file: PlanFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}
