import type { PartDraft } from '../../../src/files/job-file.ts';
import type { SectionFile } from '../../../src/files/part-file.ts';
import { NumberField, TextField } from '../../fields.tsx';
import {
  holdersOf,
  type LoopHolder,
  type Place,
  renamed,
  withDetails,
  withoutPlace,
  withPart,
} from '../../job/part-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { DepthFields } from './depth-fields.tsx';
import type { Looking } from './selection.ts';
import type { Edit } from './touch.ts';

interface Props {
  readonly part: PartDraft;
  readonly file: string;
  readonly place: Place;
  readonly holder: LoopHolder &
    Partial<Pick<SectionFile, 'gotBy' | 'traceError' | 'depthError' | 'note'>> & {
      readonly keepWall?: number | undefined;
    };
  readonly edit: Edit;
  readonly look: (changes: Partial<Looking>) => void;
}

/** What is said of a section, a hollow or a place not to cut. */
export function PlaceDetails({ part, file, place, holder, edit, look }: Props) {
  const set = (changes: Parameters<typeof withDetails>[2]): void =>
    edit((job) => withPart(job, file, (old) => withDetails(old, place, changes)));
  const figures = useLengths(part.units);
  const rename = (id: string): void => {
    const taken = id !== holder.id && holdersOf(part, place.list).some((other) => other.id === id);
    look({ said: taken ? words.nameTaken : '' });
    edit((job) => renamed(job, file, place, id));
  };
  const error = (
    <NumberField
      label={words.traceError}
      value={holder.traceError}
      figures={figures}
      fits={(value) => value >= 0}
      onSet={(traceError) => set({ traceError })}
      onClear={() => set({ traceError: undefined })}
    />
  );
  return (
    <div class="details">
      {place.list !== 'traced' && <TextField label={words.name} value={holder.id} onSet={rename} />}
      <DepthFields
        key={`${place.list} ${holder.id}`}
        depth={holder.depth}
        figures={figures}
        set={(depth) => set({ depth })}
        look={look}
      />
      {place.list === 'sections' && (
        <>
          <TextField
            label={words.gotBy}
            value={holder.gotBy ?? ''}
            list="methods"
            onSet={(gotBy) => set({ gotBy: gotBy || undefined })}
          />
          <datalist id="methods">
            {words.methods.map((method) => (
              <option key={method} value={method} />
            ))}
          </datalist>
          {error}
          <NumberField
            label={words.depthError}
            value={holder.depthError}
            figures={figures}
            fits={(value) => value >= 0}
            onSet={(depthError) => set({ depthError })}
            onClear={() => set({ depthError: undefined })}
          />
          <TextField label={words.note} value={holder.note ?? ''} onSet={(note) => set({ note: note || undefined })} />
        </>
      )}
      {place.list === 'hollows' && (
        <>
          <NumberField
            label={words.keepWall}
            value={holder.keepWall}
            figures={figures}
            fits={(value) => value >= 0}
            onSet={(keepWall) => set({ keepWall })}
            onClear={() => set({ keepWall: undefined })}
          />
          {error}
        </>
      )}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          edit((job) => withoutPlace(job, file, place));
          look({ opened: null, chosen: null, tool: { kind: 'choose' } });
        }}
      >
        {words.removePlace(place.list === 'traced' ? words.tracedHere : holder.id)}
      </button>
    </div>
  );
}
