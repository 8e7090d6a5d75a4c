import { exitCodes } from './exit.ts';
import { say } from './terminal.ts';

/** What asks a program to end: Ctrl-C, the system, a terminal that is closed. */
const signals = [
  { name: 'SIGINT', end: ending(exitCodes.interrupted) },
  { name: 'SIGTERM', end: ending(exitCodes.terminated) },
  { name: 'SIGHUP', end: ending(exitCodes.hungUp) },
] as const;

function ending(code: number): () => void {
  return () => {
    if (process.stderr.isTTY) say('');
    process.exit(code);
  };
}

let holds = 0;

/**
 * Does what must not be cut short: a signal that comes meanwhile ends the program behind it. At all other times no
 * handler is set, and the system ends the program at once, whatever it is at. Who listens of his own is left to it.
 */
export function holdingSignals<T>(act: () => T): T {
  if (holds === 0) holdOff();
  holds += 1;
  try {
    return act();
  } finally {
    // what came meanwhile is heard once the loop has turned, which the first of these may be too early for
    setImmediate(() => setImmediate(letGo));
  }
}

function holdOff(): void {
  for (const { name, end } of signals) if (process.listenerCount(name) === 0) process.on(name, end);
}

function letGo(): void {
  holds -= 1;
  if (holds > 0) return;
  for (const { name, end } of signals) process.removeListener(name, end);
}
