import { NumberField } from '../../fields.tsx';
import { holderAt, holdersOf, type LoopList, withLoopAs, withLoopChanged, withPart } from '../../job/part-edits.ts';
import { runClosedBehind, runsOf, withMetalOnOtherSide, withRun, withRunClosed } from '../../job/run-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { PictureTools } from '../photo/picture-tools.tsx';
import { PointsTable } from './points-table.tsx';
import { choosing, circleOf, openedPlace, pointsOf, type Selection, withCircle } from './selection.ts';
import { chosenLast, closeRun, type TraceContext } from './touch.ts';

interface Props {
  readonly context: TraceContext;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** Figures and buttons of the outline or run that is chosen. */
export function ChosenThing({ context, onKeyDown }: Props) {
  const { job, file } = context.sheet;
  const { chosen } = context.looking;
  const part = job.parts[file];
  if (chosen === null || chosen.kind === 'hole' || part === undefined) return null;
  const points = pointsOf(job, file, chosen);
  if (points === null && circleOf(job, file, chosen) === null) return null;
  const opened = openedPlace(job, file, context.looking.opened);
  const place = chosen.kind === 'loop' ? (holderAt(part, chosen.place)?.id ?? '') : '';
  return (
    <section
      class="chosen-thing"
      aria-label={chosen.kind === 'loop' ? words.chosenLoop(place, chosen.loop + 1) : words.chosenRun}
    >
      <h2>{chosen.kind === 'loop' ? words.chosenLoop(place, chosen.loop + 1) : words.chosenRun}</h2>
      {chosen.kind === 'run' && <RunButtons context={context} index={chosen.run} />}
      {points === null ? (
        <CircleFields context={context} chosen={chosen} />
      ) : (
        <PointsTable context={context} chosen={chosen} points={points} onKeyDown={onKeyDown} />
      )}
      {context.over !== null && opened !== null && (
        <PictureTools
          key={chosen.kind === 'run' ? `run ${chosen.run}` : `loop ${chosen.loop}`}
          context={context}
          over={context.over}
          part={part}
          place={opened}
          chosen={chosen}
        />
      )}
      {chosen.kind === 'loop' && <LoopButtons context={context} chosen={chosen} name={place} />}
    </section>
  );
}

function CircleFields({
  context: { sheet, edit },
  chosen,
}: {
  readonly context: TraceContext;
  readonly chosen: Selection;
}) {
  const circle = circleOf(sheet.job, sheet.file, chosen);
  const figures = useLengths(sheet.job.parts[sheet.file]?.units ?? 'mm');
  if (circle === null) return null;
  const put = (changes: Partial<typeof circle>): void =>
    edit((job) => withCircle(job, sheet.file, chosen, { ...circle, ...changes }));
  const [x, y] = circle.circle;
  return (
    <div class="pair">
      <NumberField label={words.centreX} value={x} figures={figures} onSet={(next) => put({ circle: [next, y] })} />
      <NumberField label={words.centreY} value={y} figures={figures} onSet={(next) => put({ circle: [x, next] })} />
      <NumberField
        label={words.diameter}
        value={2 * circle.radius}
        figures={figures}
        fits={(value) => value > 0}
        onSet={(diameter) => put({ radius: diameter / 2 })}
      />
    </div>
  );
}

function LoopButtons({
  context,
  chosen,
  name,
}: {
  readonly context: TraceContext;
  readonly chosen: Selection & { kind: 'loop' };
  readonly name: string;
}) {
  const { sheet, look, edit } = context;
  const { place, loop } = chosen;
  const become = (list: LoopList) => (): void => {
    const part = sheet.job.parts[sheet.file];
    const there = part === undefined ? [] : holdersOf(part, list);
    // where the tracing is complete there is one entry, to which outlines are added
    const index = list === 'traced' ? 0 : there.length;
    edit((job) => withPart(job, sheet.file, (part) => withLoopAs(part, place, loop, list, name)));
    look({
      opened: { list, index },
      chosen: { kind: 'loop', place: { list, index }, loop: there[index]?.loops.length ?? 0, vertex: null },
    });
  };
  const others = [
    ['sections', words.makeMetal],
    ['hollows', words.makeHollow],
    ['doNotCut', words.makeNotToCut],
    ['traced', words.makeTraced],
  ] as const;
  return (
    <div class="row">
      {others
        .filter(([list]) => list !== place.list)
        .map(([list, label]) => (
          <button key={list} type="button" class="quiet" onClick={become(list)}>
            {label}
          </button>
        ))}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          edit((job) => withPart(job, sheet.file, (part) => withLoopChanged(part, place, loop, null)));
          look({ chosen: null });
        }}
      >
        {words.removeOutline}
      </button>
    </div>
  );
}

function RunButtons({ context, index }: { readonly context: TraceContext; readonly index: number }) {
  const { sheet, looking, look, edit } = context;
  const { job, file } = sheet;
  const run = runsOf(job)[index];
  const figures = useLengths(job.parts[file]?.units ?? 'mm');
  if (run === undefined) return null;
  const closeBehind = (): void => {
    const loop = runClosedBehind(run);
    if (loop === null) {
      look({ said: words.tooTight });
      return;
    }
    edit((now) => withRunClosed(now, index, loop));
    look({ chosen: chosenLast(job, file, looking.opened), tool: choosing, said: '' });
  };
  return (
    <>
      <p class="hint">{words.metalOn(run.metal)}</p>
      <div class="row">
        <button type="button" onClick={() => closeRun(context, index)}>
          {words.close}
        </button>
        <button type="button" onClick={() => edit((now) => withRun(now, index, withMetalOnOtherSide))}>
          {words.metalOtherSide}
        </button>
      </div>
      <div class="row">
        <NumberField
          label={words.behind}
          value={run.behind}
          figures={figures}
          fits={(value) => value > 0}
          onSet={(behind) => edit((now) => withRun(now, index, (old) => ({ ...old, behind })))}
        />
        <button type="button" disabled={run.behind === undefined} onClick={closeBehind}>
          {words.closeBehind}
        </button>
      </div>
    </>
  );
}
