import { svgOf } from '../svg/svg.ts';
import { drawFit } from './draw-fit.ts';
import type { DrawInput } from './draw-input.ts';

/**
 * A checked fit, and its cut plan where there is one, as an SVG file at true scale: what `fettle draw` writes. One user
 * unit is one millimetre. Nothing is computed and nothing thrown: what is handed in is drawn, all of one joint; `plan` is
 * null and `alternatives` are empty where they were not asked for.
 *
 * @example The demo carrier as it is, without a plan.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, drain, drawingSvg, readJob } from 'fettle';
 *
 * const fit = 'profiles/marsh-carrier/transfer-case.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, check, room } = found.value;
 * const svg = drawingSvg({ joint, check: drain(check()), plan: null, alternatives: [], room: drain(room()) });
 * console.log(/<svg [^>]* width="\d+(\.\d+)?mm"/.test(svg)); // true
 * ```
 */
export const drawingSvg = (input: DrawInput): string => svgOf(drawFit(input));
