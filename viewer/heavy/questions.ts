import type { Standing } from '../../src/clearance/at-position.ts';
import type { CheckResult } from '../../src/clearance/check-result.ts';
import type { TravelCurve } from '../../src/clearance/travel-curve.ts';
import type { Forgiven } from '../../src/clearance/wander/forgiven.ts';
import type { Tick } from '../../src/drawing/fit/map-ticks.ts';
import type { SeenFrom } from '../../src/drawing/fit/side-profile.ts';
import type { SheetPreview } from '../../src/drawing/markout/markout-pages.ts';
import type { BarReading } from '../../src/drawing/scene/check-bars.ts';
import type { PaperName } from '../../src/drawing/scene/papers.ts';
import type { SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import type { DrillResult } from '../../src/drill/drill-result.ts';
import type { Finding, Reading } from '../../src/files/finding.ts';
import type { FitFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { LoopFile } from '../../src/files/part-file.ts';
import type { GoFile, TrialFile } from '../../src/files/trial-file.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { MarkingTable } from '../../src/markout/marking-row.ts';
import type { Alternative } from '../../src/plan/alternatives/alternative.ts';
import type { PlanFigures } from '../../src/plan/plan-result.ts';
import type { NextReading } from '../../src/trial/measure-next.ts';
import type { Conclusion } from '../../src/trial/solve.ts';
import type { Block } from '../../src/ways/map-blocks.ts';
import type { Met } from '../../src/ways/meetings.ts';
import type { TurnRange } from '../../src/ways/turns.ts';
import type { WayPoint } from '../../src/ways/way-along.ts';
import type { Carried, PlaceToRead, Stopped } from '../job/trial-edits.ts';
import type { PackedJob } from '../packed.ts';
import type { BenchAsked, BenchTold } from './at-bench.ts';
import type { HomeTexts } from './home-texts.ts';
import type { FileToImport, ImportedFile } from './import-file.ts';
import type { OpenedFile, OpenedJob, OpenedTrial } from './opened-job.ts';
import type { ProposedPairs } from './pair-holes.ts';
import type { cutPictures, FaceSections, Pictures } from './pictures-of.ts';
import type { Heights } from './places-of.ts';
import type { PullInput } from './pull.ts';
import type { PulledOutline } from './pull-outline.ts';
import type { PictureInput, PictureSet } from './set-straight.ts';

/** What the page asks of the core; the job it is asked of is kept there, and changed by patches. */
export type Question =
  /** Everything of a job: the check, the curve along the way in, the plan; and what else would give, when asked. Drawn from a side seen before. */
  | { readonly kind: 'work'; readonly alternatives: boolean; readonly from: SeenFrom | null }
  /** The least clearance at a place of the way in. */
  | { readonly kind: 'at'; readonly leg: number; readonly at: number }
  /** Files to keep or print, drawn from a side seen before. */
  | { readonly kind: 'make'; readonly what: Making; readonly from: SeenFrom | null; readonly beside: BesideAnswers }
  /** The sheets to mark out by, to look at. */
  | { readonly kind: 'sheets'; readonly printing: Omit<Printing, 'paper'> }
  /** Which holes of the two parts come together. */
  | { readonly kind: 'pair-holes' }
  /** Files of Fettle as a job, beside the one that is open; or the worked job that the page brings. */
  | { readonly kind: 'open'; readonly files: readonly OpenedFile[] | 'demo'; readonly present: PackedJob | null }
  /** A job as the text of each file it was opened from. */
  | {
      readonly kind: 'texts';
      readonly job: PackedJob;
      readonly open: string;
      readonly served: readonly string[];
      readonly trial: OpenedTrial | null;
    }
  /** A file of outlines for a part. */
  | { readonly kind: 'import'; readonly file: FileToImport }
  /** How a photograph lies. */
  | { readonly kind: 'set-picture'; readonly asked: PictureInput }
  /** An outline onto the edges of a photograph. */
  | { readonly kind: 'pull'; readonly asked: PullInput }
  /** A trial file. */
  | { readonly kind: 'read-trial'; readonly file: OpenedFile }
  /** Where it stops before anything is cut, told in a unit; null in that of the fit. */
  | { readonly kind: 'foretell'; readonly units: Units | null }
  /** What trial fits teach. */
  | { readonly kind: 'trial'; readonly trial: TrialFile; readonly units: Units | null }
  /** What lies under the hand at a go; null is one that is to be begun. */
  | { readonly kind: 'place'; readonly go: GoFile | null; readonly pointed: PointedAt }
  /** How the readings of a go come along where it is put right how it stopped; null is not written down. */
  | { readonly kind: 'carry'; readonly go: GoFile; readonly stopped: Stopped | null }
  /** Every way in within some turns, told in a unit; null in that of the fit. */
  | { readonly kind: 'ways'; readonly turns: TurnRange; readonly units: Units | null }
  /** A tapped hole, a bore by the dial, or lengths along the crank: of no job. */
  | { readonly kind: 'bench'; readonly asked: BenchAsked }
  /** What is in the way at a turn and a stand-off. */
  | { readonly kind: 'met'; readonly at: WayPoint };

/** What of a job changes no answer; only a report is sent it, to hold the job whole. */
export type BesideAnswers = Pick<JobFile, 'pictures' | 'openRuns' | 'records'>;

/** How sheets are printed. */
export interface Printing {
  readonly paper: PaperName;
  /** What the printer made of the check bars: its error is taken off. */
  readonly bars: BarReading;
  readonly mirrored: boolean;
}

export interface Making extends Printing {
  /** `all` is one PDF of all that is printed. */
  readonly as: 'all' | 'pdf' | 'svg' | 'dxf' | 'csv' | 'report' | 'drawing' | 'drill';
  readonly date: string;
  /** The viewer's own page, for the report to hold. */
  readonly page: string;
}

export interface MadeFile {
  readonly name: string;
  readonly mediaType: string;
  readonly data: string | Uint8Array<ArrayBuffer>;
}

/** What one tap gives, to be downloaded. */
export interface HandedFile extends MadeFile {
  /** The names of the files in it, where it is a zip of several. */
  readonly holds: readonly string[];
}

/** Null where the job has nothing of that kind. */
export interface MadeReply {
  readonly kind: 'made';
  readonly file: HandedFile | null;
}

export interface SheetsReply {
  readonly kind: 'sheets';
  readonly sheets: readonly SheetPreview[];
  /** How many pages one PDF of all takes on each paper; null where there is none. */
  readonly allPages: Readonly<Record<PaperName, number | null>>;
  /** Why something is not made, in words. */
  readonly notMade: readonly string[];
}

export interface CheckReply {
  readonly kind: 'checked';
  /** With no outlines: they are drawn in the pictures. */
  readonly joint: Joint;
  readonly check: CheckResult;
  /** Where the crank comes to lie in the moving part's own drawing, mm. */
  readonly crankInMoving: Vec;
  readonly pictures: Pictures;
}

/** The way in, for drawing: the proved curve, and at the start of each of its pieces, and at the end, the moving sections' heights. */
export interface Way {
  readonly kind: 'way';
  readonly curve: TravelCurve;
  readonly heights: readonly (readonly Heights[])[];
  readonly forgives: Forgiven | null;
}

/** The proved curve with the plan's cut made; null where nothing is cut. */
export interface WayAfter {
  readonly kind: 'way-after';
  readonly curve: TravelCurve | null;
}

export interface PlanReply {
  readonly kind: 'planned';
  readonly plan: PlanFigures;
  /** The marking-out table of each part that is cut. */
  readonly tables: readonly MarkingTable[];
  readonly drill: DrillResult;
  /** Null where they were not worked out. */
  readonly alternatives: readonly Alternative[] | null;
  readonly cut: ReturnType<typeof cutPictures>;
}

export interface StandReply {
  readonly kind: 'stands';
  readonly leg: number;
  readonly at: number;
  readonly standing: Standing;
}

/** What trial fits teach, in words; or what of them cannot be. Its file reads by the name of the record. */
export type TrialTold =
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | {
      readonly kind: 'told';
      readonly conclusion: Conclusion;
      readonly line: string;
      readonly text: string;
      readonly measureNext: NextReading | null;
      /** Readings that the others contradict, and what they should be by those. */
      readonly disagreeing: readonly { readonly id: string; readonly expectedMm: number }[];
    };

/** Where the hand points to on the fixed part, mm: so near to an outline, or to just one section, at a depth that is known. */
export interface PointedAt {
  readonly at: Vec;
  readonly withinMm: number;
  readonly on: { readonly section: string; readonly depthMm: number | null } | null;
}

/** What lies under the hand: a place to be read, or a section beside which nothing of the moving part stands. */
export type PlaceFound =
  | { readonly kind: 'place'; readonly place: PlaceToRead }
  | { readonly kind: 'nothing-beside'; readonly section: string };

/** The map of turns and stand-offs, for drawing: what is not blocked is free. */
export interface TurnMap {
  readonly asked: TurnRange;
  readonly topMm: number;
  /** Where the dowels are engaged, so that nothing turns: from home up to here. */
  readonly dowelsMm: number;
  readonly blocks: Readonly<Record<'foul' | 'near' | 'unknown', readonly Block[]>>;
  readonly turnTicks: readonly Tick[];
  readonly standOffTicks: readonly Tick[];
}

/** Every way in, as the page shows it. */
export interface WaysTold {
  readonly line: string;
  readonly grounds: readonly string[];
  readonly exists: boolean | null;
  /** Null where nothing can be told. */
  readonly map: TurnMap | null;
  /** The way one would go, where it is another than the fit's: without a cut where that can be, else the cheapest. */
  readonly way: {
    readonly points: readonly WayPoint[];
    readonly text: string;
    readonly offerUp: NonNullable<FitFile['offerUp']>;
  } | null;
}

export type Reply =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'findings'; readonly findings: readonly Finding[] }
  | CheckReply
  | Way
  | { readonly kind: 'room'; readonly room: readonly SvgNode[] }
  | { readonly kind: 'finer'; readonly sections: FaceSections }
  | PlanReply
  | WayAfter
  | StandReply
  | SheetsReply
  | { readonly kind: 'opened'; readonly opened: Reading<OpenedJob<PackedJob>> }
  | { readonly kind: 'texts'; readonly texts: HomeTexts }
  | { readonly kind: 'imported'; readonly imported: ImportedFile }
  | { readonly kind: 'paired'; readonly proposed: ProposedPairs | null }
  | MadeReply
  | { readonly kind: 'picture-set'; readonly set: PictureSet }
  | { readonly kind: 'pulled'; readonly pulled: PulledOutline<LoopFile> | null }
  | { readonly kind: 'trial-read'; readonly read: Reading<TrialFile> }
  | { readonly kind: 'foretold'; readonly texts: readonly string[] | null }
  | { readonly kind: 'trial-told'; readonly told: TrialTold | null }
  | { readonly kind: 'place-found'; readonly found: PlaceFound | null }
  | { readonly kind: 'carried'; readonly carried: Carried | null }
  | { readonly kind: 'bench-told'; readonly told: BenchTold }
  | { readonly kind: 'ways-told'; readonly told: WaysTold | null }
  | { readonly kind: 'met'; readonly met: Met | null };
