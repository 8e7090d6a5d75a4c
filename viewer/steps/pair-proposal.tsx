import { useEffect, useState } from 'preact/hooks';
import type { JobFile } from '../../src/files/job-file.ts';
import { fineLength } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';
import { turnText } from '../../src/words/units.ts';
import type { App } from '../app.ts';
import { Group } from '../fields.tsx';
import type { PairOff, ProposedPairs } from '../heavy/pair-holes.ts';
import { words } from '../words.ts';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly units: Units;
}

/** The pairs of holes that fit best, looked for where nothing is paired yet or when asked; taken only by hand. */
export function PairProposal({ app, job, units }: Props) {
  const { fit, parts } = job;
  const [found, setFound] = useState<ProposedPairs | 'none' | null>(null);
  const [fixed, moving] = [parts[fit.fixed], parts[fit.moving]];
  const canTell = [fixed, moving].every((part) => part?.viewedFrom !== undefined && (part.holes ?? []).length >= 2);
  const isPaired = (fit.dowels ?? []).length + (fit.bolts ?? []).length > 0;
  const find = (): (() => void) => {
    let wanted = true;
    app.answers.pairedHoles(job).then((proposed) => wanted && setFound(proposed ?? 'none'));
    return () => {
      wanted = false;
    };
  };
  useEffect(() => {
    setFound(null);
    return canTell && !isPaired ? find() : undefined;
  }, [fixed, moving, isPaired]);
  if (!canTell) return null;
  if (found === null)
    return (
      <button type="button" onClick={find}>
        {words.findPairs}
      </button>
    );
  if (found === 'none') return <p>{words.noPairs}</p>;
  const take = (): void => {
    const named = (pairs: readonly PairOff[]) => pairs.map(({ pair: [a, b] }): [string, string] => [a, b]);
    app.job.edit((now) => ({ ...now, fit: { ...now.fit, dowels: named(found.dowels), bolts: named(found.bolts) } }));
    setFound(null);
  };
  return (
    <Group name={words.foundPairs}>
      <ul>
        {[...found.dowels, ...found.bolts].map(({ pair: [a, b], offMm }) => (
          <li key={a}>{words.pairOff(a, b, fineLength(offMm, units))}</li>
        ))}
      </ul>
      <p>{words.pairsGive(fineLength(found.largestMm, units), fineLength(found.rmsMm, units))}</p>
      {found.otherTurnsRad.length > 0 && <p>{words.fitsTurnedToo(found.otherTurnsRad.map(turnText))}</p>}
      {found.fitsMirrored && <p>{words.fitsMirrored}</p>}
      <button type="button" onClick={take}>
        {words.takePairs}
      </button>
      <button type="button" onClick={() => setFound(null)}>
        {words.leavePairs}
      </button>
    </Group>
  );
}
