import { type ReactElement, useEffect } from 'react';
import type { RectangleScale, ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { Disagreement } from '../../../../domain/measuring/disagreements.ts';
import { showPreview, takeFound } from '../../../bench/deeds/finding.ts';
import { swapScales } from '../../../bench/deeds/scale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { type LengthBy, lengthInWords } from '../lengths/lengthBy.ts';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { areInOnePlace, contradictionInWords, displacedInWords, namesApart } from './findingWords.ts';
import { useProposals } from './useProposals.ts';

interface Props {
  disagreements: readonly Disagreement[];
  /** A length that both tell, where lengths stand. */
  lengthBy?: LengthBy | null;
}

/**
 * What contradicts the scale and cannot both be right: says so, shows both, drawn beside the scale, and asks. Nothing that was
 * measured changes by itself.
 */
export function ContradictedScale(props: Props): ReactElement {
  const { bench } = useWork();
  const other = props.disagreements[0]?.other ?? null;
  useEffect(() => {
    showPreview(bench, other);
    return () => showPreview(bench, null);
  }, [bench, other]);
  return <Contradictions {...props} />;
}

/** The same of objects of which none is the scale yet. */
export function Contradictions({ disagreements, lengthBy = null }: Props): ReactElement {
  return (
    <>
      {disagreements.map((disagreement) => {
        const { one, other } = disagreement;
        const key = namesApart(one, other).join(' / ');
        return disagreement.areOfOneCard && one.kind === 'rectangle' && other.kind === 'rectangle' ? (
          <DisplacedHandles key={key} marks={one} found={other} contradiction={disagreement.contradiction} />
        ) : (
          <TwoObjects key={key} {...disagreement} lengthBy={lengthBy} />
        );
      })}
    </>
  );
}

function TwoObjects({ one, other, contradiction, lengthBy }: Disagreement & { readonly lengthBy: LengthBy | null }): ReactElement {
  const [name, otherName] = namesApart(one, other);
  const isOneTakenTwice = areInOnePlace(one, other);
  const [byOne, byOther] = [lengthBy?.of(one) ?? null, lengthBy?.of(other) ?? null];
  return (
    <Notice
      tone="warning"
      title={isOneTakenTwice ? 'One object in this picture is taken for two' : 'Two objects in this picture contradict each other'}
    >
      <p>{contradictionInWords(one, other, contradiction)}</p>
      {lengthBy && byOne !== null && byOther !== null && (
        <dl className={style['byBoth']}>
          <dt>
            {lengthBy.name} by “{name}”
          </dt>
          <dd className="figures">{lengthInWords(byOne)}</dd>
          <dt>
            {lengthBy.name} by “{otherName}”
          </dt>
          <dd className="figures">{lengthInWords(byOther)}</dd>
        </dl>
      )}
      <p>
        {isOneTakenTwice
          ? `Both lie in the same place, so it can be only one of them: “${name}” or “${otherName}”. Which is it?`
          : 'One is not what it is taken for, or does not lie flat on the table: another coin, another graduation, a card printed at another size, a bent card. Which do you trust?'}
      </p>
      <div className={style['answers']}>
        <TrustButton marks={one} name={name} />
        <TrustButton marks={other} name={otherName} />
      </div>
    </Notice>
  );
}

interface DisplacedProps {
  marks: RectangleScale;
  found: RectangleScale;
  contradiction: Disagreement['contradiction'];
}

/** One card, marked by hand beside where it was found: the corners change, what the keeper said of its size stays. */
function DisplacedHandles({ marks, found, contradiction }: DisplacedProps): ReactElement {
  const { bench } = useWork();
  const { data } = useProposals(false);
  const proposal = data?.find((candidate) => candidate.marks === found);
  return (
    <Notice tone="warning" title="The handles do not lie on the edges of the card">
      <p>{displacedInWords(marks, found, contradiction)}</p>
      <div className={style['answers']}>
        <Button
          kind="primary"
          disabled={proposal === undefined}
          onClick={() => {
            if (proposal !== undefined) takeFound(bench, { ...proposal, marks: fittedTo(marks, found) });
          }}
        >
          Fit them to these edges
        </Button>
      </div>
    </Notice>
  );
}

function fittedTo({ sidePoints: _, ...said }: RectangleScale, { corners, pointingPx, sidePoints }: RectangleScale): RectangleScale {
  return { ...said, corners, pointingPx, ...(sidePoints && { sidePoints }) };
}

function TrustButton({ marks, name }: { marks: ScaleMarks; name: string }): ReactElement {
  const { bench } = useWork();
  const { scale: present, check } = useBench((state) => state.edited.document);
  const { data } = useProposals(false);
  if (present === marks) {
    return <p className={style['soft']}>Measured by now: {name}</p>;
  }
  const isCheck = marks === check;
  const proposal = data?.find((candidate) => candidate.marks === marks);
  return (
    <Button
      disabled={!isCheck && proposal === undefined}
      onClick={() => {
        if (isCheck) swapScales(bench);
        else if (proposal !== undefined) takeFound(bench, proposal);
      }}
    >
      Trust: {name}
    </Button>
  );
}
