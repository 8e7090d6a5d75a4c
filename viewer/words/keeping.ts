import type { SaveResult } from '../job/disk.ts';
import type { HomeSaveResult, SaveFailure } from '../job/home.ts';
import type { Keeping, WhyNotKept } from '../job/keeper.ts';

/** What is said of where the job is kept: in the browser, in other tabs, in files. */
export const keepingWords = {
  keeping: (keeping: Keeping): string =>
    keeping.state === 'cannot-keep'
      ? `Cannot keep: ${whyNot[keeping.why](keeping.said)} Nothing is lost as long as this page stays open.`
      : keeping.state === 'kept'
        ? 'Kept in this browser.'
        : 'Keeping it.',
  retry: 'Try again',

  elsewhere:
    'This job is open in another tab. What you change here is kept as a job of its own; to go on with the job itself, take over.',
  takeOver: 'Take over',
  takenOver: 'This job went to another tab. What you change here is kept as a job of its own.',
  keptElsewhere: 'Another tab has changed this job.',
  openAnew: 'Show it as it is now',

  missing: (names: readonly string[]): string => `Still wanted: ${names.join(', ')}. Open or drop it here.`,

  saved: (saved: SaveResult): string => {
    switch (saved.how) {
      case 'written':
        return `Saved as ${saved.name}.`;
      case 'downloaded':
        return `${saved.name} was handed to the browser as a download; see that it arrived.`;
      case 'called-off':
        return 'Not saved.';
      case 'too-large':
        return 'Not saved: with its pictures the job is larger than a file that can be opened again. Take a picture out, or make it smaller. The job is still here.';
      case 'failed':
        return `Not saved (${saved.said}). The job is still here; try another place.`;
    }
  },
  savedHome: ({ saved, notSaved, onlyInJob, moreInJob }: HomeSaveResult): string =>
    [
      ...(saved.length > 0 ? [`Saved: ${saved.join(', ')}.`] : []),
      ...notSaved.map(notSavedText),
      ...(onlyInJob.length > 0
        ? [`Not in these files yet: ${onlyInJob.join(', ')}. Save a job file to have it on the disk.`]
        : []),
      ...(moreInJob
        ? ['Pictures, open lines and records have no place in these files. Save a job file to have them on the disk.']
        : []),
    ].join(' '),
  changedOnDisk: 'The files were changed on the disk. Nothing was written over.',
  reload: 'Show what is on the disk',
  saveOver: 'Save over it',
} as const;

const whyNot: Readonly<Record<WhyNotKept, (said: string) => string>> = {
  'no-room': () => 'the browser has no room left for this page.',
  'not-allowed': () => 'this browser, or this window of it, lets the page keep nothing.',
  blocked: () => 'another tab holds the store; close the other tabs of Fettle.',
  'kept-elsewhere': () => 'another tab has changed this job, and is not written over.',
  broken: (said) => `the browser says ${said}.`,
};

function notSavedText(not: SaveFailure): string {
  switch (not.why) {
    case 'changed-on-disk':
      return `Not saved: ${not.file} was changed on the disk; nothing was written over.`;
    case 'unreachable':
      return `Not saved: ${not.file}, as fettle view does not answer. The job is still here.`;
    case 'refused':
      return `Not saved: ${not.said}`;
  }
}
