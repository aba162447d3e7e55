import { Fragment, type ReactElement } from 'react';
import type { LiveSize } from '../../../domain/growth/liveSizes.ts';
import type { Rung } from '../../../domain/growth/rung.ts';
import { gapInWords } from '../../../words/ladder.ts';
import { SIZE_LABELS } from '../../../words/quantities.ts';
import { GapRow } from './GapRow.tsx';
import { LiveRow } from './LiveRow.tsx';
import { RungRow } from './RungRow.tsx';
import style from './RungTable.module.css';

const COLUMNS = [
  'Skin',
  'Instar that ended',
  SIZE_LABELS.carapaceLengthMm,
  SIZE_LABELS.carapaceWidthMm,
  SIZE_LABELS.legFirstMm,
  SIZE_LABELS.legFourthMm,
  'Ratio to the instar before',
  'Days since the molt on record before',
];

interface Props {
  rungs: readonly Rung[];
  live: readonly LiveSize[];
  /** Molts whose carapace length does not fit the skins around it. */
  inDoubt: readonly string[];
  specimenId: string;
}

/**
 * A row for each instar on record, oldest first, with the gaps between them in words. Photos of the living animal stand below
 * the molt they followed, which is before the skin of the instar they show; those without a place in the row at the end.
 */
export function RungTable({ rungs, live, inDoubt, specimenId }: Props): ReactElement {
  const isPlaced = ({ step }: LiveSize) => step !== null;
  return (
    <div className={style['scroller']}>
      <table className={style['table']}>
        <caption className="spoken-only">
          Instars on record, oldest first, each as its skin or a photo of the living animal shows it. Lengths in millimeters, plus or minus
          U (95 %).
        </caption>
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
            <th scope="col">
              <span className="spoken-only">Open</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rungs.map((rung, index) => {
            const previous = rungs[index - 1];
            const gap = gapInWords(rung, previous);
            return (
              <Fragment key={rung.moltId}>
                {gap && (
                  <GapRow
                    specimenId={specimenId}
                    moltId={rung.moltId}
                    words={gap}
                    columns={COLUMNS.length + 1}
                    canClose={previous !== undefined}
                  />
                )}
                <RungRow rung={rung} previous={previous} isOdd={inDoubt.includes(rung.moltId)} specimenId={specimenId} />
                {live
                  .filter((size) => isPlaced(size) && size.afterMoltId === rung.moltId)
                  .map((size) => (
                    <LiveRow key={size.photoId} live={size} />
                  ))}
              </Fragment>
            );
          })}
          {live
            .filter((size) => !isPlaced(size))
            .map((size) => (
              <LiveRow key={size.photoId} live={size} />
            ))}
        </tbody>
      </table>
    </div>
  );
}
