import { useState } from 'preact/hooks';
import type { DrillResult } from '../../src/drill/drill-result.ts';
import type { FitFile } from '../../src/files/fit-file.ts';
import type { PartDraft } from '../../src/files/job-file.ts';
import { fineLength } from '../../src/job/length-text.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { dowelText } from '../../src/words/dowel-text.ts';
import { drillLine, drillTables, drillText } from '../../src/words/drill-text.ts';
import type { State } from '../app.ts';
import { offsetTimes } from '../drawing.ts';
import { ChoiceField, Group, NumberField } from '../fields.tsx';
import { InFull } from '../in-full.tsx';
import { useLengths } from '../lengths.ts';
import { words } from '../words.ts';
import { AtBench } from './at-bench.tsx';
import { PairProposal } from './pair-proposal.tsx';
import type { StepProps } from './step-props.ts';

/** How the dowels and bolts agree, in one line. */
export function dowelUpLine({ checked }: State): string {
  if (checked === null) return words.notYet;
  const { dowelUp, bolts } = checked.joint;
  const { units } = checked.joint.fit;
  const told = bolts.filter(({ linesUp }) => linesUp !== null);
  return [
    agreement(dowelUp.pairs.length, fineLength(dowelUp.rmsMm ?? 0, units)),
    ...(told.length === 0 ? [] : [words.boltsLineUp(told.filter(({ linesUp }) => linesUp).length, told.length)]),
  ].join('; ');
}

/** One pair always falls on itself, and shows nothing. */
function agreement(pairs: number, rms: string): string {
  if (pairs === 0) return words.noDowels;
  return pairs === 1 ? words.oneDowel : words.dowelsAgree(rms);
}

export function DowelUp({ app, state, job }: StepProps) {
  const { fit, parts } = job;
  const { checked } = state;
  const units = app.reader.units.value ?? fit.units;
  const offsets = new Map(
    [...(checked?.joint.dowelUp.pairs ?? []), ...(checked?.joint.bolts ?? [])].map((pair) => [
      `${pair.fixed} ${pair.moving}`,
      pair.offsetMm,
    ]),
  );
  const setFit = (change: Partial<FitFile>): void =>
    app.job.edit((now) => ({ ...now, fit: { ...now.fit, ...change } }));
  return (
    <>
      {checked === null ? null : (
        <p>
          {dowelText(checked.joint)} {words.arrows(offsetTimes)}.
        </p>
      )}
      <PairProposal app={app} job={job} units={units} />
      <Pairs
        name={words.dowels}
        pairs={fit.dowels ?? []}
        parts={[parts[fit.fixed], parts[fit.moving]]}
        kinds={['dowel']}
        offsetText={(pair) => {
          const mm = offsets.get(pair.join(' '));
          return mm === undefined ? '' : fineLength(mm, units);
        }}
        onPairs={(dowels) => setFit({ dowels })}
      />
      <Pairs
        name={words.bolts}
        pairs={fit.bolts ?? []}
        parts={[parts[fit.fixed], parts[fit.moving]]}
        kinds={['bolt', 'tapped', 'stud', 'planned']}
        offsetText={(pair) => {
          const mm = offsets.get(pair.join(' '));
          return mm === undefined ? '' : fineLength(mm, units);
        }}
        onPairs={(bolts) => setFit({ bolts })}
      />
      <Axis fit={fit} fixed={parts[fit.fixed]} setFit={setFit} />
      {checked === null || state.planned === null ? null : (
        <ToDrill joint={checked.joint} drill={state.planned.drill} />
      )}
      {[fit.fixed, fit.moving].map((name) => {
        const part = parts[name];
        return part === undefined ? null : (
          <ChoiceField
            key={name}
            label={words.viewedFrom(part.name)}
            value={part.viewedFrom ?? ''}
            choices={[
              ['face', words.fromFace],
              ['back', words.fromBack],
            ]}
            onSet={(viewedFrom) =>
              app.job.edit((now) => ({ ...now, parts: { ...now.parts, [name]: { ...part, viewedFrom } } }))
            }
          />
        );
      })}
      <AtBench app={app} units={units} />
    </>
  );
}

