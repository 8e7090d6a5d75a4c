/** The steps of a job, in their order. */
export const stepNames = ['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out'] as const;
export type StepName = (typeof stepNames)[number];
