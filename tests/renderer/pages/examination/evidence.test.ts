import { describe, expect, it } from 'vitest';
import {
  asKind,
  markFrom,
  markingGap,
  markingOf,
  NO_MARKING,
  placed,
  withoutLast,
} from '../../../../src/renderer/pages/examination/evidence/marking.ts';
import { choosing, keeping, withoutPin, withPin } from '../../../../src/renderer/pages/examination/evidence/pinning.ts';

const AT = { xPx: 10, yPx: 20 };
const CORNERS = [AT, { xPx: 30, yPx: 20 }, { xPx: 20, yPx: 40 }];

describe('a mark on a photo', () => {
  it('is a point that moves with every click', () => {
    const point = placed(placed(asKind(NO_MARKING, 'point'), AT), { xPx: 1, yPx: 2 });
    expect(markFrom(point)).toEqual({ kind: 'point', at: { xPx: 1, yPx: 2 } });
  });

  it('is an outline from the third corner on, and says what it lacks before', () => {
    const two = CORNERS.slice(0, 2).reduce(placed, asKind(NO_MARKING, 'outline'));
    expect(markFrom(two)).toBeNull();
    expect(markingGap(two)).toContain('three corners; 2 placed');
    const three = placed(two, { xPx: 20, yPx: 40 });
    expect(markFrom(three)).toEqual({ kind: 'outline', points: CORNERS });
    expect(markFrom(withoutLast(three))).toBeNull();
  });

  it('opens again as it was kept', () => {
    for (const mark of [
      { kind: 'point', at: AT },
      { kind: 'outline', points: CORNERS },
    ] as const) {
      expect(markFrom(markingOf({ ...mark, ...(mark.kind === 'outline' && { points: [...mark.points] }) }))).toEqual(mark);
    }
    expect(markFrom(markingOf(null))).toBeNull();
    expect(markingGap(NO_MARKING)).toBeNull();
  });

  it('takes no click while the photo is shown as a whole', () => {
    expect(placed(NO_MARKING, AT)).toEqual(NO_MARKING);
  });
});

describe('photos pinned to answers', () => {
  const nothing = { evidencePhotoIds: [], pins: [] };
  const pin = { question: 'receptaclesSeen', photoId: 'a', mark: null } as const;

  it('are evidence, and pinned once to each question', () => {
    const once = withPin(pin, nothing);
    const moved = withPin({ ...pin, mark: { kind: 'point', at: AT } }, once);
    expect(moved).toEqual({ evidencePhotoIds: ['a'], pins: [{ ...pin, mark: { kind: 'point', at: AT } }] });
    expect(withPin({ ...pin, question: 'uterusExternusSeen' }, moved).pins).toHaveLength(2);
  });

  it('stay evidence when unpinned, and lose their pins when they are evidence no more', () => {
    const pinned = withPin({ ...pin, question: 'uterusExternusSeen' }, withPin(pin, nothing));
    expect(withoutPin('receptaclesSeen', 'a', pinned)).toMatchObject({
      evidencePhotoIds: ['a'],
      pins: [{ question: 'uterusExternusSeen' }],
    });
    expect(choosing('a', false, pinned)).toEqual(nothing);
    expect(choosing('a', true, pinned).evidencePhotoIds).toEqual(['a']);
  });

  it('go with a photo that is gone', () => {
    const both = withPin({ ...pin, photoId: 'b' }, withPin(pin, nothing));
    expect(keeping(['b'], both)).toEqual({ evidencePhotoIds: ['b'], pins: [{ ...pin, photoId: 'b' }] });
  });
});
