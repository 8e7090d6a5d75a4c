import { z } from 'zod';

// Values that part and fit files share: lengths in the file's own units, angles in degrees.

export const units = z.enum(['mm', 'in']).describe('the unit of every length in this file');

export const text = z.string().regex(/\S/, 'text that is not blank');

export const length = z.number();

export const lengthOrNone = z.number().nonnegative();

export const size = z.number().positive();

export const point = z.tuple([length, length]).describe('[x, y]');

/** The path of another file, relative to the file that names it. */
export const filePath = text.describe('a file, relative to this one');

/** A key of every file that is for editors alone: it is kept, and never read. */
export const schemaReference = z.string().optional().describe('by which an editor finds the JSON Schema of this file');
