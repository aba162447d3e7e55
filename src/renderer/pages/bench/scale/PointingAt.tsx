import type { ReactElement } from 'react';
import type { RoughScale } from '../../../../domain/finding/refinement.ts';
import { wordsFor } from '../../../../words/failures.ts';
import { dropRefining, wantRefined } from '../../../bench/deeds/finding.ts';
import { beginPlacingScale, dropPlacing } from '../../../bench/deeds/scale.ts';
import { stepBack } from '../../../bench/deeds/travel.ts';
import type { Refining } from '../../../bench/refiner.ts';
import { clicksFor, type PlacingScale } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';

/** While a rule or a coin is pointed at. */
export function PointingAt({ placing }: { placing: Extract<PlacingScale, { kind: 'pointingAt' }> }): ReactElement {
  const { bench } = useWork();
  const { object, placed } = placing;
  return (
    <section className={style['panel']}>
      <h2 ref={bringIntoView}>
        {object.kind === 'rule'
          ? 'Click two ticks'
          : object.by === 'middle'
            ? 'Click the middle of the coin'
            : 'Click three points of the rim'}
      </h2>
      <p>
        {object.kind === 'rule'
          ? 'On the row of shortest ticks, far apart: every tick between them is found and counted.'
          : 'Roughly is enough: the rim is then found in the picture.'}{' '}
        With the keyboard: bring the place to the middle of the view with the arrow keys and press Enter.
      </p>
      <p className={style['soft']}>
        {placed.length} of {clicksFor(object)} placed
      </p>
      <div className={style['row']}>
        {placed.length > 0 && <Button onClick={() => stepBack(bench)}>Take the last back</Button>}
        <Button
          onClick={() => {
            dropPlacing(bench);
            focusPhoto();
          }}
        >
          Cancel
        </Button>
      </div>
    </section>
  );
}

const LOOKING_FOR = {
  rectangle: 'Looking for the edges of the card or sheet …',
  rule: 'Looking for the ticks of the rule …',
  coin: 'Looking for the rim of the coin …',
} as const satisfies Record<RoughScale['kind'], string>;

/** While it is looked for in the picture, and what to do when it was not found. What was there before is still there. */
export function Finding({ refining }: { refining: Refining }): ReactElement {
  const { bench } = useWork();
  const { rough } = refining;
  if (refining.kind === 'wanted') {
    return (
      <div className={style['row']} role="status">
        <p>{LOOKING_FOR[rough.kind]}</p>
        <Button kind="quiet" onClick={() => dropRefining(bench)}>
          Stop
        </Button>
      </div>
    );
  }
  const { happened, advice } = wordsFor(refining.failure);
  const pointAgain = () => {
    const { as } = refining;
    if (rough.kind === 'rule') {
      const { ends: _, ...rule } = rough;
      beginPlacingScale(bench, rule, as);
    }
    if (rough.kind === 'coin') {
      beginPlacingScale(bench, { kind: 'coin', disk: rough.disk, by: 'rim' }, as);
    }
    focusPhoto();
  };
  return (
    <Notice tone="refusal" title={happened}>
      {advice}
      <div className={style['answers']}>
        {rough.kind === 'rectangle' ? (
          <Button onClick={() => wantRefined(bench, rough, refining.as)}>Try once more</Button>
        ) : (
          <Button onClick={pointAgain}>{rough.kind === 'coin' ? 'Click three points of its rim' : 'Click again'}</Button>
        )}
        <Button kind="quiet" onClick={() => dropRefining(bench)}>
          Leave it
        </Button>
      </div>
    </Notice>
  );
}
