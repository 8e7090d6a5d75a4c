import type { Casting } from '../model/casting.ts';
import type { ThinPlace } from '../model/grind-answer.ts';
import type { Fit } from '../model/job.ts';
import type { SectionCut } from './layers.ts';

export const thinFloors = (_casting: Casting, _cuts: readonly SectionCut[], _fit: Fit): ThinPlace[] => [];
