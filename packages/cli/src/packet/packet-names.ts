/** The plan, which tells a packet from any other folder. */
export const PLAN_NAME = 'plan.json';
export const JOB_SHEET_NAME = 'job-sheet.html';
export const JOB_SHEET_PDF_NAME = 'job-sheet.pdf';
export const cutMapName = (number: number) => `cut-map-${number}.svg`;

/**
 * The names of all files that a packet may hold. One that an older packet left behind and
 * the newer one does not have is taken away, lest it be worked by. A new kind of file needs
 * a line here.
 */
const OWN_NAMES: readonly RegExp[] = [
  /^plan\.json$/,
  /^cut-map-\d+\.svg$/,
  /^template-\d+(?:-\d+)?\.svg$/,
  /^job-sheet\.(?:html|pdf)$/,
  /^(?:pieces|cuts|purchases|quote)\.csv$/,
];

export function isOwnName(name: string): boolean {
  return OWN_NAMES.some((pattern) => pattern.test(name));
}
