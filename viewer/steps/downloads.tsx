import { useEffect, useState } from 'preact/hooks';
import type { JobFile } from '../../src/files/job-file.ts';
import type { App } from '../app.ts';
import type { HandedFile, MadeFile, Making, Printing } from '../heavy/questions.ts';
import { download } from '../job/disk.ts';
import { ownPage } from '../own-page.ts';
import { today } from '../today.ts';
import { words } from '../words.ts';

const kinds = [
  ['pdf', words.sheets],
  ['svg', words.svg],
  ['dxf', words.dxf],
  ['csv', words.csv],
  ['drawing', words.drawingFile],
  ['report', words.report],
  ['drill', words.toDrill],
] as const satisfies readonly (readonly [Making['as'], string])[];

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly printing: Printing;
  /** Whether there is anything to mark out. */
  readonly isCut: boolean;
  readonly isAnyToDrill: boolean;
  /** How many pages one PDF of all takes; undefined where that is not known yet, null where there is none. */
  readonly allPages: number | null | undefined;
}

/** Every file there is to take along: all that is printed in one first, and what was made, to be saved again. */
export function Downloads({ app, job, printing, isCut, isAnyToDrill, allPages }: Props) {
  const [atWork, setAtWork] = useState<readonly Making['as'][]>([]);
  const [made, setMade] = useState<readonly HandedFile[]>([]);
  const [trouble, setTrouble] = useState('');
  // what was made of the job as it was, or for another printer, is not of this one
  useEffect(() => {
    setMade([]);
    setTrouble('');
  }, [job, printing]);

  const save = (file: HandedFile): void => setTrouble(troubleSaving(file));
  const make = async (as: Making['as']): Promise<void> => {
    if (atWork.includes(as)) return;
    setAtWork((before) => [...before, as]);
    setTrouble('');
    try {
      const page = as === 'report' ? ownPage() : '';
      const reply = await app.answers.make(job, { as, ...printing, date: today(), page });
      if (reply === null) return;
      const { file } = reply;
      if (file === null) {
        setTrouble(words.madeNothing);
        return;
      }
      setMade((before) => [file, ...before.filter(({ name }) => name !== file.name)]);
      save(file);
    } catch (error) {
      setTrouble(words.notMade(saidBy(error)));
    } finally {
      setAtWork((before) => before.filter((one) => one !== as));
    }
  };
  const offer = (as: Making['as'], label: string, isOffered: boolean) => (
    <button key={as} type="button" disabled={!isOffered} aria-busy={atWork.includes(as)} onClick={() => make(as)}>
      {label}
    </button>
  );
  return (
    <section class="downloads">
      {allPages === null ? null : offer('all', words.allSheets(allPages ?? null), isCut)}
      <p role="status">{atWork.length === 0 ? '' : words.making}</p>
      {trouble === '' ? null : <p role="alert">{trouble}</p>}
      {made.length === 0 ? null : (
        <>
          <p>{words.handedOver}</p>
          <ul class="made" aria-label={words.made}>
            {made.map((file) => (
              <li key={file.name}>
                <button type="button" onClick={() => save(file)}>
                  {file.name}
                </button>
                {file.holds.length === 0 ? null : (
                  <ul aria-label={words.inside(file.name)}>
                    {file.holds.map((name) => (
                      <li key={name}>{name}</li>
                    ))}
                  </ul>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>{words.byKind}</p>
      <div class="jumps">
        {kinds.map(([as, label]) =>
          offer(as, label, as === 'drill' ? isAnyToDrill : isCut || as === 'report' || as === 'drawing'),
        )}
      </div>
    </section>
  );
}

/** Hands a file to the browser; in words why it would not go, else nothing. */
function troubleSaving(file: MadeFile): string {
  try {
    download(file);
    return '';
  } catch (error) {
    return words.notSaved(file.name, saidBy(error));
  }
}

const saidBy = (error: unknown): string => (error instanceof Error ? error.message : String(error));
