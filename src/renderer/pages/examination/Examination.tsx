import { type ReactElement, useState } from 'react';
import type { AnswerOf } from '../../../api/contract/contract.ts';
import { Refusal } from '../../../domain/failure.ts';
import type { Checklist, Determination, UnfinishedDetermination } from '../../../domain/sexing/determination.ts';
import { standingOf } from '../../../domain/sexing/standing.ts';
import { sexInWords } from '../../../words/sex.ts';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useToast } from '../../parts/Toast.tsx';
import style from './Examination.module.css';
import { ExaminationHead } from './ExaminationHead.tsx';
import { firstToRead, PhotoTable } from './evidence/PhotoTable.tsx';
import { finished, type Gaps, NO_GAPS } from './reading/gaps.ts';
import { gradingOf } from './reading/grading.ts';
import { SavingLine } from './reading/SavingLine.tsx';
import { StepRail } from './reading/StepRail.tsx';
import { type StepsLeft, useReading } from './reading/useReading.ts';
import { weighedWith } from './reading/weighingOf.ts';
import { History } from './record/History.tsx';
import { ReadAlready } from './record/ReadAlready.tsx';
import { SexConflict } from './record/SexConflict.tsx';
import { earlierSkinsOf, skinNamer } from './skinNames.ts';
import { CompareStep } from './steps/CompareStep.tsx';
import { ConcludeStep } from './steps/ConcludeStep.tsx';
import { GradeStep } from './steps/GradeStep.tsx';
import { LookStep } from './steps/LookStep.tsx';
import { MatchStep } from './steps/MatchStep.tsx';
import { OrientStep } from './steps/OrientStep.tsx';
import { PrepareStep } from './steps/PrepareStep.tsx';
import { SignStep } from './steps/SignStep.tsx';
import { StepPanel } from './steps/StepPanel.tsx';
import { BandLine } from './weighing/BandLine.tsx';

interface Props {
  sheet: AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;
  page: AnswerOf<'GET /api/specimens/{specimenId}'>;
  today: string;
  /** Whoever uses this window; signs unless another name is given. */
  observer: string;
  left: StepsLeft;
}

