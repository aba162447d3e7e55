import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { type GenusProfile, PLAIN_FLAGS, ShippedProfiles } from '../../../../src/domain/sexing/genus/profile.ts';
import { BeforeLooking } from '../../../../src/renderer/pages/examination/genera/BeforeLooking.tsx';

const { profiles } = ShippedProfiles.parse(JSON.parse(readFileSync('resources/genera/profiles.json', 'utf8')));
const shipped = (genus: string): GenusProfile => {
  const profile = profiles.find((one) => one.genus === genus);
  if (!profile) throw new Error(`Expected a profile of ${genus}`);
  return { ...profile, known: true, version: 0 };
};
const wordsOf = (profile: GenusProfile) =>
  renderToStaticMarkup(<BeforeLooking profile={profile} />)
    .replace(/<[^>]+>/g, '')
    .replace(/&amp;/g, '&');

describe('what is said of a genus before its strip is read', () => {
  it('names those whose females have no receptacles (Bertani & da Silva 2002 of Sickius)', () => {
    expect(wordsOf(shipped('Sickius'))).toContain('Females of this genus have no receptacles');
  });

  it('names those whose males carry look-alikes (Devin 2024 of Tliltocatl), and what a female shows, with its source', () => {
    const words = wordsOf(shipped('Tliltocatl'));
    expect(words).toContain('accessory organs that look like receptacles');
    expect(words).toMatch(/A female shows: .+\. (Weak source|Source|From memory)/);
  });

  it('says of a genus without a profile that nothing is known, rather than that it is plain', () => {
    const { receptacles, hooks, flagsBasis } = shipped('Sickius');
    const unknown: GenusProfile = {
      ...{ genus: 'Nowhereia', known: false, version: 0, pitfalls: [], flags: PLAIN_FLAGS, receptacles, hooks, flagsBasis },
      ...{ adultCarapaceMm: null, earlyColorBasis: null },
    };
    expect(wordsOf(unknown)).toContain('There is no profile of it here');
  });
});
