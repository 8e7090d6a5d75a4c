import type { CompareResult } from '../compare/compare-castings.ts';
import type { Standing } from '../compare/standing-beyond.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { CompareAnswer } from './compare-answer.ts';
import { roundDegrees, roundDepth, roundOrNull } from './rounded.ts';

/** Two castings compared, as JSON, the answer of `fettle compare --json`: mm, mm² and degrees, rounded to 1e-6. */
export function compareAnswer({ fixed, moving, dowelUp }: Joint, result: CompareResult): CompareAnswer {
  const { refusal, beyond, within, groundBack, settled, agreement } = result;
  return {
    format: 'fettle-compare/1',
    first: fixed.name,
    second: moving.name,
    reason: refusal?.code ?? null,
    dowelUp: {
      turnDeg: roundDegrees(dowelUp.turnRad),
      shiftMm: roundPoint6(dowelUp.shift),
      rmsMm: roundOrNull(dowelUp.rmsMm),
      spacingErrorMm: roundOrNull(dowelUp.spacingErrorMm),
    },
    settled,
    standing: beyond.map(standingAnswer),
    within: within.map(standingAnswer),
    groundBack: groundBack && {
      volumeMm3: roundOrNull(groundBack.volumeMm3),
      massG: roundOrNull(groundBack.massG),
      remainsMm: round6(groundBack.remainsMm),
      notOffered: [...groundBack.notOffered],
      complete: groundBack.complete,
    },
    agreement: agreement && {
      within95Mm: round6(agreement.mostMm),
      largestMm: round6(agreement.largestMm),
      at: roundPoint6(agreement.at),
      depth: roundDepth(agreement.depth),
    },
  };
}

const standingAnswer = (standing: Standing): CompareAnswer['standing'][number] => ({
  section: standing.section,
  depth: roundDepth(standing.depth),
  at: roundPoint6(standing.at),
  areaMm2: round6(standing.areaMm2),
  proudMm: roundOrNull(standing.proudMm),
  errorMm: round6(standing.errorMm),
  beyondMm: roundOrNull(standing.beyondMm),
  untraced: standing.untraced,
});
