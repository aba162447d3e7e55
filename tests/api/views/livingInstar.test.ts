import { describe, expect, it } from 'vitest';
import { livingInstarOf } from '../../../src/api/views/livingInstar.ts';
import { moltWatchedOf } from '../../../src/domain/care/lastMolt.ts';
import { seen } from '../../domain/care/seen.ts';
import { aMolt, aSpecimen } from '../../support/records.ts';

describe('the instar of an animal whose molt was watched', () => {
  const molts = [aMolt({ id: 'm', happenedFrom: '2025-09-09', happenedTo: '2025-09-09', instarShed: 4 })];
  const entry = { specimen: aSpecimen(), molts };

  it('stays while it molts, and is the next from the end on, before the molt is on record', () => {
    const begun = [seen('turned-over', '2025-11-25T08:00')];
    const running = moltWatchedOf(begun, molts);
    expect(running).toEqual({ state: 'under-way', on: '2025-11-25' });
    expect(livingInstarOf(entry, running)?.number).toBe(5);
    const ended = moltWatchedOf([...begun, seen('free-of-skin', '2025-11-25T14:00')], molts);
    expect(ended).toEqual({ state: 'not-recorded', on: '2025-11-25' });
    expect(livingInstarOf(entry, ended)?.number).toBe(6);
  });

  it('is that of the record once the molt is there', () => {
    const both = [...molts, aMolt({ id: 'n', happenedFrom: '2025-11-25', happenedTo: '2025-11-25', instarShed: 5 })];
    const watched = moltWatchedOf([seen('turned-over', '2025-11-25T08:00'), seen('free-of-skin', '2025-11-25T14:00')], both);
    expect(watched).toBeNull();
    expect(livingInstarOf({ ...entry, molts: both }, watched)?.number).toBe(6);
  });
});
