import { Session } from 'node:inspector';

interface FunctionCount {
  readonly functionName: string;
  readonly ranges: readonly { readonly count: number }[];
}

/**
 * How often functions of `src`, `cli` and `viewer` are called by name while something runs, by the engine's own count:
 * nothing is replaced, and nothing in the code counts along. A generator counts once each time it is begun or gone on with.
 */
export async function callsWhile(run: () => unknown): Promise<(functionName: string) => number> {
  const session = new Session();
  session.connect();
  const post = (method: string, settings?: object): Promise<unknown> =>
    new Promise((done, fail) =>
      session.post(method, settings, (error, result) => (error ? fail(error) : done(result))),
    );
  try {
    await post('Profiler.enable');
    await post('Profiler.startPreciseCoverage', { callCount: true, detailed: false });
    await post('Profiler.takePreciseCoverage');
    await run();
    const { result } = (await post('Profiler.takePreciseCoverage')) as {
      result: readonly { readonly url: string; readonly functions: readonly FunctionCount[] }[];
    };
    const counts = new Map<string, number>();
    for (const { url, functions } of result) {
      if (!/\/(src|cli|viewer)\//.test(url)) continue;
      for (const { functionName, ranges } of functions) {
        counts.set(functionName, (counts.get(functionName) ?? 0) + (ranges[0]?.count ?? 0));
      }
    }
    return (functionName) => counts.get(functionName) ?? 0;
  } finally {
    // or all that runs in this process afterwards is counted too, and slow
    await post('Profiler.stopPreciseCoverage');
    await post('Profiler.disable');
    session.disconnect();
  }
}
