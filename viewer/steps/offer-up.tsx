import { useEffect, useState } from 'preact/hooks';
import type { Instant } from '../../src/clearance/check-result.ts';
import type { PositionFile, WanderFile } from '../../src/files/fit-file.ts';
import { givenLength, lengthText, mmIn } from '../../src/job/length-text.ts';
import { mostWander } from '../../src/job/wander.ts';
import { checkText, steeringTexts } from '../../src/words/check-text.ts';
import { reasonTexts } from '../../src/words/reasons.ts';
import { degreesOf, turnText } from '../../src/words/units.ts';
import { verdictLine } from '../../src/words/verdict.ts';
import type { State } from '../app.ts';
import { entryHandles } from '../entry-handles.ts';
import { Group, NumberField } from '../fields.tsx';
import { goToFoul } from '../foul-places.ts';
import type { FoulPlace } from '../heavy/pictures-of.ts';
import { InFull } from '../in-full.tsx';
import { withWander, withWay } from '../job/way-edits.ts';
import { plainFigures, useLengths } from '../lengths.ts';
import type { Pane } from '../stage/pane.ts';
import { lastStop, placeOnWay } from '../way.ts';
import { standingWords } from '../words/standing.ts';
import { words } from '../words.ts';
import { EveryWayIn } from './every-way.tsx';
import type { StepProps } from './step-props.ts';

/** Whether it goes, in one line. */
export const offerUpLine = ({ checked }: State): string =>
  checked === null ? words.notYet : verdictLine(checked.check);

export function OfferUp({ app, state, job, pane, side }: StepProps) {
  const { checked } = state;
  useEffect(() => entryHandles(app, pane, side), [app, pane, side]);
  return (
    <>
      {checked === null ? null : reasonTexts(checked.joint, checked.check).map((text) => <p key={text}>{text}</p>)}
      {checked === null ? null : <Standing app={app} state={state} />}
      {checked === null ? null : <Fouls places={checked.pictures.foulPlaces} face={pane} side={side} />}
      {checked === null ? null : <EveryWayIn app={app} job={job} />}
      <Positions app={app} job={job} />
      {(job.fit.offerUp ?? []).length < 2 ? null : <Wander app={app} job={job} />}
      {checked === null || checked.check.rotating.length === 0 ? null : (
        <Group name={words.rotating}>
          <ul>
            {checked.check.rotating.map(({ part, against, state: how, clearanceMm }) => (
              <li key={`${part} ${against}`}>
                {part}, {against === 'fixed' ? words.cutFixed : words.cutMoving}:{' '}
                {standingWords({ state: how, clearanceMm }, checked.joint.fit.units)}
              </li>
            ))}
          </ul>
        </Group>
      )}
      {checked === null ? null : (
        <InFull text={() => checkText(checked.joint, checked.check, state.way?.forgives ?? null)} />
      )}
    </>
  );
}

interface FoulsProps {
  readonly places: readonly FoulPlace[];
  readonly face: Pane;
  readonly side: Pane;
}

/** The sections something is in the way in; a touch goes there. */
function Fouls({ places, face, side }: FoulsProps) {
  if (places.length === 0) return null;
  return (
    <Group name={words.inTheWay}>
      <div class="jumps">
        {[...new Set(places.map(({ section }) => section))].map((section) => (
          <button
            key={section}
            type="button"
            title={words.showOnDrawing}
            onClick={() =>
              goToFoul(
                { face, side },
                places.filter((place) => place.section === section),
              )
            }
          >
            {section}
          </button>
        ))}
      </div>
    </Group>
  );
}

function Standing({ app, state }: Pick<StepProps, 'app' | 'state'>) {
  const { checked, way } = state;
  if (checked === null) return null;
  const { wayIn } = checked.check;
  const { units } = checked.joint.fit;
  const [proved, stop] = [app.reader.proved.value, app.reader.stop.value];
  const standing = proved?.standing ?? null;
  const toMoment = (moment: Pick<Instant, 'leg' | 'at'> | null): void => {
    if (moment && way !== null) app.reader.moveTo(placeOnWay(way, moment.leg, moment.at));
  };
  return (
    <div class="standing">
      {stop === null ? null : (
        <dl>
          <dt>{words.leastHere}</dt>
          <dd data-state={standing?.state}>{standing === null ? '…' : standingWords(standing, units)}</dd>
          {standing === null || standing.worstClearanceMm === null ? null : (
            <>
              <dt>{words.worstHere}</dt>
              <dd>{lengthText(standing.worstClearanceMm, units)}</dd>
            </>
          )}
          {standing === null || standing.nearest === null ? null : (
            <>
              <dt>{words.between}</dt>
              <dd>{words.sections(standing.nearest.fixedSection, standing.nearest.movingSection)}</dd>
            </>
          )}
          <dt>{words.standing}</dt>
          <dd>
            {words.turn} {turnText(stop.position.turnRad)}, {words.standOff}{' '}
            {givenLength(stop.position.standOffMm, units)}
          </dd>
        </dl>
      )}
      {way === null ? null : (
        <div class="jumps">
          {wayIn?.firstTouch ? (
            <button type="button" onClick={() => toMoment(wayIn.firstTouch)}>
              {words.toTouch}
            </button>
          ) : null}
          {wayIn?.nearest ? (
            <button type="button" onClick={() => toMoment(wayIn.nearest)}>
              {words.toWorst}
            </button>
          ) : null}
          <RunHome app={app} end={lastStop(way)} />
        </div>
      )}
      {steeringTexts(checked.joint, checked.check, way?.forgives ?? null).map((text) => (
        <p key={text}>{text}</p>
      ))}
      {wayIn?.firstTouch?.dowelGaps.map(({ fixed, gapMm }) => (
        <p key={fixed}>{words.dowelStands(fixed, lengthText(gapMm, units))}.</p>
      ))}
    </div>
  );
}

