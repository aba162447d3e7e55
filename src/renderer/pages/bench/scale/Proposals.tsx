import { type ReactElement, useEffect, useState } from 'react';
import { asDisk } from '../../../../domain/finding/coin/coinMarks.ts';
import type { FoundScale, ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import { GRADUATION_MM, type Graduation } from '../../../../domain/finding/refinement.ts';
import { CoinName } from '../../../../domain/measuring/calibration.ts';
import { COIN_LABELS, scaleObjectName } from '../../../../words/measuring.ts';
import { showPreview, takeFound } from '../../../bench/deeds/finding.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import { MirroredPicture } from '../MirroredPicture.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { Contradictions } from './Contradictions.tsx';
import { confidenceInWords, evidenceInWords } from './findingWords.ts';
import { GRADUATION_OPTIONS } from './objects.ts';
import { PrintedCard } from './PrintedCard.tsx';
import proposalStyle from './Proposals.module.css';
import { sideFromOthers, useContradictions, useProposals } from './useProposals.ts';

const NOTHING: readonly ScaleProposal[] = [];

/** What was seen in the picture without a click. It is shown and offered; only the keeper takes it over. */
export function Proposals(): ReactElement {
  const { bench } = useWork();
  const seen = useProposals(true);
  const proposals = seen.data ?? NOTHING;
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
          Nothing of known size was recognized. Choose below what lies beside the skin.
        </p>
      )}
      {proposals.length > 0 && (
        <>
          <p className={style['soft']} role="status">
            {proposals.length === 1 ? 'One object was seen' : `${proposals.length} objects were seen`}, drawn yellow on the photo. Take it
            only if it is what it is taken for.
          </p>
          <ul className={style['list']}>
            {proposals.map((proposal, index) => (
              <li key={proposalKey(proposal)} className={proposalStyle['line']}>
                <Offer proposal={proposal} all={proposals} isShown={index === shown} onShow={() => setShown(index)} />
              </li>
            ))}
          </ul>
          <Contradictions disagreements={contradictions} />
        </>
      )}
    </section>
  );
}

interface OfferProps {
  proposal: ScaleProposal;
  all: readonly ScaleProposal[];
  isShown: boolean;
  onShow: () => void;
}

function Offer({ proposal, all, isShown, onShow }: OfferProps): ReactElement {
  const { bench, sheet } = useWork();
  const [answered, setAnswered] = useState<FoundScale>(proposal);
  const isGuessed = answered.evidence.kind === 'rim' && answered.evidence.coinAssumed;
  const name = isGuessed ? `A coin, perhaps: ${scaleObjectName(answered.marks)}` : scaleObjectName(answered.marks);
  const sided = sideFromOthers(answered.marks, all, sheet.photo);
  return (
    <>
      <button type="button" className={style['item']} aria-pressed={isShown} onClick={onShow} onFocus={onShow}>
        <span>{name}</span>
        <span className={style['aside']}>{confidenceInWords(proposal)}</span>
      </button>
      {isShown && (
        <div className={proposalStyle['offer']}>
          <p className={style['soft']}>{evidenceInWords(proposal)}</p>
          <MirroredPicture marks={answered.marks} />
          <Question proposal={proposal} answered={answered} onAnswer={setAnswered} />
          {answered.marks.kind === 'points' && answered.marks.object === 'scale-card' && (
            <PrintedCard marks={answered.marks} onChange={(marks) => setAnswered({ ...answered, marks })} />
          )}
          {sided !== null && (
            <p className={style['soft']}>Which of its edges was nearer to the camera follows from “{scaleObjectName(sided.by)}”.</p>
          )}
          <div className={style['row']}>
            <Button
              kind="primary"
              aria-label={`Take it: ${name}`}
              onClick={() => {
                takeFound(bench, { ...answered, marks: sided?.marks ?? answered.marks });
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

/** What the picture cannot tell: which coin, which graduation. */
function Question(props: { proposal: ScaleProposal; answered: FoundScale; onAnswer: (found: FoundScale) => void }): ReactElement | null {
  const { proposal, answered, onAnswer } = props;
  const { marks, evidence } = answered;
  if (marks.kind === 'coin' && proposal.evidence.kind === 'rim' && evidence.kind === 'rim' && proposal.evidence.coinAssumed) {
    const likely = proposal.evidence.coins;
    const names = [...likely, ...CoinName.options.filter((name) => !likely.includes(name))];
    const options = [
      ...names.map((name) => ({ value: name, label: `${COIN_LABELS[name]}${likely.includes(name) ? ', fits' : ''}` })),
      { value: 'own' as const, label: COIN_LABELS.own },
    ];
    const { diameterMm, diameterStandardUncertaintyMm, thicknessMm } = marks;
    return (
      <Select
        label="Which coin is it? Its size depends on that."
        value={marks.coin}
        options={options}
        onChange={(coin) =>
          onAnswer({
            marks: asDisk(marks, coin === 'own' ? { coin, diameterMm, diameterStandardUncertaintyMm, thicknessMm } : { coin }),
            evidence: { ...evidence, coinAssumed: false },
          })
        }
      />
    );
  }
  if (
    marks.kind === 'rule-ticks' &&
    evidence.kind === 'ticks' &&
    proposal.evidence.kind === 'ticks' &&
    proposal.evidence.graduationAssumed
  ) {
    const graduation =
      (Object.keys(GRADUATION_MM) as Graduation[]).find((name) => GRADUATION_MM[name] === marks.graduationMm) ?? 'millimeter';
    return (
      <Select
        label="What lies between two ticks?"
        value={graduation}
        options={GRADUATION_OPTIONS}
        onChange={(chosen) =>
          onAnswer({ marks: { ...marks, graduationMm: GRADUATION_MM[chosen] }, evidence: { ...evidence, graduationAssumed: false } })
        }
      />
    );
  }
  return null;
}

function proposalKey({ marks, confidence }: ScaleProposal): string {
  const at = marks.kind === 'coin' ? marks.rim.centre.xPx : 0;
  return `${marks.kind} ${confidence} ${at}`;
}
