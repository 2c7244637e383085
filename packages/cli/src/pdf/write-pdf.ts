import PDFDocument from 'pdfkit';
import { INK } from '../drawing/ink.js';
import { oneLine } from '../drawing/measure-text.js';
import type { JobSheet } from '../job-sheet/job-sheet.js';
import { writeBlock } from './blocks/write-block.js';
import { cautionHeight } from './blocks/write-caution.js';
import { Flow, lineHeight } from './flow.js';
import { readFonts } from './fonts.js';
import { BODY, GAP, SECTION, SMALL, TITLE } from './look.js';
import { PAPERS, type PaperName } from './paper.js';
import { TextPen } from './pen.js';

/** A title at the foot of a page, with nothing below it or only the caution, would be lost. */
const BELOW_TITLE = 24;
const FOOT_LINE = 7.5;
const NO_DATE = new Date(0);

/**
 * The whole job sheet as one PDF. True-scale pictures come out at exactly their size. The same
 * sheet gives the same bytes: no dates, no random marks.
 */
export async function writePdf(sheet: JobSheet, paper: PaperName): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    displayTitle: true,
    lang: 'en',
    // The font is chosen for each text; none is set before.
    font: '',
    // The file's own mark is made from what is told here.
    info: { Title: oneLine(sheet.title), Keywords: oneLine(sheet.key), CreationDate: NO_DATE },
  });
  // The library must have a date, but what cannot be listed it does not write.
  Object.defineProperty(document.info, 'CreationDate', { value: NO_DATE, enumerable: false });
  document.info.Producer = 'Stripwright';
  document.info.Creator = 'Stripwright';
  const chunks: Uint8Array[] = [];
  const written = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
  const flow = new Flow(document, new TextPen(document, readFonts()), PAPERS[paper]);
  writeSheet(flow, sheet);
  numberPages(flow, sheet.title);
  document.end();
  return written;
}

function writeSheet(flow: Flow, { title, summary, sections }: JobSheet): void {
  flow.paragraph(title, TITLE);
  flow.gap(GAP / 2);
  for (const line of summary) flow.paragraph(line, BODY);
  flow.gap(GAP);
  for (const section of sections) {
    if (section.onNewPage && !flow.atTop) flow.newPage();
    flow.gap(GAP);
    const [first] = section.blocks;
    const caution = first?.kind === 'caution' ? cautionHeight(flow, first) : 0;
    flow.need(lineHeight(SECTION) + caution + BELOW_TITLE);
    flow.document.outline.addItem(oneLine(section.title));
    flow.paragraph(section.title, SECTION);
    flow.gap(GAP / 2);
    for (const block of section.blocks) {
      writeBlock(flow, block);
      flow.gap(block.kind === 'words' ? GAP / 3 : GAP);
    }
  }
}

/** The name of the order and the number of each page, below what it holds. */
function numberPages(flow: Flow, title: string): void {
  const { document, pen, paper, left, width } = flow;
  const { count } = document.bufferedPageRange();
  const top = paper.height - FOOT_LINE - lineHeight(SMALL);
  for (let page = 0; page < count; page++) {
    document.switchToPage(page);
    const number = `page ${page + 1} of ${count}`;
    const wide = pen.width(number, SMALL.size);
    const name = flow.lines(title, width - wide - GAP, SMALL)[0] ?? '';
    flow.put(name, left, top, { ...SMALL, colour: INK.soft });
    flow.put(number, left + width - wide, top, { ...SMALL, colour: INK.soft });
  }
}
