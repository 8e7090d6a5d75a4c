import { useState } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import type { App } from '../../app.ts';
import { ChoiceField, Group, NumberField } from '../../fields.tsx';
import { type FaceGap, withFace, withoutFace } from '../../job/trial-edits.ts';
import { useLengths } from '../../lengths.ts';
import { trialWords as words } from '../../words/trial.ts';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly index: number;
  readonly faces: readonly FaceGap[];
  readonly joint: Joint | null;
}

/** A feeler gauge between the faces, beside the dowels and bolts: where the hand finds its way in. */
export function Faces({ app, job: { fit }, index, faces, joint }: Props) {
  const [chosen, choose] = useState('');
  const figures = useLengths(fit.units);
  const holes = [...(joint?.fit.dowels ?? []), ...(joint?.fit.bolts ?? [])].map(({ fixed: { id, at } }) => ({
    id,
    at: [at.x, at.y].map((mm) => Number((mm / mmIn(fit.units)).toFixed(4))) as [number, number],
  }));
  const nameOf = ({ at }: FaceGap): string => holes.find((hole) => hole.at.join() === at.join())?.id ?? at.join(' / ');
  const hole = holes.find(({ id }) => id === chosen);
  return (
    <Group name={words.faces}>
      {faces.length === 0 ? null : (
        <ul class="gaps">
          {faces.map((face, k) => (
            <li key={face.at.join()}>
              {words.faceGap(nameOf(face), `${figures.text(face.gap)} ${figures.unit}`)}
              <button
                type="button"
                aria-label={words.removeFace(nameOf(face))}
                onClick={() => app.job.edit((now) => withoutFace(now, index, k))}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
      {holes.length === 0 ? null : (
        <ChoiceField
          label={words.faceAt}
          value={chosen}
          choices={holes.map(({ id }) => [id, id] as const)}
          onSet={choose}
        />
      )}
      {hole === undefined ? null : (
        <NumberField
          label={words.gap}
          figures={figures}
          value={undefined}
          fits={(gap) => gap >= 0}
          onSet={(gap) => {
            choose('');
            app.job.edit((now) => withFace(now, index, { at: hole.at, gap }));
          }}
        />
      )}
    </Group>
  );
}
