import type { OpenRunFile, PartDraft } from '../../../src/files/job-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import { holderAt, holdersOf, loopLists } from '../../job/part-edits.ts';
import { circlePath, loopPath, runPath } from './paths.ts';
import type { Looking } from './selection.ts';
import { samePlace } from './selection.ts';

interface Props {
  readonly part: PartDraft;
  readonly runs: readonly OpenRunFile[];
  readonly looking: Looking;
}

/** The part in its own drawing, for a plane in mm with y down; what is opened stands out. */
export function DrawnPart({ part, runs, looking: { opened, chosen } }: Props) {
  const mm = mmIn(part.units);
  const loop = chosen?.kind === 'loop' ? holderAt(part, chosen.place)?.loops[chosen.loop] : undefined;
  return (
    <g class="drawn-part" transform={`scale(${mm} ${-mm})`}>
      {loopLists.flatMap((list) =>
        holdersOf(part, list).map(({ id, loops }, index) => (
          <path
            key={`${list} ${id}`}
            class={`${list}${samePlace(opened, { list, index }) ? ' opened' : ''}`}
            d={loops.map(loopPath).join('')}
          />
        )),
      )}
      {(part.holes ?? []).map(({ id, at, diameter }) => (
        <path key={`hole ${id}`} class="hole" d={circlePath(at, (diameter ?? 8 / mm) / 2)} />
      ))}
      {runs.map((run, i) => (
        <path key={`run ${i}`} class="run" d={runPath(run.points)} />
      ))}
      {loop !== undefined && <path class="chosen" d={loopPath(loop)} />}
    </g>
  );
}
