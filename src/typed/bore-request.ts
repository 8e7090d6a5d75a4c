import type { BoreLimit, BoreRequest } from '../bore/bore-result.ts';
import type { Finding, Reading } from '../files/finding.ts';
import { suggesting } from '../files/nearest.ts';
import { shown } from '../files/shown.ts';
import { dialErrorMm, gearboxBoreRunOut } from '../trade/bore-run-out.ts';
import { housingFlanges } from '../trade/flange-patterns.ts';
import { readDialRound } from './dial-round.ts';
import { readLength } from './typed-length.ts';
import { gatheringIn } from './wrong-value.ts';

/** What was read of a bore, as it was typed; findings name these fields. */
export interface TypedBore {
  readonly bore: string;
  readonly face?: string | undefined;
  readonly faceRadius?: string | undefined;
  readonly sag?: string | undefined;
  readonly error?: string | undefined;
  readonly limit?: string | undefined;
  readonly flange?: string | undefined;
}

/** What was read of a bore, or everything that is wrong with it. */
export function readBoreRequest(typed: TypedBore): Reading<BoreRequest> {
  const findings: Finding[] = [];
  const given = gatheringIn(findings);
  const length = (at: string, value: string | undefined, least: 'more than 0' | '0 or more'): number | null =>
    given(value, (text) => readLength(at, text, least));
  findings.push(...atOddsIn(typed));
  const bore = given(typed.bore, (text) => readDialRound('bore', text));
  const round = given(typed.face, (text) => readDialRound('face', text));
  const radiusMm = length('faceRadius', typed.faceRadius, 'more than 0');
  const rest = {
    face: round !== null && radiusMm !== null ? { ...round, radiusMm } : null,
    sagMm: length('sag', typed.sag, '0 or more') ?? 0,
    errorMm: length('error', typed.error, '0 or more') ?? dialErrorMm,
    limit: given(typed.flange, limitOfFlange) ??
      statedLimit(length('limit', typed.limit, 'more than 0')) ?? {
        ...gearboxBoreRunOut,
        of: 'gearbox' as const,
        flange: null,
      },
  };
  if (bore === null || findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { bore, ...rest } };
}

function atOddsIn({ face, faceRadius, limit, flange }: TypedBore): Finding[] {
  const missing = (at: string, expected: string): Finding => ({ file: '', at, found: 'nothing', expected });
  return [
    ...(face !== undefined && faceRadius === undefined
      ? [missing('faceRadius', 'how far from the crank the plunger ran on the face, such as 150')]
      : []),
    ...(face === undefined && faceRadius !== undefined ? [missing('face', 'the readings of the face')] : []),
    ...(limit !== undefined && flange !== undefined
      ? [{ file: '', at: 'limit', found: 'a limit beside a flange', expected: 'one of the two' }]
      : []),
  ];
}

const statedLimit = (tirMm: number | null): BoreLimit | null =>
  tirMm === null
    ? null
    : { tirMm, of: 'stated', flange: null, source: { basis: 'common practice', from: 'as stated' } };

function limitOfFlange(text: string): Reading<BoreLimit> {
  const [, number = ''] = /^(?:SAE\s*)?(?:J617\s*)?(?:No\.?\s*)?(\S+)$/i.exec(text.trim().slice(0, 40)) ?? [];
  const flange = housingFlanges.find((one) => one.number === number);
  if (flange !== undefined)
    return { ok: true, value: { tirMm: flange.runOutMm, source: flange.source, of: 'flange', flange: flange.number } };
  const names = housingFlanges.map((one) => `SAE ${one.number}`);
  const finding = { file: '', at: 'flange', found: shown(text), expected: `one of ${names.join(', ')}` };
  return { ok: false, findings: [suggesting(finding, text, names)] };
}
