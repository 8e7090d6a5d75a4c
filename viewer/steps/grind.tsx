import { useEffect } from 'preact/hooks';
import type { FitFile } from '../../src/files/fit-file.ts';
import { lengthText, mmIn } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { MarkingRow, MarkingTable } from '../../src/markout/marking-row.ts';
import type { CutFigures } from '../../src/plan/part-cut.ts';
import { alternativeTexts } from '../../src/words/alternative-text.ts';
import { grindText, planLine } from '../../src/words/grind-text.ts';
import { hindranceTexts } from '../../src/words/hindrance-text.ts';
import { shortName } from '../../src/words/names.ts';
import { nameCut } from '../../src/words/part-cuts.ts';
import { takeOffRows } from '../../src/words/plan-text.ts';
import { reasonTexts } from '../../src/words/reasons.ts';
import type { State } from '../app.ts';
import { ChoiceField, Group, NumberField, Tick } from '../fields.tsx';
import type { CheckReply, PlanReply } from '../heavy/questions.ts';
import { InFull } from '../in-full.tsx';
import { amended } from '../job/part-edits.ts';
import { useLengths } from '../lengths.ts';
import { type Extent, toPane, withRound } from '../stage/view.ts';
import { words } from '../words.ts';
import type { StepProps } from './step-props.ts';

/** What comes off, in one line. */
export const grindLine = ({ checked, planned }: State): string =>
  checked === null || planned === null ? words.notYet : planLine(checked.joint, planned.plan);

/** Where the places of one band of a table are. */
function placesOf(table: MarkingTable, band: number | undefined): Extent {
  const places = table.filter((row) => row.band === band).map(({ at }) => at);
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  return withRound({ minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) });
}

/** A touch this near to a place reads it, pixels. */
const readingPx = 40;

