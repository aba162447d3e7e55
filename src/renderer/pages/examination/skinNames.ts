import type { AnswerOf } from '../../../api/contract/contract.ts';
import { sexInWords } from '../../../words/sex.ts';
import { skinName } from './skinName.ts';
import type { OtherSkin } from './steps/HeldBeside.tsx';

type Page = AnswerOf<'GET /api/specimens/{specimenId}'>;

/** What each skin of an animal is called where several are spoken of. */
export function skinNamer({ molts }: Pick<Page, 'molts'>): (exuviaId: string) => string {
  return (exuviaId) => {
    const index = molts.findIndex((candidate) => candidate.exuvia?.id === exuviaId);
    const entry = molts[index];
    return entry ? skinName(entry.molt, { instar: entry.instar, recordedMolt: index + 1 }) : 'a skin no longer on record';
  };
}

/** The other recovered skins of the animal, latest first, with what was last concluded from each. */
export function earlierSkinsOf(page: Pick<Page, 'molts'>, exuviaId: string): OtherSkin[] {
  const nameOf = skinNamer(page);
  return page.molts
    .flatMap(({ exuvia, photos, determinations }): OtherSkin[] => {
      if (!exuvia?.recovered || exuvia.id === exuviaId) return [];
      const photo = photos.find(({ view }) => view === 'abdomen-inside') ?? photos[0];
      const last = determinations.findLast(({ withdrawn }) => withdrawn === null);
      const words = last ? sexInWords({ sex: last.sex, level: last.level, conflict: false }) : 'not read';
      return [{ exuviaId: exuvia.id, name: nameOf(exuvia.id), photoId: photo?.id ?? null, words }];
    })
    .toReversed();
}
