import type { Finding } from '../src/files/finding.ts';

/** Everything that is wrong with an input, on its way to the reader; caught once, by `run`. */
export class WrongInput extends Error {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super('wrong input');
    this.findings = findings;
  }
}

/** Ends a command because its input is wrong: every finding is printed, the exit code is 2. */
export function failWith(findings: readonly Finding[]): never {
  throw new WrongInput(findings);
}
