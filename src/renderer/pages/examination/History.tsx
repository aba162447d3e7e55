import { type ReactElement, useState } from 'react';
import type { Determination } from '../../../domain/sexing/determination.ts';
import type { LiveSign } from '../../../domain/sexing/live/liveSign.ts';
import { contradictionsOf, opposedTo } from '../../../domain/sexing/sign.ts';
import { correctedIds } from '../../../domain/sexing/standing.ts';
import { counted } from '../../../words/counts.ts';
import { Group } from './Group.tsx';
import style from './History.module.css';
import { entryId, HistoryEntry } from './HistoryEntry.tsx';
import { WithdrawDialog } from './WithdrawDialog.tsx';

interface Props {
  /** Of all skins of the animal, oldest first. */
  determinations: readonly Determination[];
  liveSigns: readonly LiveSign[];
  /** The skin on the table. */
  exuviaId: string;
  nameOfSkin: (exuviaId: string) => string;
  onCorrect: (determination: Determination) => void;
}

/** Everything anybody has concluded about this animal: nothing is overwritten, and what contradicts is marked. */
export function History({ determinations, liveSigns, exuviaId, nameOfSkin, onCorrect }: Props): ReactElement {
  const [withdrawing, setWithdrawing] = useState<Determination | null>(null);
  const corrected = correctedIds(determinations);
  const contradicting = new Set(contradictionsOf(determinations, liveSigns).map((determination) => determination.id));
  const show = (determinationId: string) => {
    const entry = document.getElementById(entryId(determinationId));
    entry?.scrollIntoView({ block: 'nearest' });
    entry?.focus();
  };
  return (
    <Group
      title="On record for this animal"
      note={
        determinations.length === 0
          ? 'Nothing yet. What you sign here begins the record.'
          : `${counted(determinations.length, 'determination')}, oldest first. Corrected and withdrawn ones stay to be seen and no longer count.`
      }
    >
      {determinations.length > 0 && (
        <ol className={style['entries']}>
          {determinations.map((determination) => (
            <HistoryEntry
              key={determination.id}
              determination={determination}
              nameOfSkin={nameOfSkin}
              onThisSkin={determination.exuviaId === exuviaId}
              corrected={corrected.has(determination.id)}
              contradicts={contradicting.has(determination.id)}
              opposed={opposedTo(determination, determinations)}
              onShow={show}
              onCorrect={() => onCorrect(determination)}
              onWithdraw={() => setWithdrawing(determination)}
            />
          ))}
        </ol>
      )}
      {withdrawing && <WithdrawDialog determination={withdrawing} onClose={() => setWithdrawing(null)} />}
    </Group>
  );
}
