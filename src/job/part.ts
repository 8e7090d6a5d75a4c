/** One part of the joint, told from the other. */
export type Part = 'fixed' | 'moving';

export const otherPart = (part: Part): Part => (part === 'fixed' ? 'moving' : 'fixed');
