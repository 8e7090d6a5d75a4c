import { useEffect, useState } from 'preact/hooks';
import type { PaperName } from '../../src/drawing/scene/papers.ts';
import { planLine } from '../../src/words/grind-text.ts';
import type { State } from '../app.ts';
import { ChoiceField } from '../fields.tsx';
import type { MadeFile, Making, SheetsReply } from '../heavy/questions.ts';
import { ownPage } from '../own-page.ts';
import { words } from '../words.ts';
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

const kinds = [
  ['pdf', words.sheets],
  ['svg', words.svg],
  ['dxf', words.dxf],
  ['csv', words.csv],
  ['drawing', words.drawingFile],
  ['report', words.report],
] as const;

export function MarkOut({ app, state, job }: StepProps) {
  const [paper, setPaper] = useState<PaperName>('a4');
  const [making, setMaking] = useState('');
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
  const nothing = (state.planned?.tables[0] ?? []).length === 0;
  const make = async (as: Making['as']): Promise<void> => {
    setMaking(words.making);
    try {
      const page = as === 'report' ? ownPage() : '';
      const files = await app.answers.make(job, { as, paper, date: today(), page });
      if (files === null) return;
      for (const file of files) hand(file);
      setMaking(files.map(({ name }) => name).join(', '));
    } catch (error) {
      setMaking(words.broke(error instanceof Error ? error.message : String(error)));
    }
  };
  return (
    <>
      <ChoiceField label={words.paper} value={paper} choices={papersFor(shown)} onSet={setPaper} />
      <div class="jumps">
        {kinds.map(([as, label]) => (
          <button
            key={as}
            type="button"
            disabled={nothing && as !== 'report' && as !== 'drawing'}
            onClick={() => make(as)}
          >
            {label}
          </button>
        ))}
      </div>
      <p role="status">{making}</p>
      <p>{words.printTrue}</p>
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

/** Gives a file to whoever sits here, as a download. */
export function hand({ name, mediaType, data }: MadeFile): void {
  const address = URL.createObjectURL(new Blob([data], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** The date where the reader is, year first. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