/** One skin on the table: the steps of its reading above, its photos beside the step in hand, the record below. */
export function Examination({ sheet, page, today, observer, left }: Props): ReactElement {
  const { exuvia, determinations } = sheet;
  const open = useReading(sheet, today, left);
  const { reading, step, go } = open;
  const [chosen, setChosen] = useState<string | null>(null);
  const [gaps, setGaps] = useState<Gaps | null>(null);
  const [writesGrade, setWritesGrade] = useState(true);
  // Fields that keep what is typed begin anew with another reading.
  const [round, setRound] = useState(0);
  // A skin that was read is not laid out for reading before somebody asks for it; whoever comes back from the Bench is in the midst of it.
  const [readsAgain, setReadsAgain] = useState((left.steps[exuvia.id] ?? null) !== null);
  // Whoever has just signed is led to what came of it.
  const [justSigned, setJustSigned] = useState(false);
  const sign = useChange('POST /api/exuviae/{exuviaId}/determinations');
  const toast = useToast();

  const { weighing, prospects, assessments } = weighedWith(reading, { sheet, page, observer });
  const grading = gradingOf(reading.checklist.grade, exuvia.grade);
  const skinPhotos = sheet.photos;
  const { animalPhotos } = page;
  const shown = [...skinPhotos, ...animalPhotos].find(({ id }) => id === chosen) ?? firstToRead(skinPhotos) ?? animalPhotos[0];
  const nameOfSkin = skinNamer(page);
  const standing = standingOf(determinations).filter(({ exuviaId }) => exuviaId === exuvia.id);
  const latest = open.begun || readsAgain ? undefined : standing.at(-1);

  const change = (changes: Partial<UnfinishedDetermination>) => {
    open.change(changes);
    setGaps(null);
    sign.reset();
  };
  const answer = (answers: Partial<Checklist>) => change({ checklist: { ...reading.checklist, ...answers } });
  const beginAnew = () => {
    setGaps(null);
    setWritesGrade(true);
    setReadsAgain(false);
    setRound(round + 1);
  };
  /** Says that a reading under way went, with the way back to it. */
  const offerBack = (gone: UnfinishedDetermination, message: string) =>
    toast({
      message,
      action: {
        label: 'Undo',
        run: () => {
          open.change(gone);
          go(gone.step);
          setRound((now) => now + 1);
        },
      },
    });
  const giveUp = () => {
    open.giveUp();
    beginAnew();
    offerBack(reading, 'Reading given up.');
  };
  const correct = ({ id, sex, level, reader, checklist, evidencePhotoIds, pins, notes }: Determination) => {
    if (open.begun) offerBack(reading, 'The reading that was under way gave way to the correction.');
    change({ sex, level, reader, checklist, evidencePhotoIds, pins, notes, readOn: today, supersedes: id });
    setRound(round + 1);
    setJustSigned(false);
    go('match');
  };
  const readAgain = () => {
    setReadsAgain(true);
    setJustSigned(false);
    go('match');
  };
  const signNow = async () => {
    const { draft, gaps: found } = finished(reading, { observer, today, shedFrom: sheet.molt.happenedFrom, assessments });
    setGaps(found);
    if (draft === null) return;
    // An answer still on its way would arrive after the signature and find no reading.
    const readingVersion = await open.settled();
    const gradeForSkin = grading && writesGrade ? { version: exuvia.version } : null;
    sign.mutate(
      { path: { exuviaId: exuvia.id }, body: { ...draft, readingVersion, gradeForSkin } },
      {
        onError: (error) => {
          if (!(error instanceof Refusal) || error.failure.code !== 'changed-meanwhile' || error.failure.what !== 'reading-under-way')
            return;
          open.contest(error);
          sign.reset();
        },
        onSuccess: async (signed) => {
          const graded = grading && writesGrade ? ` Grade ${grading.read} written to the skin.` : '';
          await open.takeStored();
          toast({ message: `Signed: ${sexInWords({ sex: signed.sex, level: signed.level, conflict: false })}.${graded}` });
          beginAnew();
          setJustSigned(true);
        },
      },
    );
  };

  const given = { sheet, reading, table: { skinPhotos, animalPhotos, shown }, onAnswer: answer, onChange: change };
  const panels = {
    match: () => <MatchStep key={round} {...given} />,
    grade: () => <GradeStep {...given} />,
    prepare: () => <PrepareStep />,
    orient: () => <OrientStep {...given} />,
    look: () => <LookStep {...given} />,
    compare: () => <CompareStep {...given} earlier={earlierSkinsOf(page, exuvia.id)} />,
    conclude: () => <ConcludeStep {...given} gaps={gaps ?? NO_GAPS} {...{ weighing, prospects, assessments, nameOfSkin }} />,
    sign: () => (
      <SignStep
        {...given}
        {...{ observer, today, gaps }}
        grading={grading && { ...grading, write: writesGrade }}
        onWriteGrade={setWritesGrade}
        onGo={go}
        busy={sign.isPending}
        error={sign.error}
        onSign={() => void signNow()}
      />
    ),
  };
  return (
    <>
      <ExaminationHead sheet={sheet} molts={page.molts.map(({ molt }) => molt)} />
      {sheet.sign.conflict && (
        <SexConflict specimenId={sheet.specimen.id} {...{ determinations, nameOfSkin }} liveSigns={sheet.liveSigns} />
      )}
      {reading.supersedes !== null && (
        <Notice title="You are correcting a signed determination.">
          <p>Its answers are filled in. The earlier one stays on record, marked as corrected.</p>
          <Button className={style['leave']} onClick={giveUp}>
            Leave it as it is
          </Button>
        </Notice>
      )}
      {latest === undefined && (
        <>
          <StepRail reading={reading} begun={open.begun} observer={observer} step={step} onGo={go} />
          <BandLine weighing={weighing} assessments={assessments} />
        </>
      )}
      <div className={style['table']}>
        <div className={style['seen']}>
          <PhotoTable
            {...{ skinPhotos, animalPhotos, shown }}
            evidence={latest ?? reading}
            onShow={setChosen}
            onEvidence={latest ? null : change}
          />
        </div>
        <div className={style['step']}>
          {latest === undefined ? (
            <>
              <StepPanel step={step} onGo={go}>
                {panels[step]()}
              </StepPanel>
              <SavingLine open={open} onGiveUp={giveUp} />
            </>
          ) : (
            <ReadAlready
              latest={latest}
              earlier={standing.length - 1}
              justSigned={justSigned}
              onReadAgain={readAgain}
              onCorrect={() => correct(latest)}
            />
          )}
        </div>
      </div>
      <div className={style['record']}>
        <History
          specimenId={sheet.specimen.id}
          determinations={determinations}
          fates={sheet.fates}
          liveSigns={sheet.liveSigns}
          exuviaId={exuvia.id}
          photos={[...page.molts.flatMap(({ photos }) => photos), ...animalPhotos]}
          nameOfSkin={nameOfSkin}
          onCorrect={correct}
        />
      </div>
    </>
  );
}
