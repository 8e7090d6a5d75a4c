/** The steps of a job, in their order. */
export const stepNames = ['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out', 'trial-fit'] as const;
export type StepName = (typeof stepNames)[number];
