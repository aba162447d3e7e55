import type { ReactElement } from 'react';
import type { LiveSize } from '../../../domain/growth/liveSizes.ts';
import { counted } from '../../../words/counts.ts';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import style from './LadderPage.module.css';
import { LitProvider } from './lit.tsx';
import { RungTable } from './RungTable.tsx';

/** An animal without a molt on record: what photos of the living animal say of its size, and how a first rung comes about. */
export function NoRung({ specimenId, live }: { specimenId: string; live: readonly LiveSize[] }): ReactElement {
  return (
    <>
      <EmptyState
        title="No rung yet"
        action={
          <>
            <ButtonLink to={`/specimens/${specimenId}`} kind="primary" icon="add">
              Record the first molt
            </ButtonLink>
            <ButtonLink to="/intake">Bring in photos</ButtonLink>
          </>
        }
      >
        Each molt on record becomes a rung here: its skin, its size, and how much larger it is than the one before.
      </EmptyState>
      {live.length > 0 && (
        <section className={style['section']} aria-labelledby="alive">
          <h2 id="alive">Measured alive</h2>
          <p className={style['small']}>
            {counted(live.length, 'photo')} of the living animal with a size. Without a molt on record they stand in no row of instars, and
            no growth is fitted to them.
          </p>
          <LitProvider>
            <RungTable rungs={[]} live={live} inDoubt={[]} specimenId={specimenId} />
          </LitProvider>
        </section>
      )}
    </>
  );
}
