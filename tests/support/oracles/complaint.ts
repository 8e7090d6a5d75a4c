/** Something a plan does that it must not, as plain data. */
export interface Complaint {
  readonly what:
    | 'not-offered'
    | 'do-not-cut'
    | 'in-hole'
    | 'near-hole'
    | 'in-hollow'
    | 'near-hollow'
    | 'home'
    | 'way-in'
    | 'thin-floor'
    | 'thin-web';
  readonly part: 'fixed' | 'moving';
  /** What is concerned: a section, and what it is too near or cut into. */
  readonly of: string;
  readonly where: readonly [x: number, y: number];
  readonly depthMm: number;
  /** Distances where something is too near or too thin, with what was asked; else how thick the metal is, mm. */
  readonly mm: number;
  readonly askedMm: number | null;
}

/** Of complaints about the same things, the worst. */
export function worstOf(complaints: readonly Complaint[]): Complaint[] {
  const worst = new Map<string, Complaint>();
  for (const complaint of complaints) {
    const key = `${complaint.what} ${complaint.part} ${complaint.of}`;
    const known = worst.get(key);
    if (known === undefined || badness(complaint) > badness(known)) worst.set(key, complaint);
  }
  return [...worst.values()];
}

const badness = ({ mm, askedMm }: Complaint): number => (askedMm === null ? mm : askedMm - mm);
