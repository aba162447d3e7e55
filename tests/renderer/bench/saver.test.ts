import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import type { ReadingDraft } from '../../../src/domain/measuring/reading.ts';
import { createSaver, type SavingState } from '../../../src/renderer/bench/saver.ts';
import { type Dispatch, pauseBeforeAttempt, type Stored, scaleOf, type Wanted } from '../../../src/renderer/bench/saving.ts';
import { EMPTY_READING } from '../../support/emptyReading.ts';

const draftAt = (xPx: number): ReadingDraft => ({
  ...EMPTY_READING,
  observer: 'A. Keeper',
  pass: 1,
  landmarks: { 'carapace-front': { state: 'placed', at: { xPx, yPx: 0 } } },
});
const nothing: Stored = { scale: { marks: null, version: 0 }, reading: null };
const rule = (distanceMm: number): NonNullable<Wanted['marks']> => ({
  kind: 'two-points',
  ends: [
    { xPx: 0, yPx: 0 },
    { xPx: 100, yPx: 0 },
  ],
  distanceMm,
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 1.5,
  heightMm: 0,
});

type Trouble = 'lost-request' | 'lost-answer' | 'disk-full' | 'defect';

/** An archive with versions as ours, which can lose requests and answers. */
function archiveHolding(start: Stored) {
  let held = start;
  const sent: Dispatch[] = [];
  const troubles: (Trouble | null)[] = [];
  const states: SavingState[] = [];
  const pauses: number[] = [];
  const overtaken: Wanted[] = [];
  let busy = 0;
  let mostBusy = 0;

  function store(dispatch: Dispatch): { id: string; version: number } {
    if (dispatch.kind === 'save-scale') {
      if (dispatch.version !== held.scale.version) throw changed();
      held = { ...held, scale: { ...scaleOf(dispatch), version: dispatch.version + 1 } };
      return { id: 'photo', version: dispatch.version + 1 };
    }
    if (dispatch.kind === 'save-reading' && dispatch.version !== held.reading?.version) throw changed();
    const version = dispatch.kind === 'save-reading' ? dispatch.version + 1 : 1;
    held = { ...held, reading: { id: 'reading', draft: dispatch.draft, version } };
    return { id: 'reading', version };
  }
  const changed = () => new Refusal({ code: 'changed-meanwhile', what: 'record', id: '', version: 0 });

  const saver = createSaver(
    start,
    {
      async send(dispatch) {
        busy += 1;
        mostBusy = Math.max(mostBusy, busy);
        await Promise.resolve();
        busy -= 1;
        sent.push(dispatch);
        const trouble = troubles.shift() ?? null;
        if (trouble === 'lost-request') throw new Refusal({ code: 'unreachable' });
        if (trouble === 'defect') throw new TypeError('no such thing');
        if (trouble === 'disk-full') throw new Refusal({ code: 'disk-full' });
        const answer = store(dispatch);
        if (trouble === 'lost-answer') throw new Refusal({ code: 'unreachable' });
        return answer;
      },
      reload: async () => held,
      async pause(ms) {
        pauses.push(ms);
      },
    },
    {
      state: (state) => states.push(state),
      stored: () => undefined,
      overtaken: (_, wanted) => overtaken.push(wanted),
    },
  );
  return {
    saver,
    sent,
    troubles,
    states,
    pauses,
    overtaken,
    held: () => held,
    mostBusy: () => mostBusy,
    /** Another window changes the photo. */
    elsewhere(next: Stored) {
      held = next;
    },
  };
}

