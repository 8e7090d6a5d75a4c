import { useState } from 'preact/hooks';
import type { PartDraft } from '../../../src/files/job-file.ts';
import { ChoiceField, NumberField, TextField } from '../../fields.tsx';
import { amended } from '../../job/part-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';

interface Props {
  readonly part: PartDraft;
  readonly change: (change: (part: PartDraft) => PartDraft) => void;
}

/** What is said of the part as a whole. From where it was seen is never chosen for its tracer. */
export function AboutPart({ part, change }: Props) {
  const set = (changes: Partial<PartDraft>) => change((old) => amended(old, changes));
  const { viewedFrom, material } = part;
  const lengths = useLengths(part.units);
  // it does not fold up under the finger that says it
  const [open] = useState(viewedFrom === undefined);
  const named = typeof material === 'string' ? material : '';
  const known = words.materialNames.some(([key]) => key === named);
  return (
    <details class="about" open={open}>
      <summary>{words.about}</summary>
      <fieldset class="seen">
        <legend>{words.viewedFrom}</legend>
        {(['face', 'back'] as const).map((side) => (
          <label key={side}>
            <input
              type="radio"
              name="viewed-from"
              checked={viewedFrom === side}
              onChange={() => set({ viewedFrom: side })}
            />
            <SideSeen side={side} />
            <span>{side === 'face' ? words.viewedFromFace : words.viewedFromBack}</span>
          </label>
        ))}
        {viewedFrom === undefined && <p class="said">{words.viewedFromAsked}</p>}
      </fieldset>
      <TextField label={words.name} value={part.name} onSet={(name) => name !== '' && set({ name })} />
      <ChoiceField
        label={words.units}
        value={part.units}
        choices={[
          ['mm', words.unitNames.mm],
          ['in', words.unitNames.in],
        ]}
        onSet={(units) => set({ units })}
      />
      <ChoiceField<string>
        label={words.material}
        value={named}
        choices={known ? words.materialNames : [...words.materialNames, [named, named]]}
        onSet={(name) => set({ material: name === '' ? undefined : name })}
      />
      <TextField
        label={words.castingNumber}
        value={part.castingNumber ?? ''}
        onSet={(number) => set({ castingNumber: number === '' ? undefined : number })}
      />
      {(['traceError', 'depthError'] as const).map((error) => (
        <NumberField
          key={error}
          label={words[error]}
          value={part[error]}
          figures={lengths}
          fits={(value) => value >= 0}
          onSet={(value) => set({ [error]: value })}
          onClear={() => set({ [error]: undefined })}
        />
      ))}
    </details>
  );
}

/** A casting from its side, its mating face thick and to the right, and the eye on the side it was seen from. */
function SideSeen({ side }: { readonly side: 'face' | 'back' }) {
  const eye = side === 'face' ? 'translate(84 24) scale(-1 1)' : 'translate(12 24)';
  const sight = side === 'face' ? 'M72 24H56' : 'M24 24H54';
  return (
    <svg viewBox="0 0 96 48" width="96" height="48" aria-hidden="true">
      <path class="casting" d="M34 14H46V6H52V42H46V34H34Z" />
      <path class="face" d="M52 4V44" />
      <path class="sight" d={sight} />
      <g transform={eye}>
        <path class="eye" d="M-8 0Q0 -8 8 0Q0 8 -8 0Z" />
        <circle class="pupil" r="2.5" cx="3" />
      </g>
    </svg>
  );
}
