/** What a command's exit code says; scripts may rely on it. */
export const exitCodes = {
  meets: 0,
  doesNotMeet: 1,
  inputWrong: 2,
  undecided: 3,
  ourBug: 70,
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