describe('saving', () => {
  test('sends the scale, begins the reading, and then saves it with the version it is based on', async () => {
    const archive = archiveHolding(nothing);
    archive.saver.want({ marks: rule(10), draft: draftAt(1) });
    await archive.saver.quiet();
    archive.saver.want({ marks: rule(10), draft: draftAt(2) });
    await archive.saver.quiet();
    expect(archive.sent.map((dispatch) => [dispatch.kind, 'version' in dispatch ? dispatch.version : null])).toEqual([
      ['save-scale', 0],
      ['begin-reading', null],
      ['save-reading', 1],
    ]);
    expect(archive.states.at(-1)).toEqual({ kind: 'saved' });
  });

  test('never has two requests on their way, and the last settled state arrives', async () => {
    const archive = archiveHolding(nothing);
    for (let xPx = 1; xPx <= 20; xPx += 1) archive.saver.want({ marks: null, draft: draftAt(xPx) });
    await archive.saver.quiet();
    expect(archive.mostBusy()).toBe(1);
    expect(archive.held().reading?.draft).toEqual(draftAt(20));
    expect(archive.saver.hasUnsent()).toBe(false);
  });

  test('ends in a defect that is told when sending itself fails, and can be asked to try again', async () => {
    const archive = archiveHolding(nothing);
    archive.troubles.push('defect');
    archive.saver.want({ marks: rule(10), draft: null });
    await archive.saver.quiet();
    expect(archive.states.at(-1)).toEqual({ kind: 'refused', failure: { code: 'defect', reference: 'TypeError: no such thing' } });
    expect(archive.saver.hasUnsent()).toBe(true);
    archive.saver.retry();
    await archive.saver.quiet();
    expect(archive.states.at(-1)).toEqual({ kind: 'saved' });
  });

  test('tries again with growing pauses while the archive cannot be reached, and says that it waits', async () => {
    const archive = archiveHolding(nothing);
    archive.troubles.push('lost-request', 'lost-request', 'lost-request');
    archive.saver.want({ marks: rule(10), draft: null });
    expect(archive.saver.hasUnsent()).toBe(true);
    await archive.saver.quiet();
    expect(archive.pauses).toEqual([1000, 2000, 4000]);
    expect(archive.states.map((state) => state.kind)).toEqual(['saving', 'waiting', 'waiting', 'waiting', 'saved']);
    expect(archive.held().scale.marks).toEqual(rule(10));
    expect(pauseBeforeAttempt(40)).toBe(30_000);
  });

  test('a request that arrived though its answer was lost is not taken for somebody else, nor sent twice', async () => {
    const archive = archiveHolding(nothing);
    archive.troubles.push('lost-answer', 'lost-answer', 'lost-answer');
    archive.saver.want({ marks: rule(10), draft: draftAt(1) });
    await archive.saver.quiet();
    archive.saver.want({ marks: rule(10), draft: draftAt(2) });
    await archive.saver.quiet();
    expect(archive.sent.map((dispatch) => dispatch.kind)).toEqual(['save-scale', 'begin-reading', 'save-reading']);
    expect(archive.overtaken).toEqual([]);
    expect(archive.held().reading).toEqual({ id: 'reading', draft: draftAt(2), version: 2 });
  });

  test('marks that check the scale are sent with it, and taken away again', async () => {
    const archive = archiveHolding(nothing);
    archive.saver.want({ marks: rule(10), check: rule(20), draft: null });
    await archive.saver.quiet();
    expect(archive.held().scale).toMatchObject({ marks: rule(10), check: rule(20) });
    archive.saver.want({ marks: rule(10), draft: null });
    await archive.saver.quiet();
    expect(archive.held().scale).toMatchObject({ marks: rule(10), version: 2 });
    expect(archive.held().scale.check).toBeUndefined();
  });

  test('when the photo was changed elsewhere, what stands there is taken and what was wanted is handed back', async () => {
    const archive = archiveHolding(nothing);
    archive.saver.want({ marks: rule(10), draft: null });
    await archive.saver.quiet();
    archive.elsewhere({ ...archive.held(), scale: { marks: rule(25.4), version: 7 } });
    archive.saver.want({ marks: rule(12), draft: null });
    await archive.saver.quiet();
    expect(archive.overtaken).toEqual([{ marks: rule(12), draft: null }]);
    expect(archive.held().scale).toEqual({ marks: rule(25.4), version: 7 });
    archive.saver.want({ marks: rule(12), draft: null });
    await archive.saver.quiet();
    expect(archive.held().scale).toEqual({ marks: rule(12), version: 8 });
  });

  test('a refusal stays unsent and is sent again when asked', async () => {
    const archive = archiveHolding(nothing);
    archive.troubles.push('disk-full');
    archive.saver.want({ marks: rule(10), draft: null });
    await archive.saver.quiet();
    expect(archive.states.at(-1)).toEqual({ kind: 'refused', failure: { code: 'disk-full' } });
    expect(archive.saver.hasUnsent()).toBe(true);
    archive.saver.retry();
    await archive.saver.quiet();
    expect(archive.saver.hasUnsent()).toBe(false);
  });

  test('wanting what is already stored sends nothing', async () => {
    const archive = archiveHolding({ scale: { marks: rule(10), version: 3 }, reading: null });
    archive.saver.want({ marks: structuredClone(rule(10)), draft: null });
    await archive.saver.quiet();
    expect(archive.sent).toEqual([]);
  });
});
