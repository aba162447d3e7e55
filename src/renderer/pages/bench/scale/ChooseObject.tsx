import { type ReactElement, useState } from 'react';
import { KNOWN_RECTANGLES } from '../../../../domain/measuring/knownRectangles.ts';
import { mmFromInches } from '../../../../domain/units.ts';
import { SCALE_OBJECT_LABELS } from '../../../../words/scaleObjects.ts';
import { beginPlacingScale } from '../../../bench/deeds/scale.ts';
import type { ScaleObject, ScaleRole } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Select } from '../../../parts/Select.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { ChooseCoin } from './ChooseCoin.tsx';
import { ChooseRule } from './ChooseRule.tsx';
import { HowItLies } from './HowItLies.tsx';
import { knownRectangle, ownRectangle, ruleOf } from './objects.ts';
import { PrintOurCard } from './PrintOurCard.tsx';
import { Proposals } from './Proposals.tsx';

const KNOWN = ['id-1', 'a6', 'a5', 'a4'] as const;
const UNITS = [
  { value: 'mm', label: 'millimeters' },
  { value: 'cm', label: 'centimeters' },
  { value: 'in', label: 'inches' },
] as const;

/** The longest distance between two marks, in each unit. */
const MOST = { mm: 5000, cm: 500, in: 190 } as const;
const MM_PER_CM = 10;

/** Objects of which something has to be said first. */
const ASKED_FOR = {
  ticks: { name: 'A rule with ticks', aside: 'two clicks: every tick between them is found' },
  coin: { name: 'A coin', aside: 'one click: its rim is found' },
  'two-points': { name: SCALE_OBJECT_LABELS['two-points'], aside: 'two marks and the distance between them' },
  own: { name: SCALE_OBJECT_LABELS.own, aside: 'a tile, a box lid, a printed frame' },
} as const;

interface Props {
  /** To measure by, or to check the present scale by. */
  role: ScaleRole;
  /** Once an object is chosen its marks are placed. */
  onChosen: () => void;
  onCancel: (() => void) | null;
}

/** What in this picture has a known size? */
export function ChooseObject({ role, onChosen, onCancel }: Props): ReactElement {
  const { bench } = useWork();
  const choose = (object: ScaleObject) => {
    onChosen();
    beginPlacingScale(bench, object, role);
    focusPhoto();
  };
  const [asking, setAsking] = useState<keyof typeof ASKED_FOR | null>(null);
  return (
    <section className={style['panel']}>
      <h2 ref={bringIntoView}>{role === 'check' ? 'Which second object checks the scale?' : 'What in this picture has a known size?'}</h2>
      {role === 'check' && <p>Choose and mark it as if it gave the scale. Nothing is measured by it: you are told whether both agree.</p>}
      <Proposals role={role} />
      <p className={style['soft']}>It must lie flat beside the skin. A card is best: its four corners show how the camera was tilted.</p>
      <HowItLies />
      <div>
        {KNOWN.map((object) => (
          <button key={object} type="button" className={style['choice']} onClick={() => choose(knownRectangle(object))}>
            <span>
              {SCALE_OBJECT_LABELS[object]}
              <small className="figures">
                {KNOWN_RECTANGLES[object].widthMm.toFixed(object === 'id-1' ? 2 : 0)} ×{' '}
                {KNOWN_RECTANGLES[object].heightMm.toFixed(object === 'id-1' ? 2 : 0)} mm
              </small>
            </span>
          </button>
        ))}
        {(Object.keys(ASKED_FOR) as (keyof typeof ASKED_FOR)[]).map((kind) => (
          <div key={kind}>
            <button
              type="button"
              className={style['choice']}
              aria-expanded={asking === kind}
              onClick={() => setAsking(asking === kind ? null : kind)}
            >
              <span>
                {ASKED_FOR[kind].name}
                <small>{ASKED_FOR[kind].aside}</small>
              </span>
            </button>
            {asking === kind && (
              <div className={style['asked']} ref={bringIntoView}>
                <AskedOf kind={kind} onChosen={choose} />
              </div>
            )}
          </div>
        ))}
      </div>
      {role === 'scale' && <PrintOurCard />}
      {onCancel && <Button onClick={onCancel}>{role === 'check' ? 'Without a check' : 'Keep the present scale'}</Button>}
    </section>
  );
}

/** What has to be said of an object before it is marked. */
function AskedOf({ kind, onChosen }: { kind: keyof typeof ASKED_FOR; onChosen: (object: ScaleObject) => void }): ReactElement {
  switch (kind) {
    case 'ticks':
      return <ChooseRule onChosen={onChosen} />;
    case 'coin':
      return <ChooseCoin onChosen={onChosen} />;
    case 'two-points':
      return <KnownDistance onChosen={onChosen} />;
    case 'own':
      return <OwnSize onChosen={onChosen} />;
  }
}

function KnownDistance({ onChosen }: { onChosen: (object: ScaleObject) => void }): ReactElement {
  const [distance, setDistance] = useState<number | null>(null);
  const [unit, setUnit] = useState<'mm' | 'cm' | 'in'>('mm');
  const begin = () => {
    if (distance !== null) onChosen(ruleOf(toMm(distance, unit)));
  };
  return (
    <>
      <div className={style['pair']}>
        <NumberField label="Distance between the marks" value={distance} most={MOST[unit]} aboveZero atOnce onChange={setDistance} />
        <Select label="Unit" value={unit} options={UNITS} onChange={setUnit} />
      </div>
      <Button kind="primary" disabled={distance === null || distance > MOST[unit]} onClick={begin}>
        Mark the two ends
      </Button>
    </>
  );
}

function toMm(distance: number, unit: 'mm' | 'cm' | 'in'): number {
  if (unit === 'in') return mmFromInches(distance);
  return unit === 'cm' ? MM_PER_CM * distance : distance;
}

function OwnSize({ onChosen }: { onChosen: (object: ScaleObject) => void }): ReactElement {
  const [widthMm, setWidthMm] = useState<number | null>(null);
  const [heightMm, setHeightMm] = useState<number | null>(null);
  return (
    <>
      <div className={style['pair']}>
        <NumberField label="One side, mm" value={widthMm} most={5000} aboveZero atOnce onChange={setWidthMm} />
        <NumberField label="Other side, mm" value={heightMm} most={5000} aboveZero atOnce onChange={setHeightMm} />
      </div>
      <Button
        kind="primary"
        disabled={widthMm === null || heightMm === null}
        onClick={() => {
          if (widthMm !== null && heightMm !== null) onChosen(ownRectangle(widthMm, heightMm));
        }}
      >
        Mark the four corners
      </Button>
    </>
  );
}
