import type { HollowFacts, NamedDoNotCut, SectionFacts } from '../drawing.ts';
import type { Cells } from './csv-cells.ts';

const answers = ['yes', 'no'] as const;

/** What a cell answers; null where it is blank. */
export function yesOrNo(cells: Cells, column: string): boolean | null {
  const answer = cells.word(column, answers);
  return answer === null ? null : answer === 'yes';
}

export function sectionFacts(rows: readonly Cells[]): SectionFacts {
  keptBlank(rows, ['keep wall', 'may break'], 'a blank cell: only holes and hollows have it');
  return {
    depth: depthIn(rows),
    traceError: agreed(rows, 'error', (cells) => cells.number('error')),
    gotBy: agreed(rows, 'got by', (cells) => cells.text('got by')),
    mayCut: agreed(rows, 'may cut', (cells) => yesOrNo(cells, 'may cut')),
    note: agreed(rows, 'note', (cells) => cells.text('note')),
  };
}

export function hollowFacts(rows: readonly Cells[]): HollowFacts {
  keptBlank(rows, ['may cut', 'may break', 'got by', 'note'], 'a blank cell: a hollow has none');
  return {
    depth: depthIn(rows),
    keepWall: agreed(rows, 'keep wall', (cells) => cells.number('keep wall')),
    traceError: agreed(rows, 'error', (cells) => cells.number('error')),
  };
}

export function doNotCutDepth(rows: readonly Cells[]): NamedDoNotCut['depth'] {
  const none = ['may cut', 'may break', 'keep wall', 'error', 'got by', 'note'];
  keptBlank(rows, none, 'a blank cell: a region not to be cut has none');
  return depthIn(rows);
}

/** The depth that rows of one thing state, both ends of it or neither. */
export function depthIn(rows: readonly Cells[]): readonly [from: number, to: number] | null {
  const from = agreed(rows, 'depth from', (cells) => cells.number('depth from'));
  const to = agreed(rows, 'depth to', (cells) => cells.number('depth to'));
  if ((from === null) !== (to === null)) rows[0]?.refuse('depth', 'one end of a depth', 'depth from and depth to');
  return from === null || to === null ? null : [from, to];
}

/** What would be lost without a word is refused. */
function keptBlank(rows: readonly Cells[], columns: readonly string[], expected: string): void {
  for (const cells of rows) {
    for (const column of columns) {
      const said = cells.text(column);
      if (said !== null) cells.refuse(column, said, expected);
    }
  }
}

/** What the rows of one thing say in one column; a row that says something else than the one before is refused. */
function agreed<T>(rows: readonly Cells[], column: string, read: (cells: Cells) => T | null): T | null {
  let said: T | null = null;
  for (const cells of rows) {
    const value = read(cells);
    if (value === null || value === said) continue;
    if (said !== null) cells.refuse(column, inTable(value), `${inTable(said)}, as above of the same, or a blank cell`);
    said ??= value;
  }
  return said;
}

const inTable = (value: unknown): string => (typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
