import { useEffect, useState } from 'preact/hooks';
import type { PaperName } from '../../src/drawing/scene/papers.ts';
import { planLine } from '../../src/words/grind-text.ts';
import type { State } from '../app.ts';
import { ChoiceField } from '../fields.tsx';
import type { SheetsReply } from '../heavy/questions.ts';
import { words } from '../words.ts';
import { Downloads } from './downloads.tsx';
import { Sheets } from './sheets.tsx';
import type { StepProps } from './step-props.ts';

/** What there is to mark out, in one line. */
export function markOutLine({ checked, planned }: State): string {
  if (planned === null) return words.notYet;
  if (checked !== null && planned.plan.reason !== null) return planLine(checked.joint, planned.plan);
  const places = (planned.tables[0] ?? []).length;
  return places === 0 ? words.nothingToMark : words.readyToMark(places);
}

const paperNames = { a4: 'A4', a3: 'A3', letter: 'Letter' } as const satisfies Record<PaperName, string>;

export function MarkOut({ app, state, job }: StepProps) {
  const [paper, setPaper] = useState<PaperName>('a4');
  const [shown, setShown] = useState<SheetsReply | null>(null);
  useEffect(() => {
    let wanted = true;
    setShown(null);
    app.answers.sheets(job).then(
      (sheets) => wanted && setShown(sheets),
      () => {},
    );
    return () => {
      wanted = false;
      app.answers.leaveSheets();
    };
  }, [app, job]);
  const isCut = (state.planned?.tables[0] ?? []).length > 0;
  return (
    <>
      <ChoiceField label={words.paper} value={paper} choices={papersFor(shown)} onSet={setPaper} />
      <p>{words.printTrue}</p>
      <Downloads app={app} job={job} printing={{ paper }} isCut={isCut} allPages={shown?.allPages[paper]} />
      {shown === null ? null : <Sheets shown={shown} paper={paper} />}
    </>
  );
}

/** Each paper with how many sheets of it all that can be printed takes. */
const papersFor = (shown: SheetsReply | null): [PaperName, string][] =>
  (Object.entries(paperNames) as [PaperName, string][]).map(([paper, name]) => {
    const printed = (shown?.sheets ?? []).flatMap(({ on }) => (on[paper].printable ? [on[paper].count] : []));
    return [paper, printed.length === 0 ? name : words.paperTakes(name, sum(printed))];
  });

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);