/** The whole way at a steady pace, s. */
const wholeWayS = 8;

function RunHome({ app, end }: { readonly app: StepProps['app']; readonly end: number }) {
  const [runs, setRuns] = useState(false);
  useEffect(() => {
    if (!runs) return;
    let before = performance.now();
    let frame = requestAnimationFrame(function step(now) {
      const next = app.reader.place.peek() + ((now - before) / 1000) * (end / wholeWayS);
      before = now;
      app.reader.moveTo(next);
      if (next >= end) setRuns(false);
      else frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [runs, app, end]);
  const press = (): void => {
    if (!runs && app.reader.place.peek() >= end - 1e-6) app.reader.moveTo(0);
    setRuns(!runs);
  };
  return (
    <button type="button" onClick={press}>
      {runs ? words.pause : words.runHome}
    </button>
  );
}

const degrees = plainFigures('°');
const home: PositionFile = { standOff: 0, turn: 0 };

/** How far a hand may stray while it steers; the answer then holds for all of it. */
function Wander({ app, job: { fit } }: Pick<StepProps, 'app' | 'job'>) {
  const lengths = useLengths(fit.units);
  const field = (name: keyof WanderFile, label: string, isAngle: boolean, most: number) => (
    <NumberField
      label={label}
      figures={isAngle ? degrees : lengths}
      fits={(value) => value >= 0 && value <= most}
      value={fit.wander?.[name] ?? 0}
      onSet={(value) => app.job.edit((now) => withWander(now, { [name]: value }))}
    />
  );
  const { turnRad, standOffMm, shiftMm, tiltRad } = mostWander;
  const perMm = mmIn(fit.units);
  return (
    <Group name={words.wander}>
      <p>{words.wanderHelp}</p>
      <div class="wander">
        {field('turn', words.turn, true, degreesOf(turnRad))}
        {field('standOff', words.standOff, false, standOffMm / perMm)}
        {field('shift', words.aside, false, shiftMm / perMm)}
        {field('tilt', words.tilt, true, degreesOf(tiltRad))}
      </div>
    </Group>
  );
}

function Positions({ app, job: { fit } }: Pick<StepProps, 'app' | 'job'>) {
  const positions = fit.offerUp ?? [home];
  const lengths = useLengths(fit.units);
  const set = (offerUp: PositionFile[]): void => app.job.edit((now) => withWay(now, offerUp));
  const change = (i: number, said: Partial<PositionFile>): void =>
    set(positions.map((position, j) => (j === i ? { ...position, ...said } : position)));
  const before = positions.slice(0, -1);
  return (
    <Group name={words.positions(lengths.unit)}>
      <ol class="positions">
        {before.map((position, i) => (
          <li key={i}>
            <NumberField
              label={words.standOff}
              figures={lengths}
              fits={(value) => value >= 0}
              value={position.standOff ?? 0}
              onSet={(standOff) => change(i, { standOff })}
            />
            <NumberField
              label={words.turn}
              figures={degrees}
              value={position.turn ?? 0}
              onSet={(turn) => change(i, { turn })}
            />
            {(['shiftX', 'shiftY'] as const).map((name, axis) => (
              <NumberField
                key={name}
                label={words[name]}
                figures={lengths}
                value={position.shift?.[axis] ?? 0}
                onSet={(value) => {
                  const [x, y] = position.shift ?? [0, 0];
                  change(i, { shift: axis === 0 ? [value, y] : [x, value] });
                }}
              />
            ))}
            <button
              type="button"
              aria-label={words.removePosition(i + 1)}
              onClick={() => set(positions.filter((_, j) => j !== i))}
            >
              ×
            </button>
          </li>
        ))}
        <li>{words.atHome}</li>
      </ol>
      <button type="button" onClick={() => set([...before, { ...(before.at(-1) ?? { standOff: 20, turn: 0 }) }, home])}>
        {words.addPosition}
      </button>
    </Group>
  );
}
