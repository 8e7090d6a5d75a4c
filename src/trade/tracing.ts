/** What one way of getting an outline is good for, ± limits in mm; null where it says nothing of them. */
interface TracingMethod {
  readonly named: RegExp;
  readonly traceErrorMm: number | null;
  readonly depthErrorMm: number | null;
}

const method = (named: RegExp, traceErrorMm: number | null, depthErrorMm: number | null = null): TracingMethod => ({
  named,
  traceErrorMm,
  depthErrorMm,
});

/** What is assumed where neither the error nor the method is stated. */
export const traceErrorNotStatedMm = 1;

/** For the depth of an edge as cast, which is what most are. */
export const depthErrorAsCastMm = 1;

/** Common practice, no source. The narrower wording stands before the wider that it holds. */
const tracingMethods: readonly TracingMethod[] = [
  method(/\bdepth gauge to a machined edge/, null, 0.3),
  method(/\bphoto(?:graph)? along the crank/, 1),
  method(/\bphoto(?:graph)? from (?:[3-9]|\d\d) ?m\b/, 0.5),
  method(/\bphoto/, 1.5),
  method(/\bcontour gauge/, 0.8, 1.5),
  method(/\bscribing block/, 0.4),
  method(/\bfeature list/, 0.5),
  method(/\b(?:putty|impression)/, 0.5),
  method(/\bwasher/, 0.7),
  method(/\bcall?iper/, 0.15),
  method(/\brubb(?:ing|ed)/, 0.4),
  method(/\bgasket/, 1),
  method(/\bdrawing/, 2.2),
  method(/\bcard/, 0.5),
  method(/\bscan/, 0.4),
];

/**
 * ± trace error (mm) of the way an outline was got, told in free words; the greatest where several ways are named,
 * null where none is known.
 */
export const traceErrorMmOf = (gotBy: string): number | null => greatest(methodsIn(gotBy).map((m) => m.traceErrorMm));

/** ± error (mm) of depths got this way; null where the words say nothing of it. */
export const depthErrorMmOf = (gotBy: string): number | null => greatest(methodsIn(gotBy).map((m) => m.depthErrorMm));

function methodsIn(gotBy: string): TracingMethod[] {
  let rest = gotBy.toLowerCase().replace(/[\s_-]+/g, ' ');
  return tracingMethods.filter(({ named }) => {
    const found = named.test(rest);
    rest = rest.replace(named, ' ');
    return found;
  });
}

function greatest(errors: readonly (number | null)[]): number | null {
  const stated = errors.filter((error) => error !== null);
  return stated.length === 0 ? null : Math.max(...stated);
}
