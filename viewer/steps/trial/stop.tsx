import { useState } from 'preact/hooks';
import type { PositionFile } from '../../../src/files/fit-file.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { ChoiceField, NumberField } from '../../fields.tsx';
import { amended } from '../../job/part-edits.ts';
import type { Stopped } from '../../job/trial-edits.ts';
import { plainFigures, useLengths } from '../../lengths.ts';
import { trialWords as words } from '../../words/trial.ts';

interface Props {
  readonly job: JobFile;
  readonly stopped: Stopped | undefined;
  readonly dowels: Joint['fit']['dowels'];
  readonly onSet: (stopped: Stopped | undefined) => void;
}

const degrees = plainFigures('°');
const byDowel = 'dowel ';

const kindOf = (stopped: Stopped | undefined): string => {
  if (stopped === undefined) return 'unsaid';
  if (stopped === 'home') return 'home';
  return 'dowel' in stopped ? `${byDowel}${stopped.dowel}` : 'at';
};

/** Where it stopped. What is told by figures is put down once all of them are there. */
export function Stop({ job: { fit }, stopped, dowels, onSet }: Props) {
  const [meant, mean] = useState<string | null>(null);
  const [typed, type] = useState<PositionFile>({});
  const lengths = useLengths(fit.units);
  const kind = meant ?? kindOf(stopped);
  const choose = (next: string): void => {
    type({});
    const isSaid = next === 'unsaid' || next === 'home';
    mean(isSaid || next === kindOf(stopped) ? null : next);
    if (isSaid && next !== kindOf(stopped)) onSet(next === 'home' ? 'home' : undefined);
  };
  const set = (next: Stopped): void => {
    mean(null);
    type({});
    onSet(next);
  };
  const at = stopped !== undefined && stopped !== 'home' && !('dowel' in stopped) && meant === null ? stopped : typed;
  const setAt = (key: 'turn' | 'standOff', value: number): void => {
    const next = { ...at, [key]: value };
    if (next.turn !== undefined && next.standOff !== undefined) set(next);
    else type(next);
  };
  const dowel = kind.startsWith(byDowel) ? kind.slice(byDowel.length) : null;
  const onDowel = stopped !== undefined && stopped !== 'home' && 'dowel' in stopped ? stopped : null;
  return (
    <>
      <ChoiceField
        label={words.stopped}
        value={kind}
        choices={[
          ...words.stops,
          ...dowels.map(({ fixed: { id } }) => [`${byDowel}${id}`, words.stopsByDowel(id)] as const),
        ]}
        onSet={choose}
      />
      {kind !== 'at' ? null : (
        <>
          <NumberField label={words.turn} figures={degrees} value={at.turn} onSet={(turn) => setAt('turn', turn)} />
          <NumberField
            label={words.standOff}
            figures={lengths}
            value={at.standOff}
            fits={(value) => value >= 0}
            onSet={(standOff) => setAt('standOff', standOff)}
          />
        </>
      )}
      {dowel === null ? null : (
        <NumberField
          label={words.fromHole(dowel)}
          figures={lengths}
          value={onDowel?.dowel === dowel ? onDowel.fromHole : undefined}
          fits={(value) => value >= 0}
          onSet={(fromHole) => set(onDowel?.dowel === dowel ? amended(onDowel, { fromHole }) : { dowel, fromHole })}
        />
      )}
    </>
  );
}
