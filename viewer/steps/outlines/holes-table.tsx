import type { HoleFile } from '../../../src/model/part-file.ts';
import { holeRenamed, withHole, withHoleChanged, withoutHole, withPart } from '../../job/part-edits.ts';
import { coordinate, outlineWords as words } from '../../words/outlines.ts';
import { ChoiceField, NumberField, numberIn, TextField } from './fields.tsx';
import { MeasureForm } from './measure-form.tsx';
import type { Bench } from './touch.ts';

const kinds = Object.entries(words.holeKinds) as [HoleFile['kind'], string][];

/** Every hole as a line, the chosen one with its figures to type over. */
export function HolesTable({ bench }: { readonly bench: Bench }) {
  const { sheet, looking, look, edit } = bench;
  const part = sheet.job.parts[sheet.file];
  const { tool, chosen } = looking;
  const add = (texts: readonly string[]): string | null => {
    const [x = null, y = null, diameter] = texts.map(numberIn);
    if (x === null || y === null) return words.numberWanted;
    edit((job) => withPart(job, sheet.file, (old) => withHole(old, 'dowel', [x, y], diameter ?? undefined)));
    look({ chosen: { kind: 'hole', hole: part?.holes?.length ?? 0 }, said: '' });
    return null;
  };
  return (
    <div class="details">
      <ul class="places inner">
        {(part?.holes ?? []).map((hole, i) => {
          const isChosen = chosen?.kind === 'hole' && chosen.hole === i;
          return (
            <li key={`hole ${i}`}>
              <button
                type="button"
                class="line"
                aria-expanded={isChosen}
                onClick={() => look({ chosen: isChosen ? null : { kind: 'hole', hole: i }, said: '' })}
              >
                {words.holeLine(hole.id, words.holeKinds[hole.kind], sizeOf(hole, part?.units ?? 'mm'))}
              </button>
              {isChosen && <HoleFields bench={bench} hole={hole} index={i} />}
            </li>
          );
        })}
      </ul>
      <MeasureForm fields={['x', 'y', words.diameter]} button={words.addHole} add={add} />
      <div class="row">
        <button
          type="button"
          aria-pressed={tool.kind === 'hole'}
          onClick={() => look({ tool: { kind: tool.kind === 'hole' ? 'choose' : 'hole' }, chosen: null })}
        >
          {words.tapHole}
        </button>
      </div>
      {tool.kind === 'hole' && <p class="hint">{words.addHoleHint}</p>}
    </div>
  );
}

const sizeOf = ({ thread, diameter }: HoleFile, units: 'mm' | 'in'): string =>
  thread ?? (diameter === undefined ? '' : words.round(coordinate(diameter, units)));

interface Props {
  readonly bench: Bench;
  readonly hole: HoleFile;
  readonly index: number;
}

function HoleFields({ bench: { sheet, look, edit }, hole, index }: Props) {
  const part = sheet.job.parts[sheet.file];
  const units = part?.units ?? 'mm';
  const set = (changes: Partial<Omit<HoleFile, 'id'>>): void =>
    edit((job) => withPart(job, sheet.file, (old) => withHoleChanged(old, index, changes)));
  const shown = (value: number | undefined): string => (value === undefined ? '' : coordinate(value, units));
  const rename = (id: string): void => {
    const taken = (part?.holes ?? []).some((other, i) => i !== index && other.id === id);
    look({ said: taken ? words.nameTaken : '' });
    edit((job) => holeRenamed(job, sheet.file, index, id));
  };
  const [x, y] = hole.at;
  return (
    <>
      <div class="pair">
        <TextField label={words.holeName} value={hole.id} onSet={rename} />
        <ChoiceField label={words.holeKind} value={hole.kind} choices={kinds} onSet={(kind) => set({ kind })} />
        <NumberField label={`x ${units}`} value={shown(x)} onSet={(next) => set({ at: [next, y] })} />
        <NumberField label={`y ${units}`} value={shown(y)} onSet={(next) => set({ at: [x, next] })} />
        <NumberField
          label={words.diameter}
          value={shown(hole.diameter)}
          fits={(value) => value > 0}
          onSet={(diameter) => set({ diameter })}
          onClear={() => set({ diameter: undefined })}
        />
        {hole.kind === 'dowel' ? (
          <NumberField
            label={words.proud}
            value={shown(hole.proud)}
            fits={(value) => value >= 0}
            onSet={(proud) => set({ proud })}
            onClear={() => set({ proud: undefined })}
          />
        ) : (
          <TextField
            label={words.thread}
            value={hole.thread ?? ''}
            onSet={(thread) => set({ thread: thread || undefined })}
          />
        )}
      </div>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          edit((job) => withoutHole(job, sheet.file, index));
          look({ chosen: null });
        }}
      >
        {words.removeHole(hole.id)}
      </button>
    </>
  );
}
