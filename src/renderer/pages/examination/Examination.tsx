import { type ReactElement, useEffect, useRef, useState } from 'react';
import type { AnswerOf } from '../../../api/contract/contract.ts';
import { BLANK_CHECKLIST, type Checklist, type Determination, type UnfinishedDetermination } from '../../../domain/sexing/determination.ts';
import { numbersWith } from '../../../domain/sexing/evidence/numbers.ts';
import { assessLevel } from '../../../domain/sexing/levels.ts';
import { examinedBy } from '../../../domain/sexing/signing.ts';
import { sexInWords } from '../../../words/sex.ts';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useToast } from '../../parts/Toast.tsx';
import { ChecklistForm } from './ChecklistForm.tsx';
import { Conclusion } from './Conclusion.tsx';
import style from './Examination.module.css';
import { ExaminationHead } from './ExaminationHead.tsx';
import { finished, type Gaps } from './gaps.ts';
import { gradingOf } from './grading.ts';
import { History } from './History.tsx';
import { PhotoTable } from './PhotoTable.tsx';
import { Prepare } from './Prepare.tsx';
import { SupportBar } from './SupportBar.tsx';
import { skinName } from './skinName.ts';
import { useUnfinished } from './useUnfinished.ts';

interface Props {
  sheet: AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;
  page: AnswerOf<'GET /api/specimens/{specimenId}'>;
  today: string;
  /** Whoever uses this window; signs unless another name is given. */
  observer: string;
}

/** One skin on the table: its photos on one side, the guided reading on the other, the record below. */
export function Examination({ sheet, page, today, observer }: Props): ReactElement {
  const { exuvia, determinations } = sheet;
  const molts = page.molts.map(({ molt }) => molt);
  const begun = (): UnfinishedDetermination => ({
    ...{ sex: null, level: null, reader: null, readOn: today, evidencePhotoIds: [], pins: [], notes: '', supersedes: null, step: 'match' },
    checklist: { ...BLANK_CHECKLIST, grade: exuvia.grade },
  });
  const [reading, change, restart] = useUnfinished(exuvia.id, begun);
  const [gaps, setGaps] = useState<Gaps | null>(null);
  const [round, setRound] = useState(0);
  const [writesGrade, setWritesGrade] = useState(true);
  const form = useRef<HTMLDivElement>(null);
  const record = useRef<HTMLDivElement>(null);
  const showForm = useRef(false);
  const sign = useChange('POST /api/exuviae/{exuviaId}/determinations');
  const toast = useToast();

  // After a correction has been laid out: only then does the form stand where it will stay.
  useEffect(() => {
    if (!showForm.current) return;
    showForm.current = false;
    form.current?.scrollIntoView();
    form.current?.focus();
  });

  const examined = examinedBy(
    { ...reading, reader: reading.reader ?? observer },
    {
      genus: sheet.genus,
      model: { version: sheet.model.version, numbers: numbersWith(sheet.model.adjustments) },
      liveSigns: sheet.liveSigns,
      exuviaId: exuvia.id,
      skinsInOrder: page.molts.flatMap((entry) => (entry.exuvia ? [entry.exuvia.id] : [])),
      determinations,
      animalPhotoIds: new Set(page.animalPhotos.map((photo) => photo.id)),
    },
  );
  const assessments = { female: assessLevel('female', examined), male: assessLevel('male', examined) };

  const grading = gradingOf(reading.checklist.grade, exuvia.grade);

  const edit = (changes: Partial<UnfinishedDetermination>) => {
    change(changes);
    setGaps(null);
    sign.reset();
  };
  const answer = (answers: Partial<Checklist>) => edit({ checklist: { ...reading.checklist, ...answers } });
  const beginAnew = () => {
    restart();
    setGaps(null);
    setWritesGrade(true);
    setRound(round + 1);
  };
  const correct = ({ id, sex, level, reader, checklist, evidencePhotoIds, pins, notes }: Determination) => {
    edit({ sex, level, reader, checklist, evidencePhotoIds, pins, notes, readOn: today, supersedes: id });
    setRound(round + 1);
    showForm.current = true;
  };
  const signNow = () => {
    const { draft, gaps: found } = finished(reading, { observer, today, shedFrom: sheet.molt.happenedFrom, assessments });
    setGaps(found);
    if (draft === null) return;
    sign.mutate(
      { path: { exuviaId: exuvia.id }, body: { ...draft, gradeForSkin: grading && writesGrade ? { version: exuvia.version } : null } },
      {
        onSuccess: (signed) => {
          const graded = grading && writesGrade ? ` Grade ${grading.read} written to the skin.` : '';
          toast({ message: `Signed: ${sexInWords({ sex: signed.sex, level: signed.level, conflict: false })}.${graded}` });
          beginAnew();
          record.current?.scrollIntoView();
          record.current?.focus();
        },
      },
    );
  };

  return (
    <>
      <ExaminationHead sheet={sheet} molts={molts} />
      {sheet.sign.conflict && (
        <Notice tone="warning" title="The record of this animal contradicts itself.">
          Readings of both sexes stand, and nothing is averaged: the animal counts as unsexed until one of them is corrected or withdrawn.
          Look at the skins again, side by side; the next one can decide.
        </Notice>
      )}
      <div className={style['table']}>
        <div className={style['seen']}>
          <PhotoTable
            skinPhotos={sheet.photos}
            animalPhotos={page.animalPhotos}
            evidence={reading.evidencePhotoIds}
            onEvidence={(evidencePhotoIds) => edit({ evidencePhotoIds })}
          />
        </div>
        <div ref={form} tabIndex={-1} className={style['form']}>
          {reading.supersedes !== null && (
            <Notice title="You are correcting a signed determination.">
              <p>Its answers are filled in. The earlier one stays on record, marked as corrected.</p>
              <Button className={style['leave']} onClick={beginAnew}>
                Leave it as it is
              </Button>
            </Notice>
          )}
          <Prepare />
          <ChecklistForm
            key={round}
            checklist={reading.checklist}
            genus={sheet.genus.flags}
            measuredSpan={sheet.legSpanMm}
            onAnswer={answer}
          />
          <Conclusion
            reading={reading}
            observer={observer}
            today={today}
            assessments={assessments}
            gaps={gaps}
            grading={grading && { ...grading, write: writesGrade }}
            onWriteGrade={setWritesGrade}
            busy={sign.isPending}
            error={sign.error}
            onChange={edit}
            onSign={signNow}
          />
          <SupportBar female={assessments.female} male={assessments.male} />
        </div>
      </div>
      <div ref={record} tabIndex={-1} className={style['record']}>
        <History
          determinations={determinations}
          liveSigns={sheet.liveSigns}
          exuviaId={exuvia.id}
          nameOfSkin={(exuviaId) => {
            const index = page.molts.findIndex((candidate) => candidate.exuvia?.id === exuviaId);
            const entry = page.molts[index];
            return entry ? skinName(entry.molt, { instar: entry.instar, recordedMolt: index + 1 }) : 'a skin no longer on record';
          }}
          onCorrect={correct}
        />
      </div>
    </>
  );
}
