/** The option of every command that plans a cut, and what it does. */
export const straightFlag = [
  '--straight',
  'make the edges of cuts ones a grinder can follow: flats of 10 mm and more, arcs no tighter than the cutter',
] as const;
