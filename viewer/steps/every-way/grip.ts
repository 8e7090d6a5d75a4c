import type { JobFile } from '../../../src/files/job-file.ts';
import type { App } from '../../app.ts';
import { withPositionMoved, withWay } from '../../job/way-edits.ts';

let grips = 0;

/** One position of the way in, held by a hand or by the arrow keys: all it is moved is taken back together. */
export class Grip {
  readonly index: number;
  readonly #app: App;
  readonly #before: JobFile | null;
  readonly #gesture = `way ${++grips}`;
  #last: JobFile | null;

  constructor(app: App, index: number) {
    this.index = index;
    this.#app = app;
    this.#before = app.job.now.peek();
    this.#last = this.#before;
  }

  /** Whether nothing else has changed the job since. */
  get holds(): boolean {
    return this.#app.job.now.peek() === this.#last;
  }

  /** In degrees and the units of the fit; where a leg would come to nothing it stays where it is. */
  moveTo(to: { readonly turn: number; readonly standOff: number }): void {
    const before = this.#before;
    const way = before?.fit.offerUp;
    const position = way?.[this.index];
    if (before === null || way === undefined || position === undefined) return;
    const isBack = to.turn === (position.turn ?? 0) && to.standOff === (position.standOff ?? 0);
    // of what was before, so that what it only passes does not come along
    const moved = withPositionMoved(way, this.index, to);
    if (moved === way && !isBack) return;
    this.#app.job.edit((now) => (isBack ? before : withWay(now, moved)), this.#gesture);
    this.#last = this.#app.job.now.peek();
  }

  /** Puts it back where it was. */
  abandon(): void {
    const before = this.#before;
    if (before !== null && this.holds) this.#app.job.edit(() => before, this.#gesture);
  }
}
