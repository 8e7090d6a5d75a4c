import { alignBore } from '../../src/bore/bore-result.ts';
import type { Finding, Reading } from '../../src/files/finding.ts';
import type { StackFile } from '../../src/files/stack-file.ts';
import { holeFor } from '../../src/holes/hole-result.ts';
import type { Units } from '../../src/job/lengths.ts';
import { stackIn } from '../../src/stack/read-stack.ts';
import { stackUp } from '../../src/stack/stack-result.ts';
import { readBoreRequest, type TypedBore } from '../../src/typed/bore-request.ts';
import { readHoleRequest, type TypedHole } from '../../src/typed/hole-request.ts';
import { boreLine, boreText } from '../../src/words/bore-text.ts';
import { holeLine, holeText } from '../../src/words/hole-text.ts';
import { lengthNames } from '../../src/words/stack-measuring.ts';
import { stackLine, stackText } from '../../src/words/stack-text.ts';

/** A question at the bench, as it is typed into the page's fields. */
export type BenchAsked =
  | { readonly what: 'hole'; readonly typed: TypedHole }
  | { readonly what: 'bore'; readonly typed: TypedBore }
  /** Told in a unit of its own. */
  | { readonly what: 'stack'; readonly file: StackFile; readonly units: Units };

/** What is said of it: the verdict in a line, and all of it; or what of it cannot be, by the names of its fields. */
export type BenchTold =
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | {
      readonly kind: 'told';
      readonly verdict: 'goes' | 'not' | 'undecided';
      readonly line: string;
      readonly text: string;
    };

export function toldAtBench(asked: BenchAsked): BenchTold {
  switch (asked.what) {
    case 'hole':
      return told(readHoleRequest(asked.typed), (request) => {
        const hole = holeFor(request);
        return { verdict: hole.against.length === 0 ? 'goes' : 'not', line: holeLine(hole), text: holeText(hole) };
      });
    case 'bore':
      return told(readBoreRequest(asked.typed), (request) => {
        const bore = alignBore(request);
        const verdict = bore.verdict === 'good' ? 'goes' : bore.verdict;
        return { verdict, line: boreLine(bore), text: boreText(bore) };
      });
    case 'stack':
      return told(stackIn('', asked.file), (read) => {
        const stack = stackUp({ ...read, units: asked.units });
        return { verdict: stack.verdict, line: stackLine(stack), text: stackText(stack, (name) => lengthNames[name]) };
      });
  }
}

function told<T>(
  reading: Reading<T>,
  tell: (value: T) => Omit<Extract<BenchTold, { readonly kind: 'told' }>, 'kind'>,
): BenchTold {
  return reading.ok ? { kind: 'told', ...tell(reading.value) } : { kind: 'refused', findings: reading.findings };
}
