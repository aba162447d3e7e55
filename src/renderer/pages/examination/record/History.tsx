import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import type { LaterFate } from '../../../../domain/sexing/later.ts';
import { type LiveSign, standingLiveSigns } from '../../../../domain/sexing/live/liveSign.ts';
import { contradictionsOf, opposedTo } from '../../../../domain/sexing/sign.ts';
import { counted } from '../../../../words/counts.ts';
import { Button } from '../../../parts/Button.tsx';
import { Group } from '../Group.tsx';
import style from './History.module.css';
import { HistoryEntry } from './HistoryEntry.tsx';
import { StatementDialog } from './StatementDialog.tsx';
import { WithdrawDialog } from './WithdrawDialog.tsx';

interface Props {
  specimenId: string;
  /** Of all skins of the animal, oldest first. */
  determinations: readonly Determination[];
  /** Of the determinations, in the same order. */
  fates: readonly LaterFate[];
  liveSigns: readonly LiveSign[];
  /** The skin on the table. */
  exuviaId: string;
  /** Of the animal and all its skins. */
  photos: readonly Photo[];
  nameOfSkin: (exuviaId: string) => string;
  onCorrect: (determination: Determination) => void;
}

/** Everything anybody has concluded about this animal: nothing is overwritten, and what contradicts is marked. */
export function History(props: Props): ReactElement {
  const { specimenId, determinations, fates, liveSigns, exuviaId, photos, nameOfSkin, onCorrect } = props;
  const [withdrawing, setWithdrawing] = useState<Determination | null>(null);
  const [stating, setStating] = useState(false);
  const contradicting = new Set(contradictionsOf(determinations, liveSigns).map((determination) => determination.id));
  const seen = standingLiveSigns(liveSigns).length;
  return (
    <Group
      title="On record for this animal"
      note={
        determinations.length === 0
          ? 'Nothing yet. What you sign here begins the record.'
          : `${counted(determinations.length, 'determination')}, oldest first. Corrected and withdrawn ones stay to be seen and no longer count.`
      }
    >
      <div className={style['ways']}>
        <Button onClick={() => setStating(true)}>Statement of sex</Button>
        <p>
          {seen === 0 ? 'No sign' : counted(seen, 'sign')} of the animal itself on record:{' '}
          <Link to={`/specimens/${specimenId}`}>to its page</Link>
        </p>
      </div>
      {determinations.length > 0 && (
        <ol className={style['entries']}>
          {determinations.map((determination) => (
            <HistoryEntry
              key={determination.id}
              {...{ determination, determinations, liveSigns, photos, nameOfSkin }}
              onThisSkin={determination.exuviaId === exuviaId}
              fate={fates.find(({ determinationId }) => determinationId === determination.id) ?? null}
              contradicting={contradicting}
              opposed={opposedTo(determination, determinations)}
              onCorrect={() => onCorrect(determination)}
              onWithdraw={() => setWithdrawing(determination)}
            />
          ))}
        </ol>
      )}
      {withdrawing && <WithdrawDialog determination={withdrawing} onClose={() => setWithdrawing(null)} />}
      {stating && <StatementDialog specimenId={specimenId} onClose={() => setStating(false)} />}
    </Group>
  );
}
