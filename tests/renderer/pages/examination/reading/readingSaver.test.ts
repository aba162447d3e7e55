import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../../../src/domain/failure.ts';
import { BLANK_CHECKLIST, type ExaminationUnderWay, type UnfinishedDetermination } from '../../../../../src/domain/sexing/determination.ts';
import { ReadingSaver } from '../../../../../src/renderer/pages/examination/reading/readingSaver.ts';

const READING: UnfinishedDetermination = {
  ...{
    sex: null,
    level: null,
    reader: null,
    readOn: '2026-11-24',
    evidencePhotoIds: [],
    pins: [],
    notes: '',
    supersedes: null,
    step: 'match',
  },
  checklist: BLANK_CHECKLIST,
};

/** An archive that holds one reading, answers when told to, and knows versions. */
function archive() {
  let held: { reading: UnfinishedDetermination | null; version: number } = { reading: null, version: 0 };
  const waiting: (() => void)[] = [];
  let reachable = true;
  return {
    held: () => held,
    waiting: () => waiting.length,
    changeElsewhere: (reading: UnfinishedDetermination) => {
      held = { reading, version: held.version + 1 };
    },
    cutOff: (cut: boolean) => {
      reachable = !cut;
    },
    answerOne: () => waiting.shift()?.(),
    send: (reading: UnfinishedDetermination | null, version: number) =>
      new Promise<ExaminationUnderWay>((resolve, reject) => {
        waiting.push(() => {
          if (!reachable) return reject(new Refusal({ code: 'unreachable' }));
          if (version !== held.version)
            return reject(new Refusal({ code: 'changed-meanwhile', what: 'reading-under-way', id: 'skin-1', version: held.version }));
          held = { reading, version: version + 1 };
          resolve({ exuviaId: 'skin-1', ...held, changedAt: null, photosGone: [] });
        });
      }),
  };
}

describe('a reading under way', () => {
  it('goes to the archive one request at a time, the latest answers last', async () => {
    const kept = archive();
    const saver = new ReadingSaver({ reading: null, version: 0 }, kept.send);
    for (const notes of ['a', 'ab', 'abc']) saver.keep({ ...READING, notes });
    expect(kept.waiting()).toBe(1);
    kept.answerOne();
    await expect.poll(kept.waiting).toBe(1);
    kept.answerOne();
    await saver.settled();
    expect(kept.held()).toMatchObject({ reading: { notes: 'abc' }, version: 2 });
    expect(saver.state()).toMatchObject({ saving: 'saved', error: null });
  });

  it('stops where another window has changed it, and writes over that only when told to', async () => {
    const kept = archive();
    const saver = new ReadingSaver({ reading: null, version: 0 }, kept.send);
    kept.changeElsewhere({ ...READING, notes: 'theirs' });
    saver.keep({ ...READING, notes: 'ours' });
    kept.answerOne();
    await saver.settled();
    expect(saver.state().saving).toBe('unsaved');
    saver.keep({ ...READING, notes: 'ours, longer' });
    expect(kept.waiting()).toBe(0);
    expect(kept.held().reading?.notes).toBe('theirs');
    saver.insist();
    kept.answerOne();
    await saver.settled();
    expect(kept.held().reading?.notes).toBe('ours, longer');
  });

  it('takes what the archive holds instead, and goes on from there', async () => {
    const kept = archive();
    const saver = new ReadingSaver({ reading: null, version: 0 }, kept.send);
    kept.changeElsewhere({ ...READING, notes: 'theirs' });
    saver.keep({ ...READING, notes: 'ours' });
    kept.answerOne();
    await saver.settled();
    saver.replace(kept.held());
    expect(saver.state()).toMatchObject({ kept: { notes: 'theirs' }, saving: 'saved', error: null });
    saver.keep({ ...READING, notes: 'theirs and more' });
    kept.answerOne();
    await saver.settled();
    expect(kept.held()).toMatchObject({ reading: { notes: 'theirs and more' }, version: 2 });
  });

  it('keeps what could not be sent and sends it with the next answer', async () => {
    const kept = archive();
    const saver = new ReadingSaver({ reading: null, version: 0 }, kept.send);
    kept.cutOff(true);
    saver.keep({ ...READING, notes: 'a' });
    kept.answerOne();
    await saver.settled();
    expect(saver.state()).toMatchObject({ saving: 'unsaved', kept: { notes: 'a' } });
    kept.cutOff(false);
    saver.keep({ ...READING, notes: 'ab' });
    kept.answerOne();
    await saver.settled();
    expect(kept.held().reading?.notes).toBe('ab');
    expect(saver.state().error).toBeNull();
  });
});
