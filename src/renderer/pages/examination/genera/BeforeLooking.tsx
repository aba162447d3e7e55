import type { ReactElement } from 'react';
import type { GenusProfile } from '../../../../domain/sexing/genus/profile.ts';
import { FORM_LABELS } from '../../../../words/checklist.ts';
import { listed } from '../../../../words/counts.ts';
import { basisInWords, genusWarnings } from '../../../../words/genus.ts';
import { uncapitalized } from '../../../../words/labels.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { Taxon } from '../../../parts/Taxon.tsx';
import style from './BeforeLooking.module.css';

/** What a genus shows and what misleads in it, in short: who knows it before looking is not taken in by a look-alike. */
export function BeforeLooking({ profile: { genus, known, receptacles, pitfalls, flags } }: { profile: GenusProfile }): ReactElement {
  const forms = listed(receptacles.forms.map((form) => uncapitalized(FORM_LABELS[form])));
  const female = receptacles.words || forms;
  return (
    <section aria-labelledby="before-looking" className={style['before']}>
      <h3 id="before-looking">
        Before you look: <Taxon name={genus} />
      </h3>
      {known ? (
        <>
          <p>
            <strong>A female shows:</strong> {female === '' ? 'not known' : female}.{' '}
            {female !== '' && <span className={style['basis']}>{basisInWords(receptacles.basis)}</span>}
          </p>
          {pitfalls.map(({ words, basis }) => (
            <p key={words}>
              <strong>Mind:</strong> {words}. <span className={style['basis']}>{basisInWords(basis)}</span>
            </p>
          ))}
        </>
      ) : (
        <p>There is no profile of it here, so what a female shows, and what misleads, is not known. It can be written at Compare.</p>
      )}
      {genusWarnings(flags).map((warning) => (
        <Notice key={warning} tone="warning">
          {warning}
        </Notice>
      ))}
    </section>
  );
}
