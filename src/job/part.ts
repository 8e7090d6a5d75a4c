/** One part of the joint, told from the other. */
export type Part = 'fixed' | 'moving';
