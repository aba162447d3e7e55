import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { SpecimenPage } from '../../../api/contract/specimens.ts';
import { Button } from '../../parts/Button.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import pageStyle from './SpecimenPage.module.css';
import style from './WholeLine.module.css';
import { type WholeLineEntry, wholeLineOf } from './wholeLine.ts';

/** Everything on record about one animal on one line, the latest first; made to be printed. */
export function WholeLine({ page }: { page: SpecimenPage }): ReactElement | null {
  const entries = wholeLineOf(page);
  const [removing, setRemoving] = useState<WholeLineEntry['observation']>(null);
  if (entries.length === 0) return null;
  return (
    <section aria-labelledby="whole-line" className={style['whole']}>
      <header className={style['head']}>
        <h2 id="whole-line" className={pageStyle['heading']}>
          Everything on record
        </h2>
        <Button onClick={() => window.print()}>Print this line</Button>
      </header>
      <ol className={style['line']} reversed>
        {entries.map(({ key, on, clock, words, note, photoId, to, observation }) => (
          <li key={key} className={style['entry']}>
            <span className={style['when']}>
              <DayText day={on} />
              {clock && <small>{clock}</small>}
            </span>
            <span className={style['what']}>
              {to ? <Link to={to}>{words}</Link> : words}
              {note && <small>{note}</small>}
            </span>
            {photoId && <Thumb photoId={photoId} alt="" className={style['thumb']} />}
            {observation && <IconButton icon="remove" label={`Remove ${observation.what}`} onClick={() => setRemoving(observation)} />}
          </li>
        ))}
      </ol>
      {removing && (
        <RemoveDialog
          kind="observation"
          id={removing.id}
          what={removing.what}
          note="Waits, timers and signs of premolt that rest on it are worked out anew."
          onClose={() => setRemoving(null)}
        />
      )}
    </section>
  );
}
