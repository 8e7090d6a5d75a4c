import { existsSync, readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { boreAnswerSchema } from '../../../src/answers/bore-answer.ts';
import { checkAnswerSchema } from '../../../src/answers/check-answer.ts';
import { choicesAnswerSchema } from '../../../src/answers/choices-answer.ts';
import { compareAnswerSchema } from '../../../src/answers/compare-answer.ts';
import { drillAnswerSchema } from '../../../src/answers/drill-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { holeAnswerSchema } from '../../../src/answers/hole-answer.ts';
import { matchAnswerSchema } from '../../../src/answers/match-answer.ts';
import { roomAnswerSchema } from '../../../src/answers/room-answer.ts';
import { stackAnswerSchema } from '../../../src/answers/stack-answer.ts';
import { trialAnswerSchema } from '../../../src/answers/trial-answer.ts';
import { waysAnswerSchema } from '../../../src/answers/ways-answer.ts';
import { schemaIds } from '../../../src/files/file-text.ts';
import { fitFile } from '../../../src/files/fit-file.ts';
import { jobFile } from '../../../src/files/job-file.ts';
import { partFile } from '../../../src/files/part-file.ts';
import { stackFile } from '../../../src/files/stack-file.ts';
import { trialFile } from '../../../src/files/trial-file.ts';

const profiles = new URL('../../../profiles/', import.meta.url);
const readProfile = (path: string): unknown => JSON.parse(readFileSync(new URL(path, profiles), 'utf8'));

/** The name by which a file tells its editor of its schema; answers name none. */
const idOf = (name: string): object => {
  const id = Object.entries(schemaIds).find(([format]) => format === `fettle-${name}/1`)?.[1];
  return id === undefined ? {} : { $id: id };
};

const schemas = {
  part: partFile,
  fit: fitFile,
  job: jobFile,
  trial: trialFile,
  check: checkAnswerSchema,
  grind: grindAnswerSchema,
  choices: choicesAnswerSchema,
  'trial-answer': trialAnswerSchema,
  ways: waysAnswerSchema,
  hole: holeAnswerSchema,
  match: matchAnswerSchema,
  bore: boreAnswerSchema,
  stack: stackFile,
  'stack-answer': stackAnswerSchema,
  room: roomAnswerSchema,
  compare: compareAnswerSchema,
  drill: drillAnswerSchema,
};

const demos = {
  part: [
    'marsh-carrier/block.part.json',
    'marsh-carrier/transfer-case.part.json',
    'marsh-carrier/ring-gear.part.json',
    'marsh-carrier/clutch.part.json',
    'starter-boss/housing.part.json',
    'starter-boss/starter.part.json',
    'mount-bracket/boss.part.json',
    'mount-bracket/bracket.part.json',
    'sae-3-adapter/flywheel-housing.part.json',
    'sae-3-adapter/adapter.part.json',
  ],
  fit: [
    'marsh-carrier/transfer-case.fit.json',
    'starter-boss/starter.fit.json',
    'sae-3-adapter/adapter.fit.json',
    'mount-bracket/bracket.fit.json',
  ],
  trial: ['marsh-carrier/transfer-case.trial.json'],
  stack: ['marsh-carrier/transfer-case.stack.json'],
};

describe('published JSON Schemas', () => {
  it.each(Object.entries(schemas))('%s.schema.json is what the reader itself checks by', async (name, schema) => {
    const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input' });
    const published = `${JSON.stringify({ $schema, ...idOf(name), ...rest }, null, 2)}\n`;
    await expect(published).toMatchFileSnapshot(`../../../profiles/schemas/${name}.schema.json`);
  });

  describe.each(['part', 'fit', 'trial', 'stack'] as const)('%s', (name) => {
    let validate: ValidateFunction;
    const errorsOf = (value: unknown): unknown => (validate(value) ? null : validate.errors);

    beforeAll(() => {
      // a vertex may leave its bulge out, which ajv's own house rules for tuples frown on
      validate = new Ajv2020({ strictTuples: false }).compile(readProfile(`schemas/${name}.schema.json`) as object);
    });

    it.each(demos[name])('%s holds to its schema by an independent validator', (path) => {
      expect(errorsOf(readProfile(path))).toBeNull();
    });

    it.each(demos[name])('%s leads an editor to its schema', (path) => {
      const { $schema } = readProfile(path) as { $schema: string };
      const schema = new URL($schema, new URL(path, profiles));
      expect(schema.pathname).toMatch(new RegExp(`/schemas/${name}\\.schema\\.json$`));
      expect(existsSync(schema)).toBe(true);
    });

    it('an unknown key, a missing format and a wrong unit do not', () => {
      const demo = readProfile(demos[name][0] as string) as Record<string, unknown>;
      const { format, ...rest } = demo;
      expect(errorsOf({ ...demo, colour: 'grey' })).not.toBeNull();
      expect(errorsOf(rest)).not.toBeNull();
      expect(errorsOf({ ...demo, units: 'cm' })).not.toBeNull();
    });
  });
});
