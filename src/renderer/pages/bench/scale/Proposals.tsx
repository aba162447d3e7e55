import { type ReactElement, useEffect, useMemo, useState } from 'react';
import { asDisk } from '../../../../domain/finding/coin/coinMarks.ts';
import type { FoundScale, ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import { GRADUATION_MM, type Graduation } from '../../../../domain/finding/refinement.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM } from '../../../../domain/measuring/faceHeight.ts';
import { areOfOneObject } from '../../../../domain/measuring/sameObject.ts';
import { scaleObjectName } from '../../../../words/scaleObjects.ts';
import { showPreview, takeFound } from '../../../bench/deeds/finding.ts';
import type { ScaleRole } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import { MirroredPicture } from '../MirroredPicture.tsx';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { Contradictions } from './Contradictions.tsx';
import { DiameterDoubt } from './DiameterDoubt.tsx';
import { FaceHeightFields } from './FaceHeightFields.tsx';
import { confidenceInWords, evidenceInWords, ticksSpanInWords } from './findingWords.ts';
import { GRADUATION_OPTIONS } from './objects.ts';
import { PrintedCard } from './PrintedCard.tsx';
import proposalStyle from './Proposals.module.css';
import { sideFromOthers, useContradictions, useProposals } from './useProposals.ts';
import { WhichCoin } from './WhichCoin.tsx';

const NOTHING: readonly ScaleProposal[] = [];

/** What was seen in the picture without a click. It is shown and offered; only the keeper takes it over. */
export function Proposals({ role }: { role: ScaleRole }): ReactElement {
  const { bench } = useWork();
  const seen = useProposals(true);
  const present = useBench((state) => state.edited.document.scale);
  const proposals = useMemo(() => offeredOf(seen.data ?? NOTHING, role === 'check' ? present : undefined), [seen.data, role, present]);
  const [shown, setShown] = useState(0);
  const inView = proposals[shown];
  useEffect(() => {
    showPreview(bench, inView?.marks ?? null);
    return () => showPreview(bench, null);
  }, [bench, inView]);
  const contradictions = useContradictions(undefined, proposals);
  return (
    <section aria-label="Found in this picture" className={proposalStyle['found']}>
      <h3 className={style['heading']}>Found in this picture</h3>
      {seen.isPending && (
        <p className={style['soft']} role="status">
          Looking for a card, a rule or a coin … You can choose below meanwhile.
        </p>
      )}
      {seen.isError && <FailureNotice error={seen.error} action={<Button onClick={() => seen.refetch()}>Look again</Button>} />}
      {seen.isSuccess && proposals.length === 0 && (
        <p className={style['soft']} role="status">
          {role === 'check' ? 'No other object of known size was recognized.' : 'Nothing of known size was recognized.'} Choose below what
          lies beside the skin. A bent, worn or unusual rule may not be recognized by itself: under “A rule with ticks”, two clicks on its
          straightest part are enough.
        </p>
      )}
      {proposals.length > 0 && (
        <>
          <p className={style['soft']} role="status">
            {proposals.length === 1
              ? 'One object was seen, drawn yellow on the photo. Take it only if it is what it is taken for.'
              : `${proposals.length} objects were seen. Only the one opened in this list is drawn yellow on the photo: press another to see it. Take one only if it is what it is taken for.`}
          </p>
          <ul className={style['list']}>
            {proposals.map((proposal, index) => (
              <li key={proposalKey(proposal)} className={proposalStyle['line']}>
                <Offer proposal={proposal} all={proposals} role={role} isShown={index === shown} onShow={() => setShown(index)} />
              </li>
            ))}
          </ul>
          {role === 'scale' && <Contradictions disagreements={contradictions} />}
        </>
      )}
    </section>
  );
}

/** To check the present scale by, any other object. */
function offeredOf(proposals: readonly ScaleProposal[], present: ScaleMarks | undefined): readonly ScaleProposal[] {
  return present === undefined ? proposals : proposals.filter(({ marks }) => !areOfOneObject(present, marks));
}

interface OfferProps {
  role: ScaleRole;
  proposal: ScaleProposal;
  all: readonly ScaleProposal[];
  isShown: boolean;
  onShow: () => void;
}

function Offer({ role, proposal, all, isShown, onShow }: OfferProps): ReactElement {
  const { bench, sheet } = useWork();
  // Null: nobody has said yet which coin it is, and it gives no scale.
  const [answered, setAnswered] = useState<FoundScale | null>(isNamelessCoin(proposal) ? null : withFaceHeight(proposal));
  const { marks } = answered ?? proposal;
  const name = answered === null ? 'A coin' : scaleObjectName(marks);
  const sided = sideFromOthers(marks, all, sheet.photo);
  return (
    <>
      <button type="button" className={style['item']} aria-pressed={isShown} onClick={onShow} onFocus={onShow}>
        <span>{name}</span>
        <span className={style['aside']}>{confidenceInWords(proposal)}</span>
      </button>
      {isShown && (
        <div className={proposalStyle['offer']}>
          <p className={style['soft']}>
            {evidenceInWords(proposal)} {marks.kind === 'rule-ticks' && ticksSpanInWords(marks)}
          </p>
          <MirroredPicture marks={marks} />
          <Question proposal={proposal} answered={answered} onAnswer={setAnswered} />
          {answered !== null && marks.kind === 'rule-ticks' && (
            <FaceHeightFields
              heightMm={marks.heightMm}
              standardUncertaintyMm={marks.faceHeightStandardUncertaintyMm ?? 0}
              atOnce
              onChange={(known) => setAnswered({ ...answered, marks: { ...marks, ...known } })}
            />
          )}
          {answered !== null && marks.kind === 'coin' && <DiameterDoubt marks={marks} />}
          {answered !== null && marks.kind === 'points' && marks.object === 'scale-card' && (
            <PrintedCard marks={marks} onChange={(changed) => setAnswered({ ...answered, marks: changed })} />
          )}
          {sided !== null && (
            <p className={style['soft']}>Which of its edges was nearer to the camera follows from “{scaleObjectName(sided.by)}”.</p>
          )}
          <div className={style['row']}>
            <Button
              kind="primary"
              aria-label={`Take it: ${name}`}
              disabled={answered === null}
              onClick={() => {
                if (answered === null) return;
                takeFound(bench, { ...answered, marks: sided?.marks ?? marks }, role);
                focusPhoto();
              }}
            >
              Take it
            </Button>
          </div>
        </div>
      )}
    </>
  );
}

interface QuestionProps {
  proposal: ScaleProposal;
  answered: FoundScale | null;
  onAnswer: (found: FoundScale | null) => void;
}

/** What the picture cannot tell: which coin, which graduation. */
function Question({ proposal, answered, onAnswer }: QuestionProps): ReactElement | null {
  const { marks, evidence } = proposal;
  if (marks.kind === 'coin' && evidence.kind === 'rim' && evidence.coinAssumed) {
    return (
      <WhichCoin
        label="Which coin is it?"
        hint="Its size depends on that: without it there is no scale."
        fitting={evidence.coins}
        onChange={(disk) =>
          onAnswer(disk === null ? null : { marks: asDisk(marks, disk), evidence: { ...evidence, coinAssumed: false, coins: [] } })
        }
      />
    );
  }
  if (marks.kind === 'rule-ticks' && evidence.kind === 'ticks' && evidence.graduationAssumed) {
    const graduationMm = answered?.marks.kind === 'rule-ticks' ? answered.marks.graduationMm : marks.graduationMm;
    const graduation = (Object.keys(GRADUATION_MM) as Graduation[]).find((name) => GRADUATION_MM[name] === graduationMm) ?? 'millimeter';
    return (
      <Select
        label="What lies between two ticks?"
        value={graduation}
        options={GRADUATION_OPTIONS}
        onChange={(chosen) =>
          onAnswer({
            marks: { ...(answered?.marks.kind === 'rule-ticks' ? answered.marks : marks), graduationMm: GRADUATION_MM[chosen] },
            evidence: { ...evidence, graduationAssumed: false },
          })
        }
      />
    );
  }
  return null;
}

/** A picture tells nothing of how high a rule's face lies: what is assumed of it counts until the keeper says better. */
function withFaceHeight({ marks, evidence }: ScaleProposal): FoundScale {
  if (marks.kind !== 'rule-ticks') return { marks, evidence };
  return { marks: { ...marks, faceHeightStandardUncertaintyMm: ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM }, evidence };
}

function isNamelessCoin({ evidence }: ScaleProposal): boolean {
  return evidence.kind === 'rim' && evidence.coinAssumed;
}

function proposalKey({ marks, confidence }: ScaleProposal): string {
  const at = marks.kind === 'coin' ? marks.rim.centre.xPx : 0;
  return `${marks.kind} ${confidence} ${at}`;
}
