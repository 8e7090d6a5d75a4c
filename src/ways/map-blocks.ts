import type { MapStrip } from './turn-map.ts';
import type { TurnRange } from './turns.ts';

/** Turns that are blocked over some stand-offs. */
export interface Block {
  readonly fromMm: number;
  readonly toMm: number;
  readonly turns: TurnRange;
}

/** The blocks of one kind; what goes on the same in the next strip is one. */
export function blocksOf(strips: readonly MapStrip[], of: (strip: MapStrip) => readonly TurnRange[]): Block[] {
  let open: Block[] = [];
  const ended: Block[] = [];
  for (const strip of strips) {
    const { fromMm, toMm } = strip.strip;
    const here = of(strip).map((turns): Block => {
      const below = open.find((block) => isSame(block.turns, turns));
      return { turns, fromMm: below?.fromMm ?? fromMm, toMm };
    });
    ended.push(
      ...open.filter(
        (block) => !here.some(({ turns, fromMm }) => block.fromMm === fromMm && isSame(block.turns, turns)),
      ),
    );
    open = here;
  }
  return [...ended, ...open];
}

const isSame = (a: TurnRange, b: TurnRange): boolean => a.fromRad === b.fromRad && a.toRad === b.toRad;

/** Above the last stand-off at which anything is blocked there is nothing to see. */
export function mapTopMm(strips: readonly MapStrip[]): number {
  const blocked = strips.filter(({ near, foul, unknown }) => near.length + foul.length + unknown.length > 0);
  return 1.15 * Math.max(10, ...blocked.map(({ strip }) => strip.toMm));
}

/** Below it nothing turns. */
export const engagedMm = (strips: readonly MapStrip[]): number =>
  strips.findLast(({ strip }) => strip.onDowels)?.strip.toMm ?? 0;
