import { Command } from 'commander';
import { matchAnswer } from '../src/answers/match.ts';
import type { Finding } from '../src/files/finding.ts';
import { matchParts, type PartMatch, type PatternOf } from '../src/holes/patterns/part-match.ts';
import type { Part } from '../src/job/part.ts';
import { readPart } from '../src/job/read-part.ts';
import { readLength } from '../src/typed/typed-length.ts';
import { matchText } from '../src/words/match-text.ts';
import { exitCodes } from './exit.ts';
import { loadText } from './load-text.ts';
import { orFail } from './open-job.ts';
import { failWith, WrongInput } from './report-findings.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
The first part is the fixed one, the second the one offered up; viewedFrom of both says how they are seen.
Holes are paired by where they are and by nothing else: neither names nor kinds count.
Exit code: 0 they match and all bolts that are known go in at once, 1 they do not,
3 whether the bolts go in is too near to tell, 2 an input is wrong.

Examples:
  fettle match profiles/sae-3-adapter/flywheel-housing.part.json profiles/sae-3-adapter/adapter.part.json
  fettle match profiles/marsh-carrier/block.part.json profiles/marsh-carrier/transfer-case.part.json --reach 3 --json`;

/** `fettle match A B`: lays two patterns of holes upon one another that nobody has paired. */
export function matchCommand(): Command {
  return new Command('match')
    .description('Finds how two unlabelled patterns of holes match: turn, hand, pairs, bolts, symmetries, standards.')
    .argument('<fixed>', 'the fixed part, *.part.json')
    .argument('<moving>', 'the part offered up, *.part.json')
    .option('--reach <length>', 'holes farther off one another are no pair', '1.5')
    .option('--centre', 'both are drawn about one centre, their origin: seek the turn only')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(match);
}

interface MatchFlags {
  readonly reach: string;
  readonly centre?: boolean;
  readonly json?: boolean;
}

function match(fixedFile: string, movingFile: string, { reach, centre = false, json = false }: MatchFlags): void {
  const [reachMm, fixed, moving] = allOrFail(
    () => orFail(readLength('--reach', reach, 'more than 0')),
    () => patternOf(fixedFile, 'fixed'),
    () => patternOf(movingFile, 'moving'),
  );
  const found = matchParts(fixed, moving, { reachMm, centred: centre });
  if (json) printJson(matchAnswer(found));
  else printVerdictFirst(matchText(found), colours[verdictOf(found)]);
  endWith(exitCodes[verdictOf(found)]);
}

const colours = { meets: 'goes', doesNotMeet: 'fouls', undecided: 'undecided' } as const;

function verdictOf({ goes, match: { conclusion, hand, bolts } }: PartMatch): keyof typeof colours {
  if (goes) return 'meets';
  const tooNear = conclusion === 'match' && hand === 'as-drawn' && bolts?.conclusion === 'undecided';
  return tooNear ? 'undecided' : 'doesNotMeet';
}

/** More holes are no pattern, and would take minutes. */
const mostHoles = 500;

function patternOf(file: string, role: Part): PatternOf {
  const { name, holes } = orFail(readPart(file, orFail(loadText(file)), role));
  const wrong = (found: string): never =>
    failWith([{ file, at: 'holes', found, expected: `1 to ${mostHoles} holes to match` }]);
  if (holes.length === 0) return wrong('no holes');
  return holes.length > mostHoles ? wrong(`${holes.length} holes`) : { name, holes };
}

/** The values of some readings, or the end of the command with all that is wrong in any of them. */
function allOrFail<T extends readonly unknown[]>(...readings: { readonly [K in keyof T]: () => T[K] }): T {
  const findings: Finding[] = [];
  const values = readings.map((read) => {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof WrongInput)) throw error;
      findings.push(...error.findings);
      return null;
    }
  });
  if (findings.length > 0) failWith(findings);
  return values as unknown as T;
}
