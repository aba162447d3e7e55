import { describe, expect, test } from 'vitest';
import { lifeLineOf } from '../../../src/domain/care/lifeLine.ts';
import { type MaturityRecords, maturityOf } from '../../../src/domain/care/matureMale.ts';
import { pairingOf } from '../../../src/domain/care/pairing.ts';
import { BLANK_CHECKLIST } from '../../../src/domain/sexing/determination.ts';
import type { LiveSign } from '../../../src/domain/sexing/live/liveSign.ts';
import { determination } from '../sexing/readings.ts';
import { seen } from './seen.ts';

describe('the line of a life', () => {
  test('has everything on record in the order it happened, on one day by the minute where it is known; what is not stands after what it followed from', () => {
    const line = lifeLineOf({
      specimen: { id: 's', hatchedOn: '2024-05-01', acquiredOn: '2024-09-01' },
      molts: [
        { id: 'm2', happenedFrom: '2026-03-02', happenedTo: '2026-03-02' },
        { id: 'm1', happenedFrom: '2025-03-02', happenedTo: '2025-03-02' },
      ],
      skins: [{ id: 'e2', moltId: 'm2' }],
      animalPhotos: [
        { id: 'p1', takenOn: '2024-09-01', facts: { takenAt: null } },
        { id: 'p2', takenOn: null, facts: { takenAt: { local: '2024-09-01T10:00:00', offset: '+00:00' } } },
        { id: 'p3', takenOn: '2026-03-02', facts: { takenAt: { local: '2026-03-02T03:00:00', offset: '+02:00' } } },
        { id: 'p4', takenOn: '2026-03-02', facts: { takenAt: { local: '2026-03-02T07:00:00', offset: '+02:00' } } },
        { id: 'moved', takenOn: '2026-03-02', facts: { takenAt: { local: '2019-01-01T00:00:00', offset: '+02:00' } } },
      ],
      liveSigns: [{ id: 'l1', seenOn: '2026-03-04' }],
      readings: [
        {
          id: 'r2',
          createdAt: '2026-03-04T09:00:00.000Z',
          exuviaId: 'e2',
          landmarks: { 'carapace-front': { state: 'placed', at: { xPx: 1, yPx: 2 } } },
        },
        { id: 'begun', createdAt: '2026-03-03T09:00:00.000Z', exuviaId: 'e2', landmarks: {} },
      ],
      determinations: [{ id: 'd2', exuviaId: 'e2', readOn: '2026-03-04', signedAt: '2026-03-05T09:00:00.000Z' }],
      observations: [seen('free-of-skin', '2026-03-02T04:00', '+02:00'), seen('turned-over', '2026-03-01T23:00', '+02:00')],
      dayOfInstant: (instant) => instant.slice(0, 10),
      instantOfCamera: ({ local, offset }) => new Date(`${local}${offset}`).toISOString(),
    });
    expect(line.map(({ on, kind, id }) => `${on} ${kind} ${id}`)).toEqual([
      '2024-05-01 hatched s',
      '2024-09-01 acquired s',
      '2024-09-01 photo p1',
      '2025-03-02 molt m1',
      '2026-03-02 observation turned-over 2026-03-01T23:00:00.000Z',
      '2026-03-02 photo p3',
      '2026-03-02 observation free-of-skin 2026-03-02T04:00:00.000Z',
      '2026-03-02 molt m2',
      '2026-03-02 photo p4',
      '2026-03-02 skin e2',
      '2026-03-02 photo moved',
      '2026-03-04 live-sign l1',
      '2026-03-04 reading r2',
      '2026-03-04 determination d2',
    ]);
  });
});

