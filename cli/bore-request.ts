import type { BoreLimit, BoreRequest } from '../src/bore/bore-result.ts';
import type { Finding, Reading } from '../src/files/finding.ts';
import { suggesting } from '../src/files/nearest.ts';
import { shown } from '../src/files/shown.ts';
import { dialErrorMm, gearboxBoreRunOut } from '../src/trade/bore-run-out.ts';
import { housingFlanges } from '../src/trade/flange-patterns.ts';
import { readDialRound } from './dial-round.ts';
import { gatheringIn } from './flag-findings.ts';
import { readLength } from './length-flag.ts';

/** The flags of `fettle bore`, as they were typed. */
export interface BoreFlags {
  readonly bore: string;
  readonly face?: string;
  readonly faceRadius?: string;
  readonly sag?: string;
  readonly error?: string;
  readonly limit?: string;
  readonly flange?: string;
}

/** What was read of a bore, or everything that is wrong with it. */
export function readBoreRequest(flags: BoreFlags): Reading<BoreRequest> {
  const findings: Finding[] = [];
  const given = gatheringIn(findings);
  const length = (at: string, value: string | undefined, least: 'more than 0' | '0 or more'): number | null =>
    given(value, (text) => readLength(at, text, least));
  findings.push(...atOddsIn(flags));
  const bore = given(flags.bore, (text) => readDialRound('--bore', text));
  const round = given(flags.face, (text) => readDialRound('--face', text));
  const radiusMm = length('--face-radius', flags.faceRadius, 'more than 0');
  const rest = {
    face: round !== null && radiusMm !== null ? { ...round, radiusMm } : null,
    sagMm: length('--sag', flags.sag, '0 or more') ?? 0,
    errorMm: length('--error', flags.error, '0 or more') ?? dialErrorMm,
    limit: given(flags.flange, limitOfFlange) ??
      statedLimit(length('--limit', flags.limit, 'more than 0')) ?? {
        ...gearboxBoreRunOut,
        of: 'gearbox' as const,
        flange: null,
      },
  };
  if (bore === null || findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { bore, ...rest } };
}

function atOddsIn({ face, faceRadius, limit, flange }: BoreFlags): Finding[] {
  const missing = (at: string, expected: string): Finding => ({ file: '', at, found: 'nothing', expected });
  return [
    ...(face !== undefined && faceRadius === undefined
      ? [missing('--face-radius', 'how far from the crank the plunger ran on the face, such as 150')]
      : []),
    ...(face === undefined && faceRadius !== undefined ? [missing('--face', 'the readings of the face')] : []),
    ...(limit !== undefined && flange !== undefined
      ? [{ file: '', at: '--limit', found: 'a limit beside --flange', expected: 'one of the two' }]
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
  const finding = { file: '', at: '--flange', found: shown(text), expected: `one of ${names.join(', ')}` };
  return { ok: false, findings: [suggesting(finding, text, names)] };
}
