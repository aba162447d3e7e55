import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { skinSummariesOf } from '../../src/api/views/skinSummaries.ts';
import { unwrap } from '../../src/domain/result.ts';
import {
  determinationDraft,
  exuviaDraft,
  FIRST_ASSESSMENT,
  moltDraft,
  newPhoto,
  specimenDraft,
  TestArchive,
} from '../support/testArchive.ts';

describe('the skins that can be read', () => {
  let opened: TestArchive;

  beforeEach(async () => {
    opened = await TestArchive.open();
  });
  afterEach(() => opened.remove());

  /** One animal; each day gives a molt with its skin. */
  function animalWithSkins(code: string, days: readonly string[], recovered = true) {
    const { archive } = opened;
    const specimen = unwrap(archive.specimens.create(specimenDraft({ code, name: `Name of ${code}` })));
    return days.map((day) => {
      const molt = unwrap(archive.molts.create(specimen.id, moltDraft({ happenedFrom: day, happenedTo: day })));
      return unwrap(archive.exuviae.create(molt.id, exuviaDraft({ recovered })));
    });
  }

  function photoOf(exuviaId: string, sha256: string, view: 'dorsal' | 'abdomen-inside') {
    return unwrap(opened.archive.photos.add(newPhoto({ sha256: sha256.repeat(64), subject: { kind: 'skin', exuviaId }, view })));
  }

  it('come from all animals, the latest molt first, each with its place among those recorded', () => {
    animalWithSkins('A', ['2024-01-01', '2025-01-01']);
    animalWithSkins('B', ['2024-06-01']);
    expect(
      skinSummariesOf(opened.archive).map(({ specimen, molt, recordedMolt }) => [specimen.code, molt.happenedFrom, recordedMolt]),
    ).toEqual([
      ['A', '2025-01-01', 2],
      ['B', '2024-06-01', 1],
      ['A', '2024-01-01', 1],
    ]);
  });

  it('leave out those that were never recovered', () => {
    animalWithSkins('A', ['2024-01-01'], false);
    expect(skinSummariesOf(opened.archive)).toEqual([]);
  });

  it('show the inner side of the abdomen where it was photographed, else any photo of the skin, else none', () => {
    const [first, second, third] = animalWithSkins('A', ['2024-01-01', '2024-06-01', '2025-01-01']).map(({ id }) => id);
    if (!first || !second || !third) throw new Error('Expected three skins');
    const inside = photoOf(first, 'a', 'abdomen-inside');
    photoOf(first, 'b', 'dorsal');
    const above = photoOf(second, 'c', 'dorsal');
    const covers = new Map(skinSummariesOf(opened.archive).map(({ exuvia, coverPhotoId }) => [exuvia.id, coverPhotoId]));
    expect([covers.get(first), covers.get(second), covers.get(third)]).toEqual([inside.id, above.id, null]);
  });

  it('wait again when their only determination has been withdrawn or belongs to another skin', () => {
    const { archive } = opened;
    const [first, second] = animalWithSkins('A', ['2024-01-01', '2025-01-01']);
    if (!first || !second) throw new Error('Expected two skins');
    const standing = () => skinSummariesOf(archive).map(({ standingDeterminations }) => standingDeterminations);
    const signed = unwrap(archive.determinations.sign(first.id, determinationDraft(), FIRST_ASSESSMENT));
    expect(standing()).toEqual([0, 1]);
    unwrap(archive.determinations.sign(first.id, determinationDraft({ supersedes: signed.id }), FIRST_ASSESSMENT));
    expect(standing()).toEqual([0, 1]);
    const [, correction] = archive.determinations.ofExuvia(first.id);
    unwrap(archive.determinations.withdraw(correction?.id ?? '', 'wrong skin'));
    expect(standing()).toEqual([0, 0]);
  });

  it('say that a reading is under way until it is given up', () => {
    const { archive } = opened;
    const [skin] = animalWithSkins('A', ['2024-01-01']);
    if (!skin) throw new Error('Expected a skin');
    const begun = () => skinSummariesOf(archive).map((summary) => summary.begun);
    expect(begun()).toEqual([false]);
    const { version } = unwrap(archive.readingsUnderWay.put(skin.id, 0, { ...determinationDraft(), step: 'look' }));
    expect(begun()).toEqual([true]);
    unwrap(archive.readingsUnderWay.put(skin.id, version, null));
    expect(begun()).toEqual([false]);
  });
});
