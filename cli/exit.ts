/** What a command's exit code says; scripts may rely on it. */
export const exitCodes = {
  meets: 0,
  doesNotMeet: 1,
  inputWrong: 2,
  undecided: 3,
  ourBug: 70,
  // as a shell tells of a program that a signal ended: 128 and the signal's number
  hungUp: 129,
  interrupted: 130,
  terminated: 143,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Ends a command with an exit code; caught once, by `run`. */
export class Exit extends Error {
  readonly code: ExitCode;

  constructor(code: ExitCode) {
    super(`exit ${code}`);
    this.code = code;
  }
}
