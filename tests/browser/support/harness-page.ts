import * as disk from '../../../viewer/job/disk.ts';
import * as home from '../../../viewer/job/home.ts';
import * as keeper from '../../../viewer/job/keeper.ts';
import * as storage from '../../../viewer/job/storage.ts';
import * as tabs from '../../../viewer/job/tabs.ts';
import { edits } from './edits.ts';

/** The viewer's modules without a screen, and what the tests do with them in the page. */
const fettle = { ...storage, ...keeper, ...tabs, ...disk, ...home, ...edits };

export type Fettle = typeof fettle;

Object.assign(window, { fettle });
