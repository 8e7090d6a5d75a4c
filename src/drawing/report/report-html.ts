import { checkSteps } from '../../words/check-text.ts';
import { nothingToCut, planLine, planSteps } from '../../words/grind-text.ts';
import { foulTexts, measureRows } from '../../words/measure-text.ts';
import { titleOf } from '../../words/names.ts';
import { reasonTexts } from '../../words/reasons.ts';
import { backToReport, moveIt, moveItNote, viewerTitle } from '../../words/report-text.ts';
import { verdictLine } from '../../words/verdict.ts';
import { alternatives, keepOff, markingOut, takeOff } from './cut.ts';
import { everyWay } from './every-way.ts';
import { drawings } from './figures.ts';
import { cautions, dowelUp, grounds, inputs, warnings } from './grounds.ts';
import { type HeldViewer, openingScript } from './held-viewer.ts';
import { holes } from './holes.ts';
import { el, type Html, list, paragraphs, section, table, written } from './html.ts';
import { pageStyle } from './page-style.ts';
import type { ReportInput } from './report-input.ts';
import { wayIn } from './way-in.ts';

/**
 * A job told whole in one HTML file for whoever does the cutting: it needs no network, reads on a telephone and on a dark
 * screen, and prints on A4 or Letter. The viewer it may hold wants scripts; the report itself does without.
 */
export function reportHtml(input: ReportInput): string {
  const sections = [
    section('drawings', 'Drawings', drawings(input)),
    wayIn(input),
    everyWay(input),
    takeOff(input),
    alternatives(input),
    markingOut(input),
    keepOff(input),
    cautions(input),
    dowelUp(input),
    holes(input),
    warnings(input),
    grounds(input),
    inputs(input),
  ].filter((part) => part !== null);
  const title = titleOf(input.joint);
  const page = el(
    'html',
    { lang: 'en', xmlns: 'http://www.w3.org/1999/xhtml' },
    el(
      'head',
      {},
      el('meta', { charset: 'utf-8' }),
      el('meta', { name: 'generator', content: `Fettle ${input.version}` }),
      el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      el('meta', { 'http-equiv': 'Content-Security-Policy', content: policy(input.viewer) }),
      el('title', {}, `${title}: fit report`),
      el('style', {}, pageStyle),
    ),
    el('body', {}, heading(input, title, sections), el('main', {}, sections), held(input.viewer)),
  );
  return `<!DOCTYPE html>\n${written(page)}\n`;
}

/** Nothing is fetched and nothing runs but the viewer that is held. What a page opens from itself is held to this too. */
const policy = (viewer: HeldViewer | null): string =>
  [
    "default-src 'none'",
    "style-src 'unsafe-inline'",
    ...(viewer === null
      ? []
      : [`script-src ${viewer.scripts.join(' ')}`, 'worker-src blob:', 'img-src blob: data:', "form-action 'none'"]),
    "base-uri 'none'",
  ].join('; ');

/** Seen where it can be followed. */
const buttonToViewer = el(
  'p',
  { class: 'move', hidden: '' },
  el('button', { id: 'move-it', type: 'button' }, moveIt),
  ` ${moveItNote}`,
);

const held = (viewer: HeldViewer | null): Html[] =>
  viewer === null
    ? []
    : [
        el(
          'dialog',
          { id: 'mover', 'aria-label': viewerTitle },
          el('button', { id: 'back', type: 'button' }, backToReport),
          el('iframe', { title: viewerTitle }),
        ),
        el('script', { id: 'viewer', type: 'text/plain' }, viewer.page),
        el('script', {}, openingScript),
      ];

/** The verdict first, then both figures beside what was asked, then what to do. */
function heading({ joint, check, plan, viewer }: ReportInput, title: string, sections: readonly Html[]): Html {
  const steps = nothingToCut(plan) ? checkSteps(check) : planSteps(plan);
  return el(
    'header',
    {},
    el('h1', {}, title),
    el('p', { class: 'verdict' }, verdictLine(check)),
    el('p', { class: 'plan' }, planLine(joint, plan)),
    paragraphs(reasonTexts(joint, check)),
    viewer && buttonToViewer,
    table('Clearance as traced, and with every tracing error against you', measureRows(joint, check)),
    paragraphs(foulTexts(joint, check)),
    section('what-to-do', 'What to do', list(steps)),
    contents(sections),
  );
}

const contents = (sections: readonly Html[]): Html =>
  el(
    'nav',
    { 'aria-label': 'Contents' },
    el(
      'ul',
      {},
      sections.map((part) => el('li', {}, el('a', { href: `#${part.attributes.id ?? ''}` }, headingOf(part)))),
    ),
  );

const headingOf = ({ children: [first] }: Html): string =>
  typeof first === 'object' && typeof first.children[0] === 'string' ? first.children[0] : '';
