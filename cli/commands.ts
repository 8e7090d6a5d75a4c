import type { Command } from 'commander';

/** A command as the list of commands shows it; its file, and all that it needs, is read only when it is called. */
export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  readonly load: () => Promise<Command>;
}

export const commands: readonly CommandEntry[] = [
  {
    name: 'check',
    summary: 'does it go together, home and on the way in?',
    load: async () => (await import('./check.ts')).checkCommand(),
  },
  {
    name: 'grind',
    summary: 'what is the least metal to take off?',
    load: async () => (await import('./grind.ts')).grindCommand(),
  },
  {
    name: 'ways',
    summary: 'is there a way in that needs no cutting?',
    load: async () => (await import('./ways.ts')).waysCommand(),
  },
  {
    name: 'room',
    summary: 'how large may flywheel and clutch be?',
    load: async () => (await import('./room.ts')).roomCommand(),
  },
  {
    name: 'compare',
    summary: 'what has one casting that another of the same face has not?',
    load: async () => (await import('./compare.ts')).compareCommand(),
  },
  {
    name: 'draw',
    summary: 'a true-scale drawing of the fit, as SVG',
    load: async () => (await import('./draw.ts')).drawCommand(),
  },
  {
    name: 'markout',
    summary: 'the table, templates and gauges to mark the cut out with',
    load: async () => (await import('./markout.ts')).markoutCommand(),
  },
  {
    name: 'trial',
    summary: 'what does offering it up show, and what is left to cut?',
    load: async () => (await import('./trial.ts')).trialCommand(),
  },
  {
    name: 'report',
    summary: 'the whole job in one HTML file, to read, print and hand over',
    load: async () => (await import('./report.ts')).reportCommand(),
  },
  {
    name: 'view',
    summary: 'the job in a browser, on this machine alone',
    load: async () => (await import('./view.ts')).viewCommand(),
  },
  {
    name: 'import',
    summary: 'outlines from CSV, DXF or SVG into a part file',
    load: async () => (await import('./import.ts')).importCommand(),
  },
  {
    name: 'match',
    summary: 'which holes of two parts belong together?',
    load: async () => (await import('./match.ts')).matchCommand(),
  },
  {
    name: 'drill',
    summary: 'is there metal for the holes to be drilled, and where do they go?',
    load: async () => (await import('./drill.ts')).drillCommand(),
  },
  {
    name: 'hole',
    summary: 'a thread: what to drill, how deep, and what is left beside it',
    load: async () => (await import('./hole.ts')).holeCommand(),
  },
  {
    name: 'bore',
    summary: 'is a gearbox bore in line with the crank, by the dial?',
    load: async () => (await import('./bore.ts')).boreCommand(),
  },
  {
    name: 'stack',
    summary: 'do shaft, clutch and release gear come together along the crank?',
    load: async () => (await import('./stack.ts')).stackCommand(),
  },
  {
    name: 'demo',
    summary: 'a worked example: an iron four into a marsh carrier',
    load: async () => (await import('./demo.ts')).demoCommand(),
  },
];
