import { type ReactElement, useState } from 'react';
import type { MoltEntry } from '../../../api/contract/specimens.ts';
import { dayInWords, spanInWords } from '../../../words/dates.ts';
import { whatSkinShows } from '../../../words/instars.ts';
import { COMPLETENESS_LABELS, GRADE_LABELS } from '../../../words/labels.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import { DeterminationLines } from './DeterminationLines.tsx';
import { KeySizes } from './KeySizes.tsx';
import { PhotoStrip } from './PhotoStrip.tsx';
import { SkinDialog } from './SkinDialog.tsx';
import style from './SkinPart.module.css';

/** The skin of one molt: which instar it shows, its photos, sizes and determinations, where it lies. */
export function SkinPart({ entry }: { entry: MoltEntry }): ReactElement {
  const [open, setOpen] = useState<'edit' | 'remove' | null>(null);
  const { molt, exuvia } = entry;
  const name = `the skin of ${spanInWords(molt.happenedFrom, molt.happenedTo)}`;
  const close = () => setOpen(null);
  const dialogs = (
    <>
      {open === 'edit' && <SkinDialog moltId={molt.id} exuvia={exuvia} onClose={close} />}
      {open === 'remove' && exuvia && <RemoveDialog kind="exuvia" id={exuvia.id} what={name} onClose={close} />}
    </>
  );

  if (!exuvia) {
    return (
      <div className={style['none']}>
        <span>Nothing recorded about its skin.</span>
        <Button kind="quiet" aria-label={`Record ${name}`} onClick={() => setOpen('edit')}>
          Record the skin
        </Button>
        <ButtonLink kind="quiet" to={`/intake/${molt.specimenId}/${molt.id}`}>
          Bring in its photo
        </ButtonLink>
        {dialogs}
      </div>
    );
  }
  if (!exuvia.recovered && entry.photos.length === 0 && entry.determinations.length === 0) {
    return (
      <div className={style['none']}>
        <span>Skin not recovered.</span>
        {exuvia.notes && <span>{exuvia.notes}</span>}
        <Button kind="quiet" aria-label={`Change ${name}`} onClick={() => setOpen('edit')}>
          Change
        </Button>
        {dialogs}
      </div>
    );
  }
  const early = entry.photos.flatMap(({ originalName, takenOn }) =>
    takenOn !== null && takenOn < molt.happenedFrom ? [{ originalName, takenOn }] : [],
  )[0];
  return (
    <section className={style['skin']} aria-label={`Skin of ${spanInWords(molt.happenedFrom, molt.happenedTo)}`}>
      <p className={style['shows']}>{whatSkinShows(entry.instar)}</p>
      <div className={style['spread']}>
        <PhotoStrip photos={entry.photos} intakePath={`/intake/${molt.specimenId}/${molt.id}`} />
        <div className={style['findings']}>
          {early && (
            <p className={style['doubt']}>
              {early.originalName} was taken on {dayInWords(early.takenOn)}, before this molt. The camera’s clock may be wrong, or the day
              of the molt, or it shows another skin.
            </p>
          )}
          <KeySizes sizes={entry.sizes} hasPhotos={entry.photos.length > 0} />
          <DeterminationLines determinations={entry.determinations} />
          <p className={style['state']}>
            {[
              exuvia.recovered ? null : 'not recovered',
              exuvia.grade ? `grade ${GRADE_LABELS[exuvia.grade]}` : 'grade not said',
              exuvia.completeness ? COMPLETENESS_LABELS[exuvia.completeness] : null,
              exuvia.storagePlace ? `kept: ${exuvia.storagePlace}` : 'storage place not said',
            ]
              .filter((part) => part !== null)
              .map((part) => (
                <span key={part}>{part}</span>
              ))}
          </p>
          {exuvia.notes && <p className={style['notes']}>{exuvia.notes}</p>}
        </div>
      </div>
      <div className={style['actions']}>
        <ButtonLink kind="quiet" to={`/examination/${exuvia.id}`} icon="examine">
          Examine for sex
        </ButtonLink>
        <Button kind="quiet" icon="edit" aria-label={`Change ${name}`} onClick={() => setOpen('edit')}>
          Change the skin
        </Button>
        <Button kind="quiet" icon="remove" aria-label={`Remove ${name}`} onClick={() => setOpen('remove')}>
          Remove the skin
        </Button>
      </div>
      {dialogs}
    </section>
  );
}
