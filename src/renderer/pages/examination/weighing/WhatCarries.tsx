import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { EvidenceItem } from '../../../../domain/sexing/evidence/item.ts';
import type { Prospect } from '../../../../domain/sexing/evidence/prospects.ts';
import type { Weighing } from '../../../../domain/sexing/evidence/weigh.ts';
import { bandInWords, FINDING_WORDS, GATE_WORDS, STEP_WORDS, sidesInWords, weightInWords } from '../../../../words/evidence.ts';
import { uncapitalized } from '../../../../words/labels.ts';
import { Notice } from '../../../parts/Notice.tsx';
import style from './WhatCarries.module.css';

interface Props {
  weighing: Weighing;
  prospects: readonly Prospect[];
  modelVersion: string;
  exuviaId: string;
  /** Null where nobody has said it: then no size is held against it. */
  adultCarapaceMm: number | null;
  nameOfSkin: (exuviaId: string) => string;
}

/** What the band rests on, finding by finding, why it goes no further, and what would change it. */
export function WhatCarries({ weighing, prospects, modelVersion, exuviaId, adultCarapaceMm, nameOfSkin }: Props): ReactElement {
  const { items, gate, conflict } = weighing;
  const where = (item: EvidenceItem) => {
    if (item.exuviaId === null) return 'on the animal';
    return item.exuviaId === exuviaId ? 'on this skin' : `on another skin (${uncapitalized(nameOfSkin(item.exuviaId))})`;
  };
  const sides = sidesInWords(items, where);
  return (
    <div className={style['carries']}>
      {conflict && (
        <Notice tone="warning" title="What was found contradicts itself.">
          <p>For a female: {sides.female}.</p>
          <p>For a male: {sides.male}.</p>
          <p>Nothing is averaged, and nothing overrides the other. What to do next stands below.</p>
        </Notice>
      )}
      <section aria-labelledby="what-carries">
        <h3 id="what-carries">What carries it</h3>
        {items.length === 0 ? (
          <p className={style['soft']}>Nothing yet: no answer and nothing on record speaks of the sex.</p>
        ) : (
          <ul className={style['items']}>
            {items.map((item) => (
              <li
                key={`${item.kind} ${item.exuviaId} ${item.towards} ${item.gaveWay}`}
                className={item.towards === null || item.gaveWay ? style['silent'] : undefined}
              >
                <span>
                  {FINDING_WORDS[item.kind]}, {where(item)}
                </span>
                <span className={style['weight']}>{weightInWords(item)}</span>
              </li>
            ))}
          </ul>
        )}
        {gate !== null && !conflict && (
          <p className={style['gate']}>
            <strong>Why no further?</strong> {GATE_WORDS[gate]}
          </p>
        )}
      </section>
      <section aria-labelledby="what-changes">
        <h3 id="what-changes">{conflict ? 'What to do next' : 'What would change it'}</h3>
        {conflict ? (
          <ol className={style['next']}>
            {waysOutOf(items, exuviaId).map((way) => (
              <li key={way}>{way}</li>
            ))}
          </ol>
        ) : prospects.length === 0 ? (
          <p className={style['soft']}>No single step that is known here would change the band.</p>
        ) : (
          <ul className={style['items']}>
            {prospects.map((prospect) => (
              <li key={prospect.step}>
                <span>{STEP_WORDS[prospect.step]}</span>
                <span className={style['weight']}>then {bandInWords(prospect)}</span>
              </li>
            ))}
          </ul>
        )}
        {adultCarapaceMm === null && (
          <p className={style['soft']}>
            The adult size of this genus is not known here, so that no skin counts as small for it, and finding no bulbs on the animal
            weighs nothing. The profile of the genus, at Compare, takes it.
          </p>
        )}
      </section>
      <p className={style['soft']}>
        Of several readings of one skin the best placed one speaks: the better strip, then the better optics, then the later look. Where two
        that are placed alike speak for different sexes, neither does. Weighed by the evidence model {modelVersion}. Its numbers are
        judgments, since no controlled study of error rates is known; they are all{' '}
        <Link to="/examination/numbers">open to be seen and changed</Link>.
      </p>
    </div>
  );
}

/** A conflict is lifted by taking one side back, not by adding to the other; which ways there are follows from what stands in it. */
function waysOutOf(items: readonly EvidenceItem[], exuviaId: string): string[] {
  const sided = items.filter(({ towards, gaveWay }) => towards !== null && !gaveWay);
  const here = sided.some((item) => item.exuviaId === exuviaId);
  const elsewhere = sided.some((item) => item.exuviaId !== null && item.exuviaId !== exuviaId);
  const onAnimal = sided.some((item) => item.exuviaId === null);
  return [
    'Make sure that each skin named above is this animal’s: its label, and the day it was found.',
    ...(here ? ['Look at this skin again, in other light, wet and dry: read it anew here, or correct the reading that is on record.'] : []),
    ...(elsewhere ? ['Hold the other skin beside this one, at Compare; correct or withdraw its reading if that was wrong.'] : []),
    ...(onAnimal ? ['Look at the animal again; a sign of it that was wrong is withdrawn on its page.'] : []),
    'If both sides hold, sign this skin for what it shows, or as unsexed: the animal stays unsexed until one side is taken back.',
  ];
}
