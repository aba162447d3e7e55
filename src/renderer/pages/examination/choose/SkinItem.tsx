import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { AnswerOf } from '../../../../api/contract/contract.ts';
import { counted } from '../../../../words/counts.ts';
import { GRADE_LABELS } from '../../../../words/labels.ts';
import { Taxon } from '../../../parts/Taxon.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { skinName } from '../skinName.ts';
import style from './SkinItem.module.css';

/** One skin to choose: whose it is, which molt left it, and whether it has been read. */
export function SkinItem({ skin }: { skin: AnswerOf<'GET /api/exuviae'>[number] }): ReactElement {
  const { specimen, molt, exuvia, coverPhotoId } = skin;
  return (
    <li>
      <Link to={`/examination/${exuvia.id}`} className={style['skin'] ?? ''}>
        <Thumb photoId={coverPhotoId} alt="" className={style['thumb']} />
        <span className={style['who']}>
          <span className={style['name']}>{specimen.name ?? specimen.code}</span>
          <span className={style['small']}>
            <Taxon name={specimen.taxon} />
            {specimen.name !== null && ` · ${specimen.code}`}
          </span>
        </span>
        <span>{skinName(molt, skin)}</span>
        <span className={style['small']}>{exuvia.grade === null ? 'not graded' : `grade ${GRADE_LABELS[exuvia.grade]}`}</span>
        <span className={style['small']}>{standInWords(skin)}</span>
      </Link>
    </li>
  );
}

function standInWords({ begun, standingDeterminations }: AnswerOf<'GET /api/exuviae'>[number]): string {
  const read = standingDeterminations === 0 ? 'waits' : counted(standingDeterminations, 'determination');
  return begun ? (standingDeterminations === 0 ? 'reading begun' : `${read}, another begun`) : read;
}
