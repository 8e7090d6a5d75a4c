import type { PartDraft } from '../../../src/files/job-file.ts';
import { Tick } from '../../fields.tsx';
import {
  holdersOf,
  type LoopHolder,
  loopLists,
  type Place,
  withDetails,
  withPart,
  withSection,
} from '../../job/part-edits.ts';
import { runsOf } from '../../job/run-edits.ts';
import { type Figures, useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { TracedDepth } from '../photo/picture-tools.tsx';
import { ChosenThing } from './chosen-thing.tsx';
import { FeatureForm } from './feature-form.tsx';
import { HolesTable } from './holes-table.tsx';
import { PlaceDetails } from './place-details.tsx';
import { choosing, type OpenEntry, samePlace } from './selection.ts';
import type { TraceContext } from './touch.ts';
import { TraceTools } from './trace-tools.tsx';
import { WallsTable } from './walls-table.tsx';

interface Props {
  readonly context: TraceContext;
  readonly part: PartDraft;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** What is traced as plain lines, one of them opened at a time. */
export function PlaceList({ context, part, onKeyDown }: Props) {
  const { sheet, looking, look, edit } = context;
  const lengths = useLengths(part.units);
  const places = loopLists.flatMap((list) =>
    holdersOf(part, list).map((holder, index) => ({ holder, place: { list, index } })),
  );
  const open = (to: OpenEntry) => (): void =>
    look({ opened: samePlace(looking.opened, to) ? null : to, chosen: null, tool: choosing, said: '' });
  const line = (to: OpenEntry, text: string) => (
    <button type="button" class="line" aria-expanded={samePlace(looking.opened, to)} onClick={open(to)}>
      {text}
    </button>
  );
  return (
    <section aria-label={words.places}>
      {part.sections.length === 0 && <p class="hint">{words.nothingYet}</p>}
      <ul class="places">
        {places.map(({ holder, place }) => (
          <li key={`${place.list} ${place.index}`}>
            <div class="placed">
              {line(place, placeLine(holder, place, openRunsIn(context, holder, place), lengths))}
              {place.list === 'sections' && (
                <Tick
                  label={words.mayCut}
                  name={words.mayCutNamed(holder.id)}
                  on={part.sections[place.index]?.mayCut === true}
                  onSet={(on) =>
                    edit((job) =>
                      withPart(job, sheet.file, (old) => withDetails(old, place, { mayCut: on || undefined })),
                    )
                  }
                />
              )}
            </div>
            {samePlace(looking.opened, place) && (
              <OpenedPlace context={context} part={part} place={place} holder={holder} onKeyDown={onKeyDown} />
            )}
          </li>
        ))}
        <li>
          {line('holes', words.holes(part.holes?.length ?? 0))}
          {looking.opened === 'holes' && <HolesTable context={context} />}
        </li>
        <li>
          {line('walls', words.walls(part.wallReadings?.length ?? 0))}
          {looking.opened === 'walls' && <WallsTable context={context} />}
        </li>
      </ul>
      <button
        type="button"
        onClick={() => {
          edit((job) => withPart(job, sheet.file, (old) => withSection(old, words.newSection)));
          look({ opened: { list: 'sections', index: part.sections.length }, chosen: null, tool: choosing });
        }}
      >
        {words.addSection}
      </button>
    </section>
  );
}

const openRunsIn = ({ sheet: { job, file } }: TraceContext, { id }: LoopHolder, { list }: Place): number =>
  list === 'sections' ? runsOf(job).filter((run) => run.part === file && run.section === id).length : 0;

function placeLine(holder: LoopHolder, { list }: Place, open: number, { text }: Figures): string {
  const { id, depth } = holder;
  return [
    list === 'traced' ? words.tracedHere : id,
    ...(list === 'hollows' ? [words.hollow] : list === 'doNotCut' ? [words.notToCut] : []),
    depth === undefined ? words.through : words.depths(text(depth[0]), text(depth[1])),
    ...(open > 0 ? [words.notClosed] : []),
  ].join(' · ');
}

interface OpenedProps extends Props {
  readonly place: Place;
  readonly holder: LoopHolder;
}

function OpenedPlace({ context, part, place, holder, onKeyDown }: OpenedProps) {
  const { sheet, looking, look, edit } = context;
  const { chosen } = looking;
  const runs = runsOf(sheet.job).flatMap((run, i) =>
    place.list === 'sections' && run.part === sheet.file && run.section === holder.id ? [{ run, i }] : [],
  );
  return (
    <div class="opened-place">
      <TraceTools context={context} place={place} />
      {context.over !== null && <TracedDepth context={context} over={context.over} part={part} place={place} />}
      {place.list === 'sections' && looking.tool.kind === 'choose' && (
        <details>
          <summary>{words.features}</summary>
          <FeatureForm context={context} place={place} />
        </details>
      )}
      <fieldset class="row" aria-label={words.outlines}>
        {holder.loops.map((loop, i) => (
          <button
            key={`loop ${i}`}
            type="button"
            aria-pressed={chosen?.kind === 'loop' && chosen.loop === i}
            onClick={() => look({ chosen: { kind: 'loop', place, loop: i, vertex: null }, tool: choosing, said: '' })}
          >
            {words.outline(i + 1, 'circle' in loop ? null : loop.length)}
          </button>
        ))}
        {runs.map(({ run, i }) => (
          <button
            key={`run ${i}`}
            type="button"
            aria-pressed={chosen?.kind === 'run' && chosen.run === i}
            onClick={() => look({ chosen: { kind: 'run', run: i, vertex: run.points.length - 1 }, said: '' })}
          >
            {words.openRun(run.points.length)}
          </button>
        ))}
      </fieldset>
      <ChosenThing context={context} onKeyDown={onKeyDown} />
      <details open={holder.loops.length + runs.length === 0}>
        <summary>{words.details}</summary>
        <PlaceDetails part={part} file={sheet.file} place={place} holder={holder} edit={edit} look={look} />
      </details>
    </div>
  );
}
