import { useState } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { GoFile } from '../../../src/files/trial-file.ts';
import type { App } from '../../app.ts';
import { ChoiceField, NumberField } from '../../fields.tsx';
import { type TookOff, withCut, withoutTook, withTook } from '../../job/trial-edits.ts';
import { useLengths } from '../../lengths.ts';
import { trialWords as words } from '../../words/trial.ts';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly cut: NonNullable<GoFile['cut']>;
  readonly index: number;
  /** The numbers in the marking-out table; none before it is known. */
  readonly places: readonly number[];
}

/** What had come off by a go: by the line it was cut to, or as it was measured. */
export function Cut({ app, job, cut, index, places }: Props) {
  const [meansMeasured, meanMeasured] = useState(false);
  const isMeasured = meansMeasured || typeof cut !== 'string';
  return (
    <>
      <ChoiceField
        label={words.cut}
        value={isMeasured || typeof cut !== 'string' ? 'measured' : cut}
        choices={words.cutKinds}
        onSet={(kind) => {
          meanMeasured(kind === 'measured');
          if (kind !== 'measured') app.job.edit((now) => withCut(now, index, kind));
        }}
      />
      {isMeasured ? <Measured app={app} job={job} cut={cut} index={index} places={places} /> : null}
    </>
  );
}

/** Place by place of the table. A place is put down once both of its figures are there. */
function Measured({ app, job, cut, index, places }: Props) {
  const [typed, type] = useState<Partial<TookOff>>({});
  const figures = useLengths(job.fit.units);
  const set = (more: Partial<TookOff>): void => {
    const { place, takeOff } = { ...typed, ...more };
    const isWhole = place !== undefined && takeOff !== undefined;
    type(isWhole ? {} : { ...typed, ...more });
    if (isWhole) app.job.edit((now) => withTook(now, index, { place, takeOff }));
  };
  return (
    <div class="took">
      {typeof cut === 'string' ? null : (
        <ul class="gaps">
          {cut.map(({ place, takeOff }) => (
            <li key={place}>
              {words.took(place, `${figures.text(takeOff)} ${figures.unit}`)}
              <button
                type="button"
                aria-label={words.removeTook(place)}
                onClick={() => app.job.edit((now) => withoutTook(now, index, place))}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
      <NumberField
        label={words.tookPlace}
        value={typed.place}
        fits={(place) => (places.length === 0 ? Number.isInteger(place) && place > 0 : places.includes(place))}
        wrong={words.noPlace(Math.max(0, ...places))}
        onSet={(place) => set({ place })}
      />
      <NumberField
        label={words.tookOff}
        figures={figures}
        value={typed.takeOff}
        fits={(takeOff) => takeOff >= 0}
        onSet={(takeOff) => set({ takeOff })}
      />
    </div>
  );
}
