import type { Edge } from './edge.ts';
import { type Box, boxAround, boxOfEdge } from './edge-box.ts';
import type { Outline } from './metal-on-left.ts';
import { add, cross, distance, dot, lerp, scale, sub, type Vec, vec } from './vec.ts';

/** Part of an outline as a ball that rolls along its right side meets it: an edge, or a notch it only bridges. */
export type Contact =
  | { readonly kind: 'edge'; readonly edge: Edge; readonly box: Box }
  | { readonly kind: 'bridge'; readonly from: Vec; readonly to: Vec; readonly centre: Vec; readonly box: Box };

/**
 * A closed outline with every notch that a ball of radius `ballMm` on its right cannot enter filled up to the ball. It
 * grows by that radius to the very same solid, but the notches of a rough outline are gone from it.
 *
 * As in Graham's scan, a corner is dropped when the ball that rests on its two neighbours does not reach what lies
 * between them; what is dropped lies in a box too small for another ball, so no ball gets in from anywhere.
 */
export function closedByBall(outline: Outline, ballMm: number): Contact[] {
  const contacts: Contact[] = [];
  for (const edge of outline) {
    contacts.push({ kind: 'edge', edge, box: boxOfEdge(edge) });
    for (;;) {
      const [before, after] = contacts.slice(-2);
      const bridge = before && after && bridgeOver(before, after, ballMm);
      if (!bridge) break;
      contacts.splice(-2, 2, bridge);
    }
  }
  return contacts;
}

export const startOf = (contact: Contact): Vec => (contact.kind === 'edge' ? contact.edge.a : contact.from);

export const endOf = (contact: Contact): Vec => (contact.kind === 'edge' ? contact.edge.b : contact.to);

function bridgeOver(before: Contact, after: Contact, ballMm: number): Contact | null {
  if (isArc(before) || isArc(after)) return null;
  const [from, corner, to] = [startOf(before), endOf(before), endOf(after)];
  const chord = sub(to, from);
  const span = Math.hypot(chord.x, chord.y);
  if (span === 0 || span >= 2 * ballMm || cross(chord, sub(corner, from)) <= 0) return null;
  const box = boxAround([before.box, after.box]);
  if (Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= 2 * ballMm) return null;
  const height = Math.sqrt(ballMm * ballMm - (span * span) / 4);
  const centre = add(lerp(from, to, 0.5), scale(vec(chord.y, -chord.x), height / span));
  if (distance(corner, centre) < ballMm) return null;
  const staysOut =
    dot(headingFrom(before), sub(centre, from)) <= 0 && dot(headingBackFrom(after), sub(centre, to)) <= 0;
  return staysOut ? { kind: 'bridge', from, to, centre, box } : null;
}

const isArc = (contact: Contact): boolean => contact.kind === 'edge' && contact.edge.kind === 'arc';

/** The direction in which a straight edge or a bridge leaves its start; a bridge runs clockwise round its ball. */
function headingFrom(contact: Contact): Vec {
  if (contact.kind === 'edge') return sub(contact.edge.b, contact.edge.a);
  const arm = sub(contact.from, contact.centre);
  return vec(arm.y, -arm.x);
}

/** The direction in which it would leave its end, run backwards. */
function headingBackFrom(contact: Contact): Vec {
  if (contact.kind === 'edge') return sub(contact.edge.a, contact.edge.b);
  const arm = sub(contact.to, contact.centre);
  return vec(-arm.y, arm.x);
}
