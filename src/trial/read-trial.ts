import { farLengths } from '../files/far-lengths.ts';
import type { Finding, Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import type { PositionFile } from '../files/fit-file.ts';
import { suggesting } from '../files/nearest.ts';
import { readJson } from '../files/read-json.ts';
import { schemaFindings } from '../files/schema-findings.ts';
import { shown } from '../files/shown.ts';
import { type GoFile, type TrialFile, trialFile } from '../files/trial-file.ts';
import { mmPer, pointOf } from '../job/lengths.ts';
import { home, type Position } from '../job/path.ts';
import { positionOf } from '../job/position-of.ts';
import type { Joint } from '../joint/joint.ts';
import { contactAt, movingAtDepth, type Offered } from './contact.ts';
import { asTraced } from './correction.ts';
import { dowelPace, nearestOnTheWay, type OnTheWay, runsBy, whereDowelStands } from './on-the-way.ts';
import { sectionAt, surfacePlaceOf } from './surface-place.ts';
import type { CutSoFar, Go, Stopped, Trial, TrialReading } from './trial.ts';

/** A trial file's text, or everything its schema finds wrong with it. */
export function readTrialFile(file: string, text: string): Reading<TrialFile> {
  const json = readJson(file, text);
  if (!json.ok) return json;
  const findings = [...schemaFindings(file, trialFile, json.value), ...farLengths(file, json.value, 1)];
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  return { ok: true, value: json.value as TrialFile };
}

// Common practice, no source.
const readingErrorMm = 0.1;
const stopErrorDeg = 0.5;
const stopErrorMm = 0.5;

/** Clay thicker than this was not pressed by anything, mm. */
const thickestClayMm = 25;

/** A place farther from its outline than tracing errors and a thick thumb is of something else, mm. */
const offOutlineMm = 3;

/** The trial fits of a job, in mm and radians; or all that cannot be: a place where no metal is, a stop before anything meets. */
export function trialOf(
  joint: Joint,
  file: string,
  { goes }: TrialFile,
  offeredAs: (cut: CutSoFar) => Offered,
  places: readonly number[],
): Reading<Trial> {
  const findings: Finding[] = [];
  const reader = new TrialReader(joint, file, findings);
  const seen = new Set<string>();
  const read = goes.map((go, i) => {
    const at = `goes[${i}]`;
    if (go.go !== i + 1) reader.refuse(`${at}.go`, String(go.go), `${i + 1}: goes are counted in order`);
    for (const [k, { id }] of (go.readings ?? []).entries()) {
      if (seen.has(id)) reader.refuse(`${at}.readings[${k}].id`, `${shown(id)}, used already`, 'an id of its own');
      seen.add(id);
    }
    const cut = reader.cutOf(at, go, places);
    const offered = findings.length > 0 ? null : offeredAs(cut);
    return reader.goOf(at, go, cut, offered);
  });
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  return { ok: true, value: { file, goes: read } };
}

/** What has come off, as it was written down in a unit of so many mm. */
export const cutSoFar = (cut: NonNullable<GoFile['cut']>, mm: number): CutSoFar =>
  typeof cut === 'string'
    ? { kind: cut }
    : { kind: 'measured', places: cut.map(({ place, takeOff }) => ({ place, takeOffMm: takeOff * mm })) };

class TrialReader {
  readonly #joint: Joint;
  readonly #file: string;
  readonly #findings: Finding[];
  readonly #mm: number;

  constructor(joint: Joint, file: string, findings: Finding[]) {
    this.#joint = joint;
    this.#file = file;
    this.#findings = findings;
    this.#mm = mmPer(joint.fit.units);
  }

  refuse(at: string, found: string, expected: string): void {
    this.#findings.push({ file: this.#file, at, found, expected });
  }

  cutOf(at: string, { cut = 'none' }: GoFile, places: readonly number[]): CutSoFar {
    for (const [k, { place }] of typeof cut === 'string' ? [] : cut.entries())
      if (!places.includes(place))
        this.refuse(`${at}.cut[${k}].place`, String(place), `a place of the marking-out table (${rangeOf(places)})`);
    return cutSoFar(cut, this.#mm);
  }

  goOf(at: string, go: GoFile, cut: CutSoFar, offered: Offered | null): Go {
    return {
      go: go.go,
      cut,
      stopped: go.stopped === undefined ? null : this.#stoppedOf(`${at}.stopped`, go.stopped, offered),
      readings: (go.readings ?? []).flatMap((reading, k) => this.#readingOf(`${at}.readings[${k}]`, reading, offered)),
      faces: (go.faces ?? []).map((face) => ({ at: pointOf(face.at, this.#mm), gapMm: face.gap * this.#mm })),
    };
  }

  #stoppedOf(at: string, stopped: NonNullable<GoFile['stopped']>, offered: Offered | null): Stopped | null {
    if (stopped === 'home') return { kind: 'home' };
    const { legs } = this.#joint.fit;
    if (legs.length === 0) {
      this.refuse(at, shown(stopped), 'a way in in the fit ("offerUp") for it to stop on, or "home"');
      return null;
    }
    const on = 'dowel' in stopped ? this.#byDowel(at, stopped) : this.#byPosition(stopped);
    const leg = on === null ? undefined : legs[on.leg - 1];
    if (on === null || leg === undefined) return null;
    const position = 'dowel' in stopped ? on.position : positionOf(stopped, this.#mm);
    if (offered !== null && contactAt(offered, position, asTraced) === null) {
      this.refuse(at, positionText(stopped), 'a position at which sections of the two parts share depth');
      return null;
    }
    return { kind: 'at', position, leg: on.leg, at: on.at, ...this.#errorOf(stopped, leg, on) };
  }

  #byPosition(stopped: PositionFile): OnTheWay | null {
    return nearestOnTheWay(this.#joint.fit.legs, positionOf(stopped, this.#mm));
  }

  #byDowel(
    at: string,
    { dowel, fromHole, standOff }: { dowel: string; fromHole: number; standOff?: number | undefined },
  ): OnTheWay | null {
    const { fit } = this.#joint;
    const pair = fit.dowels.find(({ fixed }) => fixed.id === dowel);
    if (pair === undefined) {
      const known = fit.dowels.map(({ fixed }) => fixed.id);
      const finding = {
        file: this.#file,
        at: `${at}.dowel`,
        found: shown(dowel),
        expected: `a paired dowel (${known.join(', ') || 'the fit has none'})`,
      };
      this.#findings.push(suggesting(finding, dowel, known));
      return null;
    }
    const on = whereDowelStands(
      fit.legs,
      pair,
      fromHole * this.#mm,
      standOff === undefined ? null : standOff * this.#mm,
    );
    if (on === null)
      this.refuse(
        `${at}.fromHole`,
        String(fromHole),
        `a distance that ${dowel} has from its hole somewhere on the way in`,
      );
    return on;
  }

  #errorOf(stopped: Exclude<NonNullable<GoFile['stopped']>, 'home'>, leg: Joint['fit']['legs'][number], on: OnTheWay) {
    const { per } = runsBy(leg);
    const stated = stopped.error;
    if ('dowel' in stopped) {
      const pair = this.#joint.fit.dowels.find(({ fixed }) => fixed.id === stopped.dowel);
      const errorMm = stated === undefined ? stopErrorMm : stated * this.#mm;
      const pace = pair === undefined ? 0 : dowelPace(leg, pair, on.at);
      return { per, error: pace > 0 ? errorMm / pace : errorMm };
    }
    if (per === 'turn') return { per, error: ((stated ?? stopErrorDeg) * Math.PI) / 180 };
    return { per, error: stated === undefined ? stopErrorMm : stated * this.#mm };
  }

  #readingOf(at: string, reading: NonNullable<GoFile['readings']>[number], offered: Offered | null): TrialReading[] {
    const { sections } = this.#joint.fixed;
    const known = [...new Set(sections.map(({ id }) => id))];
    if (!known.includes(reading.section)) {
      const finding = {
        file: this.#file,
        at: `${at}.section`,
        found: shown(reading.section),
        expected: `the id of a section of ${this.#joint.fixed.file} (${known.slice(0, 12).join(', ')})`,
      };
      this.#findings.push(suggesting(finding, reading.section, known));
      return [];
    }
    const position: Position =
      reading.position === undefined || reading.position === 'home' ? home : positionOf(reading.position, this.#mm);
    const place = {
      id: reading.id,
      section: reading.section,
      at: pointOf(reading.at, this.#mm),
      depthMm: reading.depth * this.#mm,
      position,
      errorMm: reading.error === undefined ? readingErrorMm : reading.error * this.#mm,
    };
    if (offered !== null && !this.#isSound(at, place, offered)) return [];
    if (reading.kind === 'mark') return [{ ...place, kind: 'mark', touched: reading.touched }];
    const thicknessMm = reading.thickness * this.#mm;
    if (thicknessMm > thickestClayMm) {
      this.refuse(
        `${at}.thickness`,
        `${reading.thickness}`,
        `the thickness of pressed clay, at most ${thickestClayMm} mm`,
      );
      return [];
    }
    return [{ ...place, kind: 'clay', thicknessMm }];
  }

  #isSound(at: string, place: Omit<TrialReading, 'kind'>, offered: Offered): boolean {
    const { section, depthMm, position } = place;
    if (sectionAt(offered, place) === null) {
      this.refuse(`${at}.depth`, `${depthMm / this.#mm}`, `a depth at which ${section} has metal`);
      return false;
    }
    const onto = surfacePlaceOf(offered, place);
    if (onto === null || onto.offMm > offOutlineMm) {
      const off = onto === null ? 'no metal there' : `a place ${onto.offMm.toFixed(1)} mm from the outline`;
      this.refuse(`${at}.at`, off, `a place on the surface of ${section}, within ${offOutlineMm} mm of its outline`);
      return false;
    }
    if (movingAtDepth(offered.joint, depthMm, position.standOffMm).length > 0) return true;
    this.refuse(`${at}.depth`, `${depthMm / this.#mm}`, 'a depth at which the moving part has metal beside it there');
    return false;
  }
}

const rangeOf = (places: readonly number[]): string =>
  places.length === 0 ? 'it has none' : `${Math.min(...places)} to ${Math.max(...places)}`;

const positionText = (stopped: Exclude<NonNullable<GoFile['stopped']>, 'home'>): string =>
  'dowel' in stopped
    ? `${stopped.dowel} ${stopped.fromHole} from its hole`
    : `turn ${stopped.turn ?? 0}, standOff ${stopped.standOff ?? 0}`;
