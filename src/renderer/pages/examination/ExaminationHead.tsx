import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { AnswerOf } from '../../../api/contract/contract.ts';
import { type DatedMolt, instarNowOf, recordedMoltNumber } from '../../../domain/molting/instars.ts';
import { spanInWords } from '../../../words/dates.ts';
import { instarInWords, recordedInWords } from '../../../words/instars.ts';
import { PageHead } from '../../parts/PageHead.tsx';
import { SampleMark } from '../../parts/SampleMark.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import style from './ExaminationHead.module.css';

interface Props {
  sheet: AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;
  molts: readonly DatedMolt[];
}

/** Whose skin lies here, which instar it shows, and where the animal stands now. */
export function ExaminationHead({ sheet: { specimen, molt, instar, sign }, molts }: Props): ReactElement {
  const title =
    instar === null ? `Skin of ${recordedInWords(recordedMoltNumber(molt.id, molts) ?? 0)}` : `Skin of ${instarInWords(instar)}`;
  const now = specimen.status === 'dead' ? null : instarNowOf(molts, specimen);
  return (
    <PageHead
      title={title}
      windowTitle={`${specimen.code}, ${title}`}
      above={
        <>
          <Link to={`/specimens/${specimen.id}`}>{specimen.name ?? specimen.code}</Link> · <Taxon name={specimen.taxon} />{' '}
          {specimen.sample && <SampleMark />}
        </>
      }
      below={
        `Shed ${spanInWords(molt.happenedFrom, molt.happenedTo)}. It shows the instar that ended with that molt` +
        (now === null ? '; the animal came out of it larger.' : `; the animal came out of it larger and is now in ${instarInWords(now)}.`)
      }
      actions={
        <div className={style['sign']}>
          <span className={style['label']}>On record</span>
          <SexMark sign={sign} />
        </div>
      }
    />
  );
}