export function Grind({ app, state, job, pane }: StepProps) {
  const { checked, planned, reading } = state;
  useEffect(
    () =>
      pane.setTouching({
        onTap: (at) => {
          const rows = app.answers.planned.value?.tables.flat() ?? [];
          const away = (row: MarkingRow): number => {
            const { x, y } = toPane(pane.view(), row.at);
            return Math.hypot(x - at.x, y - at.y);
          };
          const nearest = [...rows].sort((a, b) => away(a) - away(b))[0];
          const touched = nearest !== undefined && away(nearest) < readingPx ? nearest : null;
          app.reader.read(touched);
          const table = app.answers.planned.value?.tables.find((rows) => touched !== null && rows.includes(touched));
          if (touched !== null) pane.goToTouched(placesOf(table ?? [], touched.band));
          return touched !== null;
        },
      }),
    [app, pane],
  );
  const { fit } = job;
  const { units } = checked?.joint.fit ?? fit;
  const setFit = (change: Partial<FitFile>): void => app.job.edit((now) => ({ ...now, fit: amended(now.fit, change) }));
  const cuts = checked === null || planned === null ? [] : cutsOf(checked, planned);
  const against = hindranceTexts(planned?.plan.hindrances ?? [], units);
  const others =
    checked === null || planned === null ? [] : alternativeTexts(checked.joint, planned.alternatives ?? []);
  const isCut = cuts.some(({ rows }) => rows.length > 1);
  return (
    <>
      {checked === null || planned === null
        ? null
        : reasonTexts(checked.joint, planned.plan).map((text) => <p key={text}>{text}</p>)}
      {against.length === 0 ? null : (
        <Group name={words.standsAgainst}>
          <ul class="against">
            {against.map((text) => (
              <li key={text}>{text}</li>
            ))}
            {cuts.flatMap(({ name, thinWalls }) =>
              thinWalls.map(({ hollow, wallMm, keepMm }) => {
                const wall = words.wall(hollow, lengthText(wallMm, units), lengthText(keepMm ?? 0, units));
                return <li key={`${name} ${hollow}`}>{words.ofPart(name, wall)}</li>;
              }),
            )}
          </ul>
        </Group>
      )}
      {others.length === 0 ? null : (
        <Group name={words.elseGives}>
          <ul>
            {others.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Group>
      )}
      {isCut ? <p aria-live="polite">{reading === null ? words.touchIt : readingWords(reading, cuts, units)}</p> : null}
      {cuts.map(({ name, rows, table }) =>
        rows.length < 2 ? null : (
          <Table
            key={name}
            name={words.takeOffOf(name)}
            rows={rows}
            goTo={(band) => (table.some((row) => row.band === band) ? () => pane.goTo(placesOf(table, band)) : null)}
          />
        ),
      )}
      <Clearances fit={fit} setFit={setFit} />
      <CutterFields fit={fit} setFit={setFit} />
      <Group name={words.mayCut}>
        <ChoiceField
          label={words.cutPart}
          value={fit.cut ?? 'fixed'}
          choices={[
            ['fixed', words.cutFixed],
            ['moving', words.cutMoving],
            ['both', words.cutBoth],
          ]}
          onSet={(cut) => setFit({ cut })}
        />
        {(fit.cut === 'both' ? [fit.fixed, fit.moving] : [fit.cut === 'moving' ? fit.moving : fit.fixed]).flatMap(
          (name) =>
            (job.parts[name]?.sections ?? []).map(({ id, mayCut = false }) => (
              <Tick
                key={`${name} ${id}`}
                label={words.ofPart(fit.cut === 'both' ? shortName(job.parts[name] ?? { name }) : '', id)}
                on={mayCut}
                onSet={(on) =>
                  app.job.edit((now) => {
                    const part = now.parts[name];
                    if (part === undefined) return now;
                    const sections = part.sections.map((section) =>
                      section.id === id ? { ...section, mayCut: on } : section,
                    );
                    return { ...now, parts: { ...now.parts, [name]: { ...part, sections } } };
                  })
                }
              />
            )),
        )}
      </Group>
      {checked === null || planned === null ? null : (
        <InFull text={() => grindText(checked.joint, planned.plan, planned.alternatives ?? [], checked.check)} />
      )}
    </>
  );
}

/** What is said of the cut of one part. */
interface SaidOfCut {
  /** The part's name where both are cut; else empty. */
  readonly name: string;
  readonly rows: readonly string[][];
  readonly thinWalls: CutFigures['walls'];
  readonly table: MarkingTable;
}

const cutsOf = ({ joint }: CheckReply, { plan, tables }: PlanReply): SaidOfCut[] =>
  plan.cuts.map((cut, i) => ({
    name: plan.cuts.length > 1 ? nameCut(joint, cut) : '',
    rows: takeOffRows(joint, cut),
    thinWalls: cut.walls.filter(({ holds }) => holds === false),
    table: tables[i] ?? [],
  }));

function readingWords(row: MarkingRow, cuts: readonly SaidOfCut[], units: Units): string {
  const { place, section, plannedMm, lastMm, wall } = row;
  const name = cuts.find(({ table }) => table.includes(row))?.name ?? '';
  const here = words.readHere(place, section, lengthText(plannedMm, units), lengthText(lastMm, units));
  const said = words.ofPart(name, here);
  return wall === null ? said : `${said}; ${words.wallLeft(wall.hollow, lengthText(wall.wallMm, units))}`;
}

interface FitProps {
  readonly fit: FitFile;
  readonly setFit: (change: Partial<FitFile>) => void;
}

function Clearances({ fit: { clearance, units }, setFit }: FitProps) {
  const asked = typeof clearance === 'number' ? { home: clearance } : clearance;
  const figures = useLengths(units);
  const fields = [
    ['home', words.home, asked.home],
    ['wayIn', words.onTheWay, asked.wayIn],
    ['rotating', words.toRotating, asked.rotating],
  ] as const;
  return (
    <Group name={words.clearances}>
      {fields.map(([key, label, value]) => (
        <NumberField
          key={key}
          label={label}
          figures={figures}
          fits={(next) => next >= 0}
          value={value}
          placeholder={key === 'wayIn' ? figures.text(asked.home) : ''}
          onSet={(next) => setFit({ clearance: { ...asked, [key]: next } })}
          onClear={key === 'home' ? undefined : () => setFit({ clearance: amended(asked, { [key]: undefined }) })}
        />
      ))}
    </Group>
  );
}

function CutterFields({ fit: { cutter, units, minWall, straight = false }, setFit }: FitProps) {
  const figures = useLengths(units);
  return (
    <Group name={words.cutter}>
      <NumberField
        label={words.radius}
        figures={figures}
        value={cutter?.radius}
        fits={(radius) => radius > 0}
        placeholder="—"
        onSet={(radius) => setFit({ cutter: { ...cutter, radius } })}
        onClear={() => setFit({ cutter: undefined })}
      />
      {cutter === undefined ? null : (
        <>
          <ChoiceField
            label={words.nose}
            value={cutter.nose ?? 'ball'}
            choices={[
              ['ball', words.ball],
              ['flat', words.flat],
            ]}
            onSet={(nose) => setFit({ cutter: { ...cutter, nose } })}
          />
          <NumberField
            label={words.handError}
            figures={figures}
            fits={(error) => error >= 0}
            value={cutter.handError}
            placeholder={figures.text(0.5 / mmIn(units))}
            onSet={(handError) => setFit({ cutter: { ...cutter, handError } })}
            onClear={() => setFit({ cutter: amended(cutter, { handError: undefined }) })}
          />
        </>
      )}
      <NumberField
        label={words.minWall}
        figures={figures}
        fits={(wall) => wall >= 0}
        value={minWall}
        placeholder="—"
        onSet={(wall) => setFit({ minWall: wall })}
        onClear={() => setFit({ minWall: undefined })}
      />
      <Tick label={words.straight} on={straight} onSet={(on) => setFit({ straight: on })} />
    </Group>
  );
}

interface TableProps {
  readonly name: string;
  readonly rows: readonly string[][];
  /** What goes to the place of a row on the drawing; null where it has none. */
  readonly goTo: (row: number) => (() => void) | null;
}

const Table = ({ name, rows: [head, ...rows], goTo }: TableProps) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: so that it can be scrolled by key
  <section class="scrolls" tabIndex={0} aria-label={name}>
    <table>
      <caption>{name}</caption>
      <thead>
        <tr>
          {head?.map((cell) => (
            <th key={cell} scope="col">
              {cell}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, r) => {
          const go = goTo(r);
          return (
            <tr key={row.join()}>
              {row.map((cell, i) => (
                <td key={i}>
                  {i > 0 || go === null ? (
                    cell
                  ) : (
                    <button type="button" class="place" title={words.showOnDrawing} onClick={go}>
                      {cell}
                    </button>
                  )}
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  </section>
);
