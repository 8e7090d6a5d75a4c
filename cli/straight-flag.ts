/** The option of every command that plans a cut, and what it does. */
export const straightFlag = [
  '--straight',
  'make the edges of cuts ones a grinder can follow: flats of 10 mm and more, arcs no tighter than the cutter',
] as const;

/** A joint or a job as its fit asks for it, with straight edges where the command asks for them too. */
export const asAsked = <J extends { readonly fit: { readonly straight?: boolean | undefined } }>(
  job: J,
  straight: boolean,
): J => (straight ? { ...job, fit: { ...job.fit, straight } } : job);
