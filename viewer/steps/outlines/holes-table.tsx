import type { HoleFile } from '../../../src/files/part-file.ts';
import { ChoiceField, NumberField, TextField, Tick } from '../../fields.tsx';
import { holeAsHollow, holeRenamed, withHole, withHoleChanged, withoutHole, withPart } from '../../job/part-edits.ts';
import { type Figures, useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { DepthFields } from './depth-fields.tsx';
import { MeasureForm } from './measure-form.tsx';
import type { TraceContext } from './touch.ts';

const kinds = Object.entries(words.holeKinds) as [HoleFile['kind'], string][];

/** Every hole as a line, the chosen one with its figures to type over. */
export function HolesTable({ context }: { readonly context: TraceContext }) {
  const { sheet, looking, look, edit } = context;
  const part = sheet.job.parts[sheet.file];
  const { tool, chosen } = looking;
  const lengths = useLengths(part?.units ?? 'mm');
  const add = (texts: readonly string[]): string | null => {
    const [x = null, y = null, diameter] = texts.map((text) => lengths.read(text));
    if (x === null || y === null) return words.numberWanted;
    edit((job) => withPart(job, sheet.file, (old) => withHole(old, 'bolt', [x, y], diameter ?? undefined)));
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
                {words.holeLine(hole.id, words.holeKinds[hole.kind], sizeOf(hole, lengths))}
              </button>
              {isChosen && <HoleFields context={context} hole={hole} index={i} />}
            </li>
          );
        })}
      </ul>
      <p class="hint">{words.whatAHoleIs}</p>
      <MeasureForm fields={['x', 'y', words.diameter]} unit={lengths.unit} button={words.addHole} add={add} />
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

/** How large a hole is, by its thread or across. */
export const sizeOf = ({ thread, diameter }: HoleFile, { text }: Figures): string =>
  thread ?? (diameter === undefined ? '' : words.round(text(diameter)));

interface Props {
  readonly context: TraceContext;
  readonly hole: HoleFile;
  readonly index: number;
}

function HoleFields({ context: { sheet, look, edit }, hole, index }: Props) {
  const part = sheet.job.parts[sheet.file];
  const figures = useLengths(part?.units ?? 'mm');
  const set = (changes: Partial<Omit<HoleFile, 'id'>>): void =>
    edit((job) => withPart(job, sheet.file, (old) => withHoleChanged(old, index, changes)));
  const rename = (id: string): void => {
    const taken = (part?.holes ?? []).some((other, i) => i !== index && other.id === id);
    look({ said: taken ? words.nameTaken : '' });
    edit((job) => holeRenamed(job, sheet.file, index, id));
  };
  const becomeHollow = (): void => {
    const place = { list: 'hollows', index: part?.hollows?.length ?? 0 } as const;
    edit((job) => holeAsHollow(job, sheet.file, index));
    look({ opened: place, chosen: { kind: 'loop', place, loop: 0, vertex: null }, said: '' });
  };
  const [x, y] = hole.at;
  return (
    <>
      <div class="pair">
        <TextField label={words.holeName} value={hole.id} onSet={rename} />
        <ChoiceField label={words.holeKind} value={hole.kind} choices={kinds} onSet={(kind) => set({ kind })} />
        <NumberField label="x" value={x} figures={figures} onSet={(next) => set({ at: [next, y] })} />
        <NumberField label="y" value={y} figures={figures} onSet={(next) => set({ at: [x, next] })} />
        <NumberField
          label={words.diameter}
          value={hole.diameter}
          figures={figures}
          fits={(value) => value > 0}
          onSet={(diameter) => set({ diameter })}
          onClear={() => set({ diameter: undefined })}
        />
        {hole.kind === 'dowel' ? (
          <NumberField
            label={words.proud}
            value={hole.proud}
            figures={figures}
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
      <GuardFields hole={hole} figures={figures} set={set} look={look} />
      {hole.diameter !== undefined && (
        <button type="button" class="quiet" onClick={becomeHollow}>
          {words.holeAsHollow(hole.id)}
        </button>
      )}
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

interface GuardProps extends Pick<TraceContext, 'look'> {
  readonly hole: HoleFile;
  readonly figures: Figures;
  readonly set: (changes: Partial<Omit<HoleFile, 'id'>>) => void;
}

/** How deep a hole goes, and what a cut has to leave round it. */
const GuardFields = ({ hole, figures, set, look }: GuardProps) => (
  <>
    <DepthFields key={hole.id} depth={hole.depth} figures={figures} set={(depth) => set({ depth })} look={look} />
    <NumberField
      label={words.leastWall}
      value={hole.keepWall}
      figures={figures}
      fits={(value) => value >= 0}
      onSet={(keepWall) => set({ keepWall })}
      onClear={() => set({ keepWall: undefined })}
    />
    <Tick
      label={words.mayBreak}
      on={hole.mayBreak === true}
      onSet={(mayBreak) => set({ mayBreak: mayBreak || undefined })}
    />
  </>
);
