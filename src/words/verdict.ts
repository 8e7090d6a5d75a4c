import type { CheckResult, State } from '../clearance/check-result.ts';
import { inWords } from './layout.ts';
import { reasonText } from './reasons.ts';

/** The verdict in one line, the word first. */
export function verdictLine(check: CheckResult): string {
  switch (check.verdict) {
    case 'goes':
      return 'GOES: it keeps the clearance you asked for even with every tracing error against you.';
    case 'should-go':
      return 'SHOULD GO: it keeps the clearance you asked for as traced; the tracing error could eat it up.';
    case 'too-close':
      return `TOO CLOSE: ${closeness(check)}.`;
    case 'fouls':
      return `FOULS ${inWords(placesIn(check, 'fouls'))}: it does not go in as it stands.`;
    case 'undecided':
      if (check.reason !== null) return `UNDECIDED: ${reasonText(check.reason)}.`;
      return `UNDECIDED ${inWords(placesIn(check, 'undecided'))}: it cannot be called clear, and it is not shown to foul.`;
  }
}

function closeness(check: CheckResult): string {
  if (check.wander?.decides)
    return 'it keeps the clearance you asked for where nobody strays from the way in, but not within the wander';
  const touching = placesIn(check, 'touches');
  if (touching.length > 0) return `it touches ${inWords(touching)}`;
  return 'nothing touches as traced, but it comes nearer than you asked';
}

/** Where a check is in a state: at home, on the way in, at a rotating part. */
function placesIn({ home, wayIn, rotating, wander }: CheckResult, state: State): string[] {
  const parts = rotating.filter((part) => part.state === state).map(({ part }) => `at the rotating ${part}`);
  return [
    ...(home.state === state ? ['at home'] : []),
    ...(wayIn?.state === state ? ['on the way in'] : []),
    ...new Set(parts),
    ...([wander, ...(wander?.rotating ?? [])].some((strayed) => strayed?.state === state) ? ['within the wander'] : []),
  ];
}
