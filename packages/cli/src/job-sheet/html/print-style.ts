/**
 * On paper, A4 (210 x 297 mm, ISO 216) or Letter (8 1/2 x 11 in): margins of 10 mm leave
 * 190 mm across and 259.4 mm down on both, which is TRUE_PAGE and a line of 4 mm above it.
 * Pictures keep the millimetres that their elements tell; nothing is fitted.
 *
 * @param caution for the foot of every page, where the browser prints margins
 */
export const PRINT_STYLE = (caution: string): string => `
@page { margin: 10mm;
  @bottom-left { content: "${caution}"; font: 7.5pt sans-serif; }
  @bottom-right { content: counter(page) " of " counter(pages); font: 7.5pt sans-serif; } }
@media print {
  html { font-size: 9.5pt; line-height: 1.35; }
  .skip, footer, #sheet\\.done, .true-words { display: none; }
  h1 { font-size: 22pt; }
  h2 { font-size: 14pt; }
  header { padding-bottom: 4mm; border-bottom: 1.2mm solid var(--ink); }
  .summary { display: flex; flex-wrap: wrap; gap: 0 6mm; padding-top: 1.5mm; }
  a { color: inherit; text-decoration: none; }
  nav { padding: 3mm 0; border-bottom: .3mm solid var(--ink); }
  nav h2 { font-size: 10pt; }
  .contents { columns: 3; column-gap: 6mm; counter-reset: stretch; }
  .contents > li { counter-increment: stretch; break-inside: avoid; }
  .contents > li > a { font-weight: 700; }
  .contents > li > a::before { content: counter(stretch) ' '; }
  .contents summary { display: none; }
  .contents details::details-content { display: block; content-visibility: visible; block-size: auto; }
  .contents ol { padding-left: 4mm; font-size: 8pt; }
  .contents ol a { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 1; overflow: hidden; }

  section { padding: 5mm 0 0; }
  section > * { margin-bottom: 2mm; }
  section > .head { display: flex; gap: 3mm; align-items: center; margin-bottom: 1.5mm; }
  .head > * { margin-bottom: 0; }
  .new-page { break-before: page; padding-top: 0; }
  .head, caption { break-after: avoid; break-inside: avoid; }
  .work { flex: none; padding: .3mm 3mm; border: .4mm solid var(--ink); background: none; color: var(--ink); clip-path: none; }
  .bare { padding: 0; }
  section.bare > .head { display: none; }
  p { orphans: 3; widows: 3; }
  thead { display: table-header-group; }
  tr, li, label, .caution, figure, .short, .together { break-inside: avoid; }
  th, td { padding: .4mm 1.5mm; }
  .caution { padding: 1.5mm 3mm 1.5mm 7mm; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .steps label { padding: 1.2mm 0; gap: 3mm; }
  .steps input { width: 5mm; height: 5mm; border-width: .45mm; border-radius: .6mm; }
  .steps input:checked::after { left: 1.3mm; top: 0; width: 1.5mm; height: 3mm; border-width: 0 .7mm .7mm 0; }
  .say { padding-top: .3mm; }

  .over { display: none; }
  .whole-page { break-before: page; break-after: page; }
  .whole-page .over { display: block; height: 4mm; overflow: hidden; font-size: 7.5pt; line-height: 3.6mm;
    white-space: nowrap; text-overflow: ellipsis; }
  .whole-page figcaption { display: none; }
  section > .whole-page { margin: 0; }
}
`;
