import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { migrations } from '../../src/archive/migrations/migrations.ts';
import { Observation } from '../../src/domain/care/observation.ts';
import { KeptForecast } from '../../src/domain/growth/forecast/keptForecast.ts';
import { FileOutcome } from '../../src/domain/intake/task.ts';
import { CalibrationRecord } from '../../src/domain/measuring/calibration.ts';
import { Reading } from '../../src/domain/measuring/reading.ts';
import { Exuvia } from '../../src/domain/molting/exuvia.ts';
import { Molt } from '../../src/domain/molting/molt.ts';
import { Photo } from '../../src/domain/photo/photo.ts';
import { Preferences } from '../../src/domain/preferences.ts';
import { PrintCheck } from '../../src/domain/scaleCard/printCheck.ts';
import { Determination, ExaminationUnderWay } from '../../src/domain/sexing/determination.ts';
import { ModelChange } from '../../src/domain/sexing/evidence/model.ts';
import { ProfileEdit } from '../../src/domain/sexing/genus/profile.ts';
import { LiveSign } from '../../src/domain/sexing/live/liveSign.ts';
import { Specimen } from '../../src/domain/specimen/specimen.ts';
import { narrowingsBetween } from '../support/narrowing.ts';

/** Every schema that a row of the catalogue is read by, including the documents in its columns. */
const STORED = {
  calibration: CalibrationRecord,
  determination: Determination,
  exuvia: Exuvia,
  forecast: KeptForecast,
  'genus-edit': ProfileEdit,
  'import-outcome': FileOutcome,
  'live-sign': LiveSign,
  'model-change': ModelChange,
  molt: Molt,
  observation: Observation,
  photo: Photo,
  preferences: Preferences,
  'print-check': PrintCheck,
  reading: Reading,
  'reading-under-way': ExaminationUnderWay,
  specimen: Specimen,
};

const CATALOGUE = join(import.meta.dirname, '../../src/archive/catalogue');
const FIXTURES = join(import.meta.dirname, 'fixtures');
const FROZEN = readdirSync(FIXTURES).filter((name) => /^forms-v\d+\.json$/.test(name));
const Forms = z.record(z.string(), z.json());

function formOf(schema: z.ZodType) {
  return z.json().parse(JSON.parse(JSON.stringify(z.toJSONSchema(schema, { io: 'input' }))));
}

describe('what is stored stays readable', () => {
  test('each kind of record that the catalogue decodes is among them', () => {
    const sources = readdirSync(CATALOGUE).map((name) => readFileSync(join(CATALOGUE, name), 'utf8'));
    const decoded = sources.flatMap((source) => [...source.matchAll(/decoder\(\s*'([a-z-]+)'/g)].map((match) => String(match[1])));
    expect(decoded.length).toBeGreaterThan(10);
    expect(Object.keys(STORED)).toEqual(expect.arrayContaining(decoded));
  });

  test('the newest migration has the forms that it was released with', async () => {
    const name = `forms-v${String(migrations.length).padStart(3, '0')}.json`;
    if (!FROZEN.includes(name)) {
      const forms = Object.fromEntries(Object.entries(STORED).map(([kind, schema]) => [kind, formOf(schema)]));
      await expect(`${JSON.stringify(forms)}\n`).toMatchFileSnapshot(join('fixtures', name));
    }
    expect(FROZEN.length).toBeGreaterThan(0);
  });

  describe.each(FROZEN)('%s', (fixture) => {
    const frozen = Forms.parse(JSON.parse(readFileSync(join(FIXTURES, fixture), 'utf8')));
    test.each(Object.entries(STORED))('%s: whatever could be written then can be read now', (kind, schema) => {
      const before = frozen[kind];
      if (before === undefined) throw new TypeError(`${fixture} says nothing of ${kind}`);
      expect(narrowingsBetween(before, formOf(schema))).toEqual([]);
    });
  });
});

describe('the comparison itself', () => {
  const before = z.strictObject({
    kind: z.enum(['ate', 'refused']),
    sizeMm: z.number().nullable(),
    marks: z.array(z.tuple([z.number(), z.string()])),
  });
  const narrowings = (after: z.ZodType) => narrowingsBetween(formOf(before), formOf(after));

  test('more words, more kinds of value and a new field one may leave out narrow nothing', () => {
    const wider = before.extend({
      kind: z.enum(['ate', 'refused', 'drank']),
      sizeMm: z.union([z.number(), z.string(), z.null()]),
      by: z.string().optional(),
    });
    expect(narrowings(before)).toEqual([]);
    expect(narrowings(wider)).toEqual([]);
  });

  test.each([
    ['a word taken away', before.extend({ kind: z.enum(['ate']) }), '.kind: no longer "refused"'],
    ['a field gone', before.omit({ sizeMm: true }), '.sizeMm: no longer allowed'],
    ['a field demanded', before.extend({ by: z.string() }), '.by: demanded now'],
    ['no more null', before.extend({ sizeMm: z.number() }), '.sizeMm: was null, is number'],
    ['a bound', before.extend({ sizeMm: z.number().min(1).nullable() }), '.sizeMm: minimum 1, was undefined'],
    ['a place of a tuple', before.extend({ marks: z.array(z.tuple([z.number(), z.number()])) }), '.marks[][1]: was string, is number'],
  ])('%s is told', (_what, after, told) => {
    expect(narrowings(after)).toEqual([told]);
  });
});
