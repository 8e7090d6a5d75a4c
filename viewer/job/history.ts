/** What was, what is, and what was taken back; every state is kept, and states share what they have in common. */
export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** What the last change was part of: changes of one gesture, named alike, are taken back together. */
  readonly gesture: string | null;
}

export const startingWith = <T>(now: T): History<T> => ({ past: [], now, future: [], gesture: null });

export function changed<T>(history: History<T>, now: T, gesture: string | null = null): History<T> {
  if (now === history.now) return history;
  const goesOn = gesture !== null && gesture === history.gesture;
  // a gesture that comes back to where it began has changed nothing
  if (goesOn && now === history.past.at(-1)) return { past: history.past.slice(0, -1), now, future: [], gesture: null };
  return { past: goesOn ? history.past : [...history.past, history.now], now, future: [], gesture };
}

export function undone<T>({ past, now, future }: History<T>): History<T> | null {
  const before = past.at(-1);
  return before === undefined
    ? null
    : { past: past.slice(0, -1), now: before, future: [now, ...future], gesture: null };
}

export function redone<T>({ past, now, future }: History<T>): History<T> | null {
  const [after, ...later] = future;
  return after === undefined ? null : { past: [...past, now], now: after, future: later, gesture: null };
}
