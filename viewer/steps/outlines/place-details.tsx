import type { PartDraft } from '../../../src/model/job-file.ts';
import type { SectionFile } from '../../../src/model/part-file.ts';
import { type LoopHolder, type Place, renamed, withDetails, withoutPlace, withPart } from '../../job/part-edits.ts';
import { coordinate, outlineWords as words } from '../../words/outlines.ts';
import type { Looking } from './chosen.ts';
import { NumberField, numberIn, TextField } from './fields.tsx';
import type { Edit } from './touch.ts';

interface Props {
  readonly part: PartDraft;
  readonly file: string;
  readonly place: Place;
  readonly holder: LoopHolder &
    Partial<Pick<SectionFile, 'mayCut' | 'gotBy' | 'traceError'>> & { readonly keepWall?: number | undefined };
  readonly edit: Edit;
  readonly look: (changes: Partial<Looking>) => void;
}

/** What is said of a section, a hollow or a place not to cut. */
export function PlaceDetails({ part, file, place, holder, edit, look }: Props) {
  const set = (changes: Parameters<typeof withDetails>[2]): void =>
    edit((job) => withPart(job, file, (old) => withDetails(old, place, changes)));
  const shown = (value: number | undefined): string => (value === undefined ? '' : coordinate(value, part.units));
  const rename = (id: string): void => {
    const taken = id !== holder.id && (part[place.list] ?? []).some((other) => other.id === id);
    look({ said: taken ? words.nameTaken : '' });
    edit((job) => renamed(job, file, place, id));
  };
  const error = (
    <NumberField
      label={`${words.traceError} ${part.units}`}
      value={shown(holder.traceError)}
      fits={(value) => value >= 0}
      onSet={(traceError) => set({ traceError })}
      onClear={() => set({ traceError: undefined })}
    />
  );
  return (
    <div class="details">
      <TextField label={words.name} value={holder.id} onSet={rename} />
      <DepthFields
        key={`${place.list} ${holder.id}`}
        depth={holder.depth}
        shown={shown}
        set={(depth) => set({ depth })}
        look={look}
      />
      {place.list === 'sections' && (
        <>
          <label class="tick">
            <input
              type="checkbox"
              checked={holder.mayCut === true}
              onChange={({ currentTarget }) => set({ mayCut: currentTarget.checked || undefined })}
            />
            {words.mayCut}
          </label>
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
        </>
      )}
      {place.list === 'hollows' && (
        <>
          <NumberField
            label={`${words.keepWall} ${part.units}`}
            value={shown(holder.keepWall)}
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
        {words.removePlace(holder.id)}
      </button>
    </div>
  );
}

interface DepthProps {
  readonly depth: readonly [number, number] | undefined;
  readonly shown: (value: number | undefined) => string;
  readonly set: (depth: [number, number] | undefined) => void;
  readonly look: (changes: Partial<Looking>) => void;
}

/** Both numbers or none; taken over as soon as they make a range. */
function DepthFields({ depth, shown, set, look }: DepthProps) {
  const take = ({ currentTarget }: Event & { readonly currentTarget: HTMLElement }): void => {
    const texts = [...currentTarget.querySelectorAll('input')].map(({ value }) => value);
    const [from = null, to = null] = texts.map(numberIn);
    const none = texts.every((text) => text.trim() === '');
    const range = from !== null && to !== null && from < to;
    look({ said: none || range ? '' : words.depthWanted });
    if (none) set(undefined);
    else if (range) set([from, to]);
  };
  return (
    <div class="pair" onChange={take}>
      <label class="field">
        <span>{words.from}</span>
        <input
          type="text"
          inputMode="text"
          autocomplete="off"
          defaultValue={shown(depth?.[0])}
          key={`from ${depth?.[0]}`}
        />
      </label>
      <label class="field">
        <span>{words.to}</span>
        <input
          type="text"
          inputMode="text"
          autocomplete="off"
          defaultValue={shown(depth?.[1])}
          key={`to ${depth?.[1]}`}
        />
      </label>
    </div>
  );
}
