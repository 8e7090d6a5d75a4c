import { vi } from 'vitest';
import { run } from '../../cli/run.ts';

export interface CliRun {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command line in this process, with what it wrote and the exit code it would end with. */
export const runCli = (...argv: readonly string[]): Promise<CliRun> => heard(() => run(argv));

/** Runs what writes to the terminal, with what it wrote and what it gave. */
export async function heard<T>(work: () => Promise<T>): Promise<Omit<CliRun, 'code'> & { readonly code: T }> {
  const [stdout, stdoutSpy] = caught(process.stdout);
  const [stderr, stderrSpy] = caught(process.stderr);
  try {
    const code = await work();
    return { code, stdout: stdout.join(''), stderr: stderr.join('') };
  } finally {
    stdoutSpy.mockRestore();
    stderrSpy.mockRestore();
  }
}

function caught(stream: NodeJS.WriteStream): [string[], { mockRestore(): void }] {
  const chunks: string[] = [];
  const spy = vi.spyOn(stream, 'write').mockImplementation((chunk) => chunks.push(String(chunk)) > 0);
  return [chunks, spy];
}
