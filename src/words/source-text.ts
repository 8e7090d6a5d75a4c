import type { Source } from '../trade/sourced.ts';

/** `ISO 2306, from memory`; `common practice`. */
export const sourceText = ({ basis, from }: Source): string => (from === '' ? basis : `${from}, ${basis}`);
