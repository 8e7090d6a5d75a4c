import { useState } from 'preact/hooks';
import { ChoiceField } from '../../fields.tsx';
import { type Feature, featureLoop } from '../../job/feature-loops.ts';
import { type Place, withHole, withLoop, withPart } from '../../job/part-edits.ts';
import { numberIn, useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { MeasureForm } from './measure-form.tsx';
import type { TraceContext } from './touch.ts';

type Kind = keyof typeof words.featureKinds;

const fields: Readonly<Record<Kind, readonly string[]>> = {
  rib: ['x', 'y', words.endX, words.endY, words.width, words.endRadius, words.tipWidth],
  boss: ['x', 'y', words.diameter],
  pad: ['x', 'y', words.width, words.height, words.angle],
  hole: ['x', 'y', words.diameter],
};

/** Ribs, bosses, pads and holes from the figures of caliper and depth gauge. */
export function FeatureForm({
  context: { sheet, edit },
  place,
}: {
  readonly context: TraceContext;
  readonly place: Place;
}) {
  const [kind, setKind] = useState<Kind>('rib');
  const { read, unit } = useLengths(sheet.job.parts[sheet.file]?.units ?? 'mm');
  const add = (texts: readonly string[]): string | null => {
    const numbers = texts.map((text, i) => (fields[kind][i] === words.angle ? numberIn(text) : read(text)));
    if (kind === 'hole') {
      const [x = null, y = null, diameter] = numbers;
      if (x === null || y === null) return words.numberWanted;
      edit((job) => withPart(job, sheet.file, (part) => withHole(part, 'bore', [x, y], diameter ?? undefined)));
      return null;
    }
    const feature = featureOf(kind, numbers);
    if (feature === null) return words.numberWanted;
    const loop = featureLoop(feature);
    if (loop === null) return words.noFeature;
    edit((job) => withPart(job, sheet.file, (part) => withLoop(part, place, loop)));
    return null;
  };
  return (
    <>
      <ChoiceField
        label={words.feature}
        value={kind}
        choices={Object.entries(words.featureKinds) as [Kind, string][]}
        onSet={setKind}
      />
      {kind === 'hole' && <p class="hint">{words.whatAHoleIs}</p>}
      <MeasureForm key={kind} fields={fields[kind]} unit={unit} button={words.add} add={add} />
    </>
  );
}

/** A radius or an angle that is not said is 0; every other figure is wanted. */
function featureOf(kind: Exclude<Kind, 'hole'>, numbers: readonly (number | null)[]): Feature | null {
  const [x = null, y = null, a = null, b = null, c = null, d = null, tipWidth = c] = numbers;
  if (x === null || y === null || a === null) return null;
  if (kind === 'boss') return { kind, centre: [x, y], diameter: a };
  if (b === null) return null;
  if (kind === 'pad') return { kind, centre: [x, y], width: a, height: b, angleDeg: c ?? 0 };
  return c === null ? null : { kind, from: [x, y], to: [a, b], width: c, tipWidth: tipWidth ?? c, endRadius: d ?? 0 };
}
