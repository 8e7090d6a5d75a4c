import type { Verification } from '../src/clearance/verify/verify-doubt.ts';
import { exitCodes } from './exit.ts';
import { endWith, say } from './terminal.ts';

/** Says what came of a self-check on standard error; an answer that does not stand up to it is a fault of ours. */
export function reportVerification({ doubts, looks }: Verification): void {
  if (doubts.length === 0) {
    say(`Measured again at ${looks} points by other means: nothing was found against the answer.`);
    return;
  }
  say(
    'The answer does not stand up to being measured again; do not use it, and report this with your files (figures as in the JSON answer, in mm):',
  );
  for (const { where, text } of doubts) say(`  ${where}: ${text}`);
  endWith(exitCodes.ourBug);
}
