import { useEffect } from 'preact/hooks';
import type { JobFile } from '../../src/files/job-file.ts';
import type { App } from '../app.ts';
import { Group, NumberField } from '../fields.tsx';
import type { WaysTold } from '../heavy/questions.ts';
import { withWay } from '../job/way-edits.ts';
import { plainFigures } from '../lengths.ts';
import type { TurnsAsked } from '../state/every-way.ts';
import '../every-way.css';
import { everyWayWords as words } from '../words/every-way.ts';
import { words as pageWords } from '../words.ts';
import { TurnMap } from './every-way/turn-map.tsx';

interface Props {
  readonly app: App;
  readonly job: JobFile;
}

/** Every way in of turning and sliding, looked for when it is asked. */
export function EveryWayIn({ app, job }: Props) {
  const { everyWay, isWorking } = app.answers;
  const [isWanted, turns] = [everyWay.isWanted.value, everyWay.turns.value];
  const units = app.reader.units.value;
  // what the job itself comes to is worked out first, and no answer to it waits behind this
  const isFree = isWanted && !isWorking.value;
  useEffect(() => {
    if (!isFree || everyWay.isTold({ job, turns, units })) return;
    everyWay.ask({ job, turns, units });
    return () => everyWay.drop();
  }, [everyWay, isFree, job, turns, units]);
  const told = isWanted ? everyWay.toldOf(job) : null;
  const waits = isWanted && (told === null || everyWay.isWorking.value);
  const failure = everyWay.failure.value;
  return (
    <Group name={words.room}>
      <Turns turns={turns} onSet={(next) => (everyWay.turns.value = next)} />
      <button
        type="button"
        aria-expanded={isWanted}
        disabled={turns.leastDeg === turns.mostDeg}
        onClick={() => (everyWay.isWanted.value = !isWanted)}
      >
        {isWanted ? words.close : words.ask}
      </button>
      {isWanted ? <p role="status">{waits ? words.workingOut : ''}</p> : null}
      {failure === '' ? null : <p role="alert">{pageWords.broke(failure)}</p>}
      {told === null ? null : <Answer app={app} job={job} told={told} />}
    </Group>
  );
}

const degrees = plainFigures('°');
const mostTurnDeg = 180;

/** Home is always among the turns: whatever sign was typed. */
const Turns = ({ turns, onSet }: { readonly turns: TurnsAsked; readonly onSet: (turns: TurnsAsked) => void }) => (
  <>
    <NumberField
      label={words.least}
      figures={degrees}
      value={turns.leastDeg}
      onSet={(deg) => onSet({ ...turns, leastDeg: 0 - Math.min(mostTurnDeg, Math.abs(deg)) })}
    />
    <NumberField
      label={words.most}
      figures={degrees}
      value={turns.mostDeg}
      onSet={(deg) => onSet({ ...turns, mostDeg: Math.min(mostTurnDeg, Math.abs(deg)) })}
    />
  </>
);

function Answer({ app, job, told }: Props & { readonly told: WaysTold }) {
  const { way, map } = told;
  const needsNoCut = told.exists === true;
  const offerUp = job.fit.offerUp ?? [];
  const isAside = offerUp.some(({ shift: [x, y] = [0, 0] }) => x !== 0 || y !== 0);
  const isTaken = way !== null && isSameWay(offerUp, way.offerUp);
  const found = way === null || isTaken ? null : { points: way.points, name: words.found(needsNoCut) };
  return (
    <section class="every-way" aria-label={words.ask}>
      <p class="conclusion" data-conclusion={needsNoCut ? 'explained' : undefined}>
        {told.line}
      </p>
      {map === null ? null : <TurnMap app={app} job={job} map={map} found={found} />}
      {offerUp.length < 2 ? <p>{words.homeOnly}</p> : null}
      {isAside ? <p>{words.aside}</p> : null}
      {way === null ? null : isTaken ? (
        <p role="status">{words.taken}</p>
      ) : (
        <>
          <p>{words.wayFound(needsNoCut, way.text)}</p>
          <button type="button" onClick={() => app.job.edit((now) => withWay(now, way.offerUp))}>
            {words.take}
          </button>
        </>
      )}
      <ul class="grounds">
        {told.grounds.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

type Way = NonNullable<JobFile['fit']['offerUp']>;

const isSameWay = (a: Way, b: Way): boolean =>
  a.length === b.length &&
  a.every(({ turn = 0, standOff = 0, shift: [x, y] = [0, 0] }, i) => {
    const other = b[i];
    return turn === (other?.turn ?? 0) && standOff === (other?.standOff ?? 0) && x === 0 && y === 0;
  });
