import type { Counted, Figures } from './figures.ts';

const columns: readonly (readonly [head: string, cell: (row: Figures) => string])[] = [
  ['strategy', ({ strategy }) => strategy],
  ['error', ({ traceErrorMm }) => traceErrorMm.toFixed(1)],
  ['runs', ({ runs }) => String(runs)],
  ['refused', ({ refused }) => percent(refused)],
  ['gave up', ({ gaveUp }) => percent(gaveUp)],
  ['goes', ({ medianGoes }) => String(medianGoes)],
  ['95 %', ({ goes95 }) => String(goes95)],
  ['home', ({ medianGoesHome }) => String(medianGoesHome)],
  ['95 %', ({ goesHome95 }) => String(goesHome95)],
  ['home first', ({ homeOnFirst }) => percent(homeOnFirst)],
  ['done first', ({ doneOnFirst }) => percent(doneOnFirst)],
  ['metal/least', ({ medianOverLeast }) => medianOverLeast.toFixed(2)],
  ['wall broken', ({ wallsBroken }) => percent(wallsBroken)],
  ['at line', ({ wallsBrokenAtLine }) => percent(wallsBrokenAtLine)],
  ['holds, touched', ({ saidHoldsTouched }) => counted(saidHoldsTouched)],
  ['clear at worst, touched', ({ clearAtWorstTouched }) => counted(clearAtWorstTouched)],
  ['of those traced as stated', ({ soundAtWorstTouched }) => counted(soundAtWorstTouched)],
];

/** Figures as a table for a terminal. */
export function tableOf(figures: readonly Figures[]): string {
  const rows = [columns.map(([head]) => head), ...figures.map((row) => columns.map(([, cell]) => cell(row)))];
  const widths = columns.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const counted = ({ hits, of, atMost }: Counted): string =>
  of === 0 ? '-' : `${hits} of ${of}, at most ${percent(atMost)}`;
