import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import { momentInWords } from '../../../words/dates.ts';
import { capitalized } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import { useChange } from '../../client/queries.ts';
import { IconButton } from '../../parts/IconButton.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useRemovals } from '../../removing/RemovedProvider.tsx';
import style from './LatestSeen.module.css';
import { offsetHere } from './wallClock.ts';

/** What was noted last, whenever it was seen, to be looked over and taken away where it was wrong. */
export function LatestSeen({ animal }: { animal: WatchedAnimal }): ReactElement | null {
  const remove = useChange('DELETE /api/observations/{observationId}');
  const { announce } = useRemovals();
  if (animal.latest.length === 0) return null;
  return (
    <section aria-label="Noted last" className={style['latest']}>
      <h3>Noted last</h3>
      {remove.error && <FailureNotice error={remove.error} />}
      <ul className={style['list']}>
        {animal.latest.map(({ id, kind, moment, source, span, note }) => {
          const what = SEEN_LABELS[kind];
          return (
            <li key={id}>
              <span>
                {capitalized(what)}
                {span && ` ${span.spanMm} ± ${span.plusMinusMm} mm`}
                <small>
                  {momentInWords(moment, offsetHere(moment.at))}
                  {source.kind === 'photo' && (source.offsetAssumed ? ', from a photo; its time zone is assumed' : ', from a photo')}
                </small>
                {note !== '' && <small>{note}</small>}
              </span>
              <IconButton
                icon="remove"
                label={`Remove "${what}"`}
                onClick={() =>
                  remove.mutate(
                    { path: { observationId: id } },
                    {
                      onSuccess: (removal) => announce({ removalId: removal.id, message: `Removed "${what}" of ${animal.specimen.code}.` }),
                    },
                  )
                }
              />
            </li>
          );
        })}
      </ul>
      <p>
        Earlier notes are looked over and removed on <Link to={`/specimens/${animal.specimen.id}`}>the page of {animal.specimen.code}</Link>
        , under “Everything on record”.
      </p>
    </section>
  );
}
