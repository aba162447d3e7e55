import { type ReactElement, type ReactNode, useState } from 'react';
import type { GenusProfile } from '../../../../domain/sexing/genus/profile.ts';
import { FORM_LABELS } from '../../../../words/checklist.ts';
import { listed } from '../../../../words/counts.ts';
import { basisInWords, flagWords, HOOK_WORDS } from '../../../../words/genus.ts';
import { uncapitalized } from '../../../../words/labels.ts';
import { Button } from '../../../parts/Button.tsx';
import { Taxon } from '../../../parts/Taxon.tsx';
import style from './GenusPanel.module.css';
import { ProfileDialog } from './ProfileDialog.tsx';

/** What is known of a genus, cell by cell, each with what it rests on; a keeper can say better. */
export function GenusPanel({ profile }: { profile: GenusProfile }): ReactElement {
  const [editing, setEditing] = useState(false);
  const { genus, known, version, receptacles, hooks, pitfalls, flags, flagsBasis, adultCarapaceMm } = profile;
  const raised = flagWords(flags);
  return (
    <section className={style['panel']} aria-labelledby={`genus-${genus}`}>
      <header className={style['head']}>
        <h3 id={`genus-${genus}`}>
          <Taxon name={genus} />
        </h3>
        <span className={style['soft']}>{standing(known, version)}</span>
        <Button icon="edit" onClick={() => setEditing(true)}>
          Edit this profile
        </Button>
      </header>
      <dl className={style['cells']}>
        <Cell label="Receptacles of a female" basis={basisInWords(receptacles.basis)}>
          {receptacles.words ||
            (receptacles.forms.length > 0 ? listed(receptacles.forms.map((form) => uncapitalized(FORM_LABELS[form]))) : 'not known')}
        </Cell>
        <Cell label="Hooks of a male" basis={basisInWords(hooks.basis)}>
          {HOOK_WORDS[hooks.state]}
          {hooks.words !== '' && `. ${hooks.words}`}
        </Cell>
        {pitfalls.map(({ words, basis }) => (
          <Cell key={words} label="Mind" basis={basisInWords(basis)}>
            {words}
          </Cell>
        ))}
        <Cell label="What misleads" basis={raised.length > 0 ? basisInWords(flagsBasis) : ''}>
          {raised.length > 0 ? raised.join('; ') : 'none'}
        </Cell>
        <Cell label="Adult carapace" basis="">
          {adultCarapaceMm === null
            ? 'not said, so only the absolute size of a skin counts, and no look for bulbs that finds none says anything'
            : `about ${adultCarapaceMm} mm`}
        </Cell>
      </dl>
      <p className={style['soft']}>A profile helps to look. It never changes an answer that was given.</p>
      {editing && <ProfileDialog profile={profile} onClose={() => setEditing(false)} />}
    </section>
  );
}

function Cell({ label, basis, children }: { label: string; basis: string; children: ReactNode }): ReactElement {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        {children}
        {basis !== '' && <span className={style['basis']}>{basis}</span>}
      </dd>
    </div>
  );
}

function standing(known: boolean, version: number): string {
  if (!known) return 'No profile: read as plain and not checked.';
  return version === 0 ? 'As shipped.' : `As edited, version ${version}.`;
}
