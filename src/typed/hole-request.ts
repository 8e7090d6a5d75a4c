import type { Finding, Reading } from '../files/finding.ts';
import { suggesting } from '../files/nearest.ts';
import { shown } from '../files/shown.ts';
import type { HoleRequest } from '../holes/hole-result.ts';
import { threadNamed, threadNames } from '../holes/named-thread.ts';
import type { ThreadData } from '../holes/thread-data.ts';
import { type Drill, inchDrillNamed } from '../trade/inch-drills.ts';
import { materialNamed, materials } from '../trade/materials.ts';
import { lengthMm, readLength } from './typed-length.ts';
import { gatheringIn, wrongValue } from './wrong-value.ts';

/** What is asked of a hole, as it was typed; findings name these fields. */
export interface TypedHole {
  readonly thread: string;
  readonly was?: string | undefined;
  readonly material?: string | undefined;
  readonly engagement?: string | undefined;
  readonly boss?: string | undefined;
  readonly wall?: string | undefined;
  readonly keep?: string | undefined;
  readonly depth?: string | undefined;
  readonly have?: string | undefined;
}

const [leastDrillMm, mostDrillMm] = [0.5, 100];
const mostDrills = 500;
const mostWritten = 10_000;

/** What is asked of a hole, or everything that is wrong with it. */
export function readHoleRequest(typed: TypedHole): Reading<HoleRequest> {
  const findings: Finding[] = [];
  const given = gatheringIn(findings);
  const length = (name: 'engagement' | 'boss' | 'wall' | 'depth'): number | null =>
    given(typed[name], (text) => readLength(name, text, 'more than 0'));
  const thread = given(typed.thread, (text) => readThread('thread', text));
  const was = given(typed.was, (text) => readThread('was', text));
  const rest = {
    was,
    material: given(typed.material, readMaterial),
    engagementMm: length('engagement'),
    bossMm: length('boss'),
    wallMm: length('wall'),
    keepMm: given(typed.keep, (text) => readLength('keep', text, '0 or more')),
    depthMm: length('depth'),
    have: given(typed.have, readDrills),
  };
  if (thread === null || findings.length > 0) return { ok: false, findings };
  const request = { thread, ...rest };
  const impossible = cannotBe(request);
  return impossible.length > 0 ? { ok: false, findings: impossible } : { ok: true, value: request };
}

function readThread(at: string, designation: string): Reading<ThreadData> {
  const thread = threadNamed(designation);
  if (thread !== null) return { ok: true, value: thread };
  const finding = {
    file: '',
    at,
    found: shown(designation),
    expected: 'a thread with its pitch, such as M12x1.25, 3/8-16, "3/8 UNF", #10-24, G1/4 or Rc1/4',
  };
  return { ok: false, findings: [suggesting(finding, designation, threadNames())] };
}

function readMaterial(name: string): Reading<string> {
  const material = materialNamed(name.slice(0, 100));
  if (material !== null) return { ok: true, value: material.name };
  const names = materials.map((m) => m.name);
  const finding = { file: '', at: 'material', found: shown(name), expected: `one of ${names.join(', ')}` };
  return { ok: false, findings: [suggesting(finding, name, names)] };
}

function readDrills(list: string): Reading<readonly Drill[]> {
  const texts = list.slice(0, mostWritten).split(',', mostDrills + 1);
  const drills: Drill[] = [];
  for (const text of texts) {
    const drill = drillOf(text);
    if (drill === null)
      return wrongValue(
        'have',
        shown(text),
        `drills of ${leastDrillMm} to ${mostDrillMm} mm parted by commas, such as 9.5,10,10.2 or #7,F,27/64`,
      );
    drills.push(drill);
  }
  if (list.length <= mostWritten && drills.length <= mostDrills) return { ok: true, value: drills };
  return wrongValue('have', 'more drills than a box holds', `no more than ${mostDrills} drills`);
}

function drillOf(text: string): Drill | null {
  const inch = inchDrillNamed(text.slice(0, 40));
  if (inch !== null) return inch;
  const mm = lengthMm(text);
  if (mm === null || mm < leastDrillMm || mm > mostDrillMm) return null;
  return { name: text.trim().endsWith('mm') || mm === Number(text) ? `${mm} mm` : text.trim(), diameterMm: mm };
}

/** What no metal could do, each in one line. */
function cannotBe({ thread, was, bossMm, wallMm }: HoleRequest): Finding[] {
  if (was !== null && was.majorMm >= thread.majorMm)
    return wrongValue('was', was.name, `a thread smaller than ${thread.name}, which is to take its place`).findings;
  const mm = (length: number): string => `${Number(length.toFixed(2))} mm`;
  if (bossMm !== null && bossMm <= thread.majorMm)
    return wrongValue('boss', mm(bossMm), `a boss larger than the thread's ${mm(thread.majorMm)}`).findings;
  const takesMm = was === null ? 0 : (thread.majorMm - was.majorMm) / 2;
  if (wallMm !== null && wallMm <= takesMm)
    return wrongValue('wall', mm(wallMm), `more than the ${mm(takesMm)} that ${thread.name} takes of it`).findings;
  return [];
}
