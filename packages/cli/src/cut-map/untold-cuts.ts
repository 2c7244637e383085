import { type Area, type Block, NOTHING, paragraph, stack } from '../drawing/block.js';
import { inColumns } from './columns.js';
import type { NumberedCut } from './cut-badges.js';
import { equalSteps, stepWords } from './equal-steps.js';
import { TYPE } from './paper.js';

/** Sums of lengths may be off by so many millimetres. */
const SLACK = 0.01;

/**
 * Where the cuts lie whose numbers found no room on the sheet: a line for each strip that
 * they are made in, with cuts at equal steps counted together; or no more than their
 * numbers, where they are so many that the sheet would get too small.
 *
 * @param start where the metal starts once its edges are trimmed
 */
export function drawUntoldCuts(
  cuts: readonly NumberedCut[],
  start: number,
  telling: Telling,
  print: (millimetres: number) => string,
  area: Area,
): Block {
  if (cuts.length === 0) return NOTHING;
  if (telling === 'numbers') {
    const text = `Cuts without room for their number, which the cutting list tells of: ${numbersOf(cuts)}.`;
    return paragraph(area, 'untold-cuts', text, TYPE.small);
  }
  const heading =
    'Cuts without room for their number, by where each starts. ' +
    `From the ${start > 0 ? 'trimmed ' : ''}lower left corner first up, then right, or the other way:`;
  const lines = untoldCutLines(cuts, start, print);
  return stack(area, 0, [
    (place) => paragraph(place, 'untold-cuts', heading, TYPE.small),
    (place) => inColumns(lines, 'untold-cuts', place),
  ]);
}

/** Whether cuts are told with their places, or by their numbers alone. */
export type Telling = 'places' | 'numbers';

/** `3, 5 to 9` */
function numbersOf(cuts: readonly NumberedCut[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const number of cuts.map((cut) => cut.number).sort((one, other) => one - other)) {
    const last = runs.at(-1);
    if (last !== undefined && last.to === number - 1) last.to = number;
    else runs.push({ from: number, to: number });
  }
  return runs.map(({ from, to }) => (from === to ? `${from}` : `${from} to ${to}`)).join(', ');
}

export function untoldCutLines(
  cuts: readonly NumberedCut[],
  start: number,
  print: (millimetres: number) => string,
): readonly string[] {
  const ordered = [...cuts].sort((one, other) => one.number - other.number);
  const rows: { key: string; cuts: NumberedCut[] }[] = [];
  for (const cut of ordered) {
    const key = isLevel(cut) ? `right ${cut.x1}` : `up ${cut.y1}`;
    const last = rows.at(-1);
    if (last?.key === key) last.cuts.push(cut);
    else rows.push({ key, cuts: [cut] });
  }
  const strips = rows.flatMap(({ cuts: own }) => {
    const [first] = own;
    if (first === undefined) return [];
    const [base, way] = isLevel(first) ? [first.x1, 'right'] : [first.y1, 'up'];
    const told = own.map((cut) => ({ number: cut.number, at: Math.max(0, placeOf(cut) - start) }));
    return [{ from: Math.max(0, base - start), way, runs: runsOf(told) }];
  });
  return equalSteps(strips, isNext).map((group) => {
    const [first] = group;
    const last = group.at(-1);
    if (first === undefined || last === undefined) return '';
    const runs = first.runs.map((run, index) => {
      const end = (group.length > 1 ? last.runs[index] : run) ?? run;
      return runWords(run, end.last, print);
    });
    const from = stepWords(
      group.map((strip) => strip.from),
      first.way,
      print,
    );
    return `${from}: ${runs.join('; ')}.`;
  });
}

interface StripCuts {
  readonly from: number;
  readonly way: string;
  readonly runs: readonly Run[];
}

/** Whether a strip is cut like the one before it, and its numbers go on from there. */
function isNext(one: StripCuts, other: StripCuts): boolean {
  const [before, after] = [one.runs[0], other.runs[0]];
  return (
    one.way === other.way &&
    one.runs.length === 1 &&
    other.runs.length === 1 &&
    before !== undefined &&
    after !== undefined &&
    after.first.number === before.last.number + 1 &&
    after.last.number - after.first.number === before.last.number - before.first.number &&
    Math.abs(after.first.at - before.first.at) < SLACK &&
    Math.abs(after.step - before.step) < SLACK
  );
}

interface Told {
  readonly number: number;
  readonly at: number;
}
interface Run {
  readonly first: Told;
  readonly last: Told;
  readonly step: number;
}

/** Numbers in a row at equal steps; one of two is no run. */
function runsOf(cuts: readonly Told[]): readonly Run[] {
  const runs: Run[] = [];
  for (const cut of cuts) {
    const run = runs.at(-1);
    const follows = run !== undefined && cut.number === run.last.number + 1;
    const step = run === undefined ? 0 : cut.at - run.last.at;
    const isSingle = run?.first === run?.last;
    if (run !== undefined && follows && (isSingle || Math.abs(step - run.step) < SLACK)) {
      runs[runs.length - 1] = { first: run.first, last: cut, step };
    } else {
      runs.push({ first: cut, last: cut, step: 0 });
    }
  }
  return runs;
}

function runWords(
  { first, last, step }: Run,
  end: Told,
  print: (millimetres: number) => string,
): string {
  const numbers = first === end ? `cut ${first.number}` : `cuts ${first.number} to ${end.number}`;
  if (first === last) return `${numbers} at ${print(first.at)}`;
  return `${numbers} at ${print(first.at)} and each ${print(step)} on`;
}

const isLevel = ({ y1, y2 }: NumberedCut): boolean => y1 === y2;
const placeOf = (cut: NumberedCut): number => (isLevel(cut) ? cut.y1 : cut.x1);
