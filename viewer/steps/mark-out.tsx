import { useEffect, useState } from 'preact/hooks';
import { type BarReading, barMm, isReading, trueBars } from '../../src/drawing/scene/check-bars.ts';
import type { PaperName } from '../../src/drawing/scene/papers.ts';
import { planLine } from '../../src/words/grind-text.ts';
import { nameCut } from '../../src/words/part-cuts.ts';
import type { State } from '../app.ts';
import { ChoiceField, Group, NumberField, Tick } from '../fields.tsx';
import type { Printing, SheetsReply } from '../heavy/questions.ts';
import { plainFigures } from '../lengths.ts';
import { words } from '../words.ts';
import { Downloads } from './downloads.tsx';
import { Sheets } from './sheets.tsx';
import type { StepProps } from './step-props.ts';

/** What there is to mark out, in one line. */
export function markOutLine({ checked, planned }: State): string {
  if (planned === null) return words.notYet;
  if (checked !== null && planned.plan.reason !== null) return planLine(checked.joint, planned.plan);
  const { plan, tables } = planned;
  const ready = plan.cuts.flatMap((cut, i) => {
    const places = tables[i]?.length ?? 0;
    const part = plan.cuts.length > 1 && checked !== null ? nameCut(checked.joint, cut) : '';
    return places === 0 ? [] : words.ofPart(part, words.readyToMark(places));
  });
  return ready.length === 0 ? words.nothingToMark : ready.join('; ');
}

const paperNames = { a4: 'A4', a3: 'A3', letter: 'Letter' } as const satisfies Record<PaperName, string>;

export function MarkOut({ app, state, job }: StepProps) {
  const printing = app.reader.printing.value;
  const { paper, bars, mirrored } = printing;
  const [shown, setShown] = useState<SheetsReply | null>(null);
  useEffect(() => {
    let wanted = true;
    setShown(null);
    app.answers.sheets(job, { bars, mirrored }).then(
      (sheets) => wanted && setShown(sheets),
      () => {},
    );
    return () => {
      wanted = false;
      app.answers.leaveSheets();
    };
  }, [app, job, bars, mirrored]);
  const isCut = (state.planned?.tables.flat().length ?? 0) > 0;
  const drill = state.planned?.drill;
  const holesToDrill = (drill?.planned.length ?? 0) + (drill?.transfer.marked.length ?? 0);
  const print = (change: Partial<Printing>): void => {
    app.reader.printing.value = { ...printing, ...change };
  };
  return (
    <>
      <ChoiceField
        label={words.paper}
        value={paper}
        choices={papersFor(shown)}
        onSet={(next) => print({ paper: next })}
      />
      <p>{words.printTrue}</p>
      <Group name={words.checkBars}>
        {bothBars.map((bar) => (
          <NumberField
            key={bar}
            label={words.bar[bar]}
            figures={millimetres}
            value={bars[bar] === barMm ? undefined : bars[bar]}
            placeholder={String(barMm)}
            fits={(mm) => isReading({ ...trueBars, [bar]: mm })}
            wrong={words.noReading}
            onSet={(mm) => print({ bars: { ...bars, [bar]: mm } })}
            onClear={() => print({ bars: { ...bars, [bar]: barMm } })}
          />
        ))}
      </Group>
      <Tick label={words.mirrored} on={mirrored} onSet={(on) => print({ mirrored: on })} />
      <Downloads
        app={app}
        job={job}
        printing={printing}
        isCut={isCut}
        isAnyToDrill={holesToDrill > 0}
        allPages={shown?.allPages[paper]}
      />
      {shown === null ? null : <Sheets shown={shown} paper={paper} />}
    </>
  );
}

const bothBars = ['xMm', 'yMm'] as const satisfies readonly (keyof BarReading)[];
/** A bar is read with a rule in millimetres, whatever the files are in. */
const millimetres = plainFigures('mm', 3);

/** Each paper with how many sheets of it all that can be printed takes. */
const papersFor = (shown: SheetsReply | null): [PaperName, string][] =>
  (Object.entries(paperNames) as [PaperName, string][]).map(([paper, name]) => {
    const printed = (shown?.sheets ?? []).flatMap(({ on }) => (on[paper].printable ? [on[paper].count] : []));
    return [paper, printed.length === 0 ? name : words.paperTakes(name, sum(printed))];
  });

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);