/** Holes to be drilled, planned or marked from the other part; nothing where there are none. */
function ToDrill({ joint, drill }: { readonly joint: Joint; readonly drill: DrillResult }) {
  if (drill.planned.length + drill.transfer.marked.length === 0) return null;
  const against = (['fixed', 'moving'] as const).flatMap((part) => drillTables(joint, drill, part)?.against ?? []);
  return (
    <Group name={words.toDrill}>
      <p>{drillLine(drill)}</p>
      <ul>
        {against.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <InFull text={() => drillText(joint, drill)} />
    </Group>
  );
}

type Pair = [fixed: string, moving: string];

interface PairsProps {
  readonly name: string;
  readonly pairs: readonly Pair[];
  readonly parts: readonly [PartDraft | undefined, PartDraft | undefined];
  readonly kinds: readonly string[];
  readonly offsetText: (pair: Pair) => string;
  readonly onPairs: (pairs: Pair[]) => void;
}

function Pairs({ name, pairs, parts: [fixed, moving], kinds, offsetText, onPairs }: PairsProps) {
  const idsOf = (part: PartDraft | undefined, used: readonly string[]): (readonly [string, string])[] =>
    (part?.holes ?? [])
      .filter(({ id, kind }) => kinds.includes(kind) || used.includes(id))
      .map(({ id }) => [id, id] as const);
  const fixedIds = idsOf(
    fixed,
    pairs.map(([id]) => id),
  );
  const movingIds = idsOf(
    moving,
    pairs.map(([, id]) => id),
  );
  return (
    <Group name={name}>
      {pairs.map((pair, i) => (
        <div class="pair" key={i}>
          {([0, 1] as const).map((side) => (
            <ChoiceField
              key={side}
              bare
              label={`${name} ${i + 1} ${side === 0 ? words.onFixed : words.onMoving}`}
              value={pair[side]}
              choices={side === 0 ? fixedIds : movingIds}
              onSet={(id) =>
                onPairs(pairs.map((other, j) => (j !== i ? other : side === 0 ? [id, other[1]] : [other[0], id])))
              }
            />
          ))}
          <output>{offsetText(pair)}</output>
          <button
            type="button"
            aria-label={words.removePair(pair.join('–'))}
            onClick={() => onPairs(pairs.filter((_, j) => j !== i))}
          >
            ×
          </button>
        </div>
      ))}
      <NewPair
        name={name}
        ids={[fixedIds, movingIds].map((ids, side) => ids.filter(isFree(pairs, side)))}
        onPair={(pair) => onPairs([...pairs, pair])}
      />
    </Group>
  );
}

const isFree =
  (pairs: readonly Pair[], side: number) =>
  ([id]: readonly [string, string]): boolean =>
    pairs.every((pair) => pair[side] !== id);

interface NewPairProps {
  readonly name: string;
  /** The holes that are free, of the fixed and of the moving part. */
  readonly ids: readonly (readonly (readonly [string, string])[])[];
  readonly onPair: (pair: Pair) => void;
}

/** A pair that is added once both its holes are chosen: none is chosen for the builder. */
function NewPair({ name, ids: [fixedIds = [], movingIds = []], onPair }: NewPairProps) {
  const [begun, begin] = useState<Pair | null>(null);
  if (fixedIds.length === 0 || movingIds.length === 0) return null;
  if (begun === null)
    return (
      <button type="button" onClick={() => begin(['', ''])}>
        {words.addPair}
      </button>
    );
  const choose = (pair: Pair): void => {
    const isWhole = pair.every((id) => id !== '');
    begin(isWhole ? null : pair);
    if (isWhole) onPair(pair);
  };
  return (
    <div class="pair">
      <ChoiceField
        bare
        label={`${name} ${words.onFixed}`}
        value={begun[0]}
        choices={fixedIds}
        onSet={(id) => choose([id, begun[1]])}
      />
      <ChoiceField
        bare
        label={`${name} ${words.onMoving}`}
        value={begun[1]}
        choices={movingIds}
        onSet={(id) => choose([begun[0], id])}
      />
    </div>
  );
}

interface AxisProps {
  readonly fit: FitFile;
  readonly fixed: PartDraft | undefined;
  readonly setFit: (change: Partial<FitFile>) => void;
}

function Axis({ fit: { axis, units }, fixed, setFit }: AxisProps) {
  const holes = (fixed?.holes ?? []).map(({ id }) => [`hole ${id}`, id] as const);
  const point = typeof axis === 'string' ? null : axis;
  const figures = useLengths(fixed?.units ?? units);
  return (
    <Group name={words.axis}>
      <ChoiceField
        bare
        label={words.axis}
        value={typeof axis === 'string' ? `hole ${axis}` : 'point'}
        choices={[['point', words.axisAt], ...holes]}
        onSet={(chosen) => setFit({ axis: chosen === 'point' ? [0, 0] : chosen.slice('hole '.length) })}
      />
      {point === null
        ? null
        : (['x', 'y'] as const).map((name, i) => (
            <NumberField
              key={name}
              label={name}
              figures={figures}
              value={point[i]}
              onSet={(value) => setFit({ axis: i === 0 ? [value, point[1]] : [point[0], value] })}
            />
          ))}
    </Group>
  );
}