describe('who could be paired', () => {
  const molts = [
    { id: 'm0', happenedTo: '2026-03-01' },
    { id: 'm1', happenedTo: '2026-05-01' },
  ];
  const female = { sex: 'female', level: 'strong', conflict: false } as const;
  const nobody: MaturityRecords = {
    sex: { sex: 'unsexed', level: null, conflict: false },
    determinations: [],
    observations: [],
    liveSigns: [],
  };
  const NOBODY = { males: [], females: [], unconfirmed: [] };
  const forecast = { from: '2026-07-01', likely: '2026-08-01', to: '2026-09-01', stage: 'early', told: true, assumed: false } as const;
  const pairing = (part: Partial<MaturityRecords>) =>
    pairingOf(
      [
        {
          specimenId: 'a',
          maturity: maturityOf({ ...nobody, ...part }),
          molts,
          lastMolt: { on: '2026-05-01', run: null, moltId: 'm1' },
          forecast,
        },
      ],
      '2026-06-15',
    );
  const sign = (finding: LiveSign['finding'], seenOn: string, withdrawn: LiveSign['withdrawn'] = null): LiveSign => ({
    id: seenOn,
    specimenId: 'a',
    signedAt: `${seenOn}T12:00:00.000Z`,
    withdrawn,
    finding,
    seenOn,
    observer: 'R. Reader',
    photoIds: [],
    notes: '',
  });

  test('a male is mature by a sperm web, noted or signed, his last molt the ultimate one', () => {
    const observations = [seen('sperm-web', '2026-06-10T20:00'), seen('sperm-web', '2026-06-01T20:00')];
    const liveSigns = [sign({ kind: 'sperm-web' }, '2026-06-05'), sign({ kind: 'sperm-web' }, '2026-06-10')];
    expect(pairing({ observations, liveSigns })).toEqual({
      males: [
        {
          specimenId: 'a',
          ultimateMoltOn: '2026-05-01',
          daysSinceUltimateMolt: 45,
          spermWebsOn: ['2026-06-01', '2026-06-05', '2026-06-10'],
          knownBy: 'sperm-web',
        },
      ],
      females: [],
      unconfirmed: [],
    });
  });

  test('bulbs name the ultimate molt; withdrawn ones say nothing', () => {
    const bulbs = { kind: 'palpal-bulbs', seen: true, ultimateMoltId: 'm0' } as const;
    expect(pairing({ liveSigns: [sign(bulbs, '2026-06-05')] }).males).toMatchObject([
      { ultimateMoltOn: '2026-03-01', daysSinceUltimateMolt: 106, knownBy: 'palpal-bulbs' },
    ]);
    const withdrawn = { at: '2026-06-06T12:00:00.000Z', reason: 'Another animal' };
    expect(pairing({ liveSigns: [sign(bulbs, '2026-06-05', withdrawn)] })).toEqual(NOBODY);
  });

  test('a female is grown by a note or an egg sac, and her forecast stands beside', () => {
    expect(pairing({ sex: female, observations: [seen('mature', '2026-06-01T20:00')] }).females).toMatchObject([
      { daysSinceLastMolt: 45, forecast, knownBy: 'noted-mature' },
    ]);
    const signed = pairing({ liveSigns: [sign({ kind: 'egg-sac', fertile: 'yes' }, '2026-06-01')] });
    expect(signed.females).toMatchObject([{ eggSacsOn: ['2026-06-01'], knownBy: 'egg-sac' }]);
  });

  test('a sperm web that was merely noted makes a mature male only of an animal that is firmly male', () => {
    const web = [seen('sperm-web', '2026-06-10T20:00')];
    const male = (level: 'leaning' | 'probable') => ({ sex: { sex: 'male' as const, level, conflict: false }, observations: web });
    const unconfirmed = [{ specimenId: 'a', why: 'web-noted', spermWebsOn: ['2026-06-10'] }];
    expect(pairing({ observations: web })).toEqual({ ...NOBODY, unconfirmed });
    expect(pairing(male('leaning'))).toEqual({ ...NOBODY, unconfirmed });
    expect(pairing(male('probable'))).toMatchObject({ males: [{ knownBy: 'sperm-web' }], unconfirmed: [] });
  });

  test('bulbs that a skin contradicts make no mature male: his molts are awaited as before', () => {
    const bulbs = sign({ kind: 'palpal-bulbs', seen: true, ultimateMoltId: null }, '2026-06-05');
    const contradicted = { sex: { sex: 'unsexed' as const, level: null, conflict: true }, liveSigns: [bulbs] };
    expect(pairing(contradicted)).toEqual({ ...NOBODY, unconfirmed: [{ specimenId: 'a', why: 'contradicted', spermWebsOn: [] }] });
  });

  test('a sperm web that was noted by a slip does not make a male of a female', () => {
    const slip = [seen('sperm-web', '2026-06-10T20:00')];
    const sac = sign({ kind: 'egg-sac', fertile: 'yes' }, '2026-06-01');
    expect(pairing({ sex: female, observations: slip }).males).toEqual([]);
    expect(pairing({ observations: slip, liveSigns: [sac] })).toMatchObject({ males: [], females: [{ knownBy: 'egg-sac' }] });
  });

  test('bulbs and an egg sac on one animal make neither of it', () => {
    const bulbs = sign({ kind: 'palpal-bulbs', seen: true, ultimateMoltId: null }, '2026-06-05');
    expect(pairing({ liveSigns: [bulbs], observations: [seen('egg-sac', '2026-06-01T20:00')] })).toMatchObject({
      ...{ males: [], females: [], unconfirmed: [{ why: 'contradicted' }] },
    });
  });

  test('what a reading says of the animal itself counts as a sign of it does, until the reading is withdrawn', () => {
    const read = determination({ sex: 'male', level: 'strong', checklist: { ...BLANK_CHECKLIST, palpalBulbsOnAnimal: 'yes' } });
    expect(pairing({ determinations: [read] }).males).toMatchObject([{ knownBy: 'palpal-bulbs' }]);
    const withdrawn = { ...read, withdrawn: { at: '2026-06-06T12:00:00.000Z', reason: 'Another animal' } };
    expect(pairing({ determinations: [withdrawn] }).males).toEqual([]);
    const told = determination({ sex: 'female', level: 'probable', checklist: { ...BLANK_CHECKLIST, eggSacLaid: 'yes' } });
    expect(pairing({ determinations: [told] }).females).toMatchObject([{ knownBy: 'egg-sac', eggSacsOn: [] }]);
  });

  test.each([
    ['is not noted as mature', { sex: female }],
    ['has only a leaning to a sex', { sex: { ...female, level: 'leaning' as const }, observations: [seen('mature', '2026-06-01T20:00')] }],
    ['is unsexed', { observations: [seen('mature', '2026-06-01T20:00')] }],
  ])('an animal that %s is left out', (_, part) => expect(pairing(part)).toEqual(NOBODY));
});
