import type { State } from '../app.ts';
import { words } from '../words.ts';
import type { StepProps } from './step-props.ts';

/** How far the outlines have come, in one line. */
export function outlinesLine({ history }: State): string {
  const job = history?.now;
  if (job === undefined) return words.notYet;
  return [job.fit.fixed, job.fit.moving]
    .flatMap((name) => job.parts[name] ?? [])
    .map((part) => words.partTraced(part.name, part.sections.length))
    .join('; ');
}

export function Outlines({ job }: StepProps) {
  return (
    <ul>
      {Object.entries(job.parts).map(([name, part]) => (
        <li key={name}>{words.partTraced(part.name, part.sections.length)}</li>
      ))}
    </ul>
  );
}
