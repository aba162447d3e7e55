import { type ReactElement, useState } from 'react';
import { nameOfOwnDistance } from '../../../../domain/measuring/landmarks.ts';
import type { Measurement } from '../../../../domain/measuring/quantity.ts';
import { plusMinusMeans } from '../../../../words/estimates.ts';
import { wordsFor } from '../../../../words/failures.ts';
import { FLAG_LABELS } from '../../../../words/labels.ts';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { landmarksOf, placedScaleOf } from '../../../bench/document.ts';
import { Button } from '../../../parts/Button.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import { CopyText } from '../../../parts/CopyText.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { Passes, type PassVerbs } from '../passes/Passes.tsx';
import type { OpenPicture } from '../picture/picture.ts';
import { ContradictedScale } from '../scale/Contradictions.tsx';
import { useDisagreements } from '../scale/useProposals.ts';
import { useBench, useLiveDocument, useMeasured, useWork } from '../useWork.ts';
import { AbsentList } from './AbsentList.tsx';
import { areLegHeightsOpen } from './budgetAdvice.ts';
import { Doubts } from './Doubts.tsx';
import lengthsStyle from './LengthsPanel.module.css';
import { cautionsOf, useLengthBy } from './lengthBy.ts';
import { QuantityRow } from './QuantityRow.tsx';
import { readingAsText } from './readingText.ts';
import { SideOfCoin } from './SideOfCoin.tsx';
import { SkinTogether } from './SkinTogether.tsx';
import { Unusable } from './Unusable.tsx';

const SEGMENT = /^leg-..-/;
const DISTANCE = /^free-/;

interface Props {
  picture: OpenPicture;
  headLines: readonly string[];
  verbs: PassVerbs;
}

/** Every length of this pass with its uncertainty, and the passes over this photo. */
export function LengthsPanel({ picture, headLines, verbs }: Props): ReactElement {
  const { bench } = useWork();
  const document = useLiveDocument();
  const measured = useMeasured(document);
  const { calibration, measurement } = measured;
  const disagreements = useDisagreements(picture);
  const lengthBy = useLengthBy(document, measured);
  const scale = placedScaleOf(document);
  return (
    <section className={style['panel']}>
      {calibration === null && (
        <EmptyState title="No scale yet" action={<Button onClick={() => takeUp(bench, 'scale')}>Give the photo a scale</Button>}>
          Without an object of known size the photo gives no millimeters.
        </EmptyState>
      )}
      {calibration?.ok === false && (
        <EmptyState
          title={wordsFor(calibration.failure).happened}
          action={<Button onClick={() => takeUp(bench, 'scale')}>To the scale</Button>}
        >
          {wordsFor(calibration.failure).advice}
        </EmptyState>
      )}
      <ContradictedScale disagreements={disagreements} lengthBy={lengthBy} />
      {scale?.kind === 'coin' && <SideOfCoin marks={scale} lengthBy={lengthBy} />}
      <Doubts />
      {measurement !== null && <Table measurement={measurement} headLines={[...headLines, ...cautionsOf(disagreements, lengthBy)]} />}
      <SkinTogether />
      <hr className={style['rule']} />
      <Passes verbs={verbs} />
    </section>
  );
}

function Table({ measurement, headLines }: { measurement: Measurement; headLines: readonly string[] }): ReactElement {
  const { bench } = useWork();
  const asks = useBench((state) => state.guide.asks);
  const own = useBench((state) => nameOfOwnDistance(landmarksOf(state.edited.document)));
  const [showsSegments, setShowsSegments] = useState(false);
  const [open, setOpen] = useState<string | null>(null);
  const isShown = ({ name }: { name: string }) => showsSegments || !SEGMENT.test(name);
  const quantities = measurement.quantities.filter(isShown);
  // Of an opened abdomen nobody expects a carapace or legs.
  const absent = measurement.absent
    .filter(isShown)
    .filter(({ name, reason }) => asks === 'skin' || DISTANCE.test(name) || reason !== 'not-placed');
  if (measurement.quantities.length === 0) {
    return (
      <EmptyState title="No lengths yet" action={<Button onClick={() => takeUp(bench, 'landmarks')}>Place the points</Button>}>
        A length appears as soon as both its ends are marked.
      </EmptyState>
    );
  }
  const flags = [...new Set(quantities.flatMap((quantity) => quantity.flags))];
  return (
    <>
      {asks === 'skin' && (
        <CheckField checked={showsSegments} onChange={setShowsSegments}>
          Show each segment of the legs
        </CheckField>
      )}
      <Unusable quantities={quantities} />
      {areLegHeightsOpen(quantities) && (
        <Notice>
          Most of the ± of the legs comes from how high their joints stand, which is only assumed. Choose a joint under Points and type its
          height in; one press gives it to the whole leg.
          <div className={style['answers']}>
            <Button onClick={() => takeUp(bench, 'landmarks')}>To the points</Button>
          </div>
        </Notice>
      )}
      <table className={lengthsStyle['table']}>
        <caption className="spoken-only">Lengths of this pass with expanded uncertainty</caption>
        <thead className="spoken-only">
          <tr>
            <th scope="col">Quantity</th>
            <th scope="col">Value and uncertainty</th>
          </tr>
        </thead>
        <tbody>
          {quantities.map((quantity) => (
            <QuantityRow
              key={quantity.name}
              quantity={quantity}
              own={own}
              isOpen={open === quantity.name}
              onToggle={() => setOpen(open === quantity.name ? null : quantity.name)}
              flagNumbers={quantity.flags.map((flag) => flags.indexOf(flag) + 1)}
            />
          ))}
        </tbody>
      </table>
      {flags.length > 0 && (
        <ol className={lengthsStyle['flags']}>
          {flags.map((flag) => (
            <li key={flag}>{FLAG_LABELS[flag]}</li>
          ))}
        </ol>
      )}
      <p className={style['soft']}>{plusMinusMeans(quantities)} “Why?” takes it apart into what it is made of.</p>
      <CopyText text={readingAsText(measurement, { lines: headLines, own })} />
      <AbsentList absent={absent} all={measurement.absent} own={own} />
    </>
  );
}
