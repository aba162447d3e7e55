import type { ReactElement } from 'react';
import type { RectangleScale, RuleTicksScale, ScaleMarks, TwoPointScale } from '../../../../domain/measuring/calibration.ts';
import { inchesFromMm, mmFromInches } from '../../../../domain/units.ts';
import { PLUS_MINUS_MEANS } from '../../../../words/scaleObjects.ts';
import { changeScale, turnRectangle } from '../../../bench/deeds/scale.ts';
import { useShowsInches } from '../../../client/preferences.ts';
import { Button } from '../../../parts/Button.tsx';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { CoinFields } from './CoinFields.tsx';
import { FaceHeightFields } from './FaceHeightFields.tsx';
import { PatternFields } from './PatternFields.tsx';

/** How large the object is, and how well that and its marks are known. Every ± here is for 95 %. */
export function ObjectSize({ marks }: { marks: ScaleMarks }): ReactElement {
  return (
    <>
      <SizeFields marks={marks} />
      <p className={style['soft']}>{PLUS_MINUS_MEANS}</p>
    </>
  );
}

function SizeFields({ marks }: { marks: ScaleMarks }): ReactElement {
  switch (marks.kind) {
    case 'two-points':
      return <DistanceFields marks={marks} />;
    case 'rectangle':
      return <SideFields marks={marks} />;
    case 'coin':
      return <CoinFields marks={marks} />;
    case 'points':
      return <PatternFields marks={marks} />;
    case 'rule-ticks':
      return <TickFields marks={marks} />;
  }
}

function DistanceFields({ marks }: { marks: TwoPointScale }): ReactElement {
  const { bench } = useWork();
  const change = (part: Partial<TwoPointScale>) => changeScale(bench, { ...marks, ...part });
  const showsInches = useShowsInches();
  return (
    <>
      <div className={style['pair']}>
        <NumberField
          label="Distance, mm"
          value={marks.distanceMm}
          most={5000}
          aboveZero
          onChange={(distanceMm) => change({ distanceMm })}
        />
        <PlusMinusField
          label="Known to ± mm"
          standardUncertainty={marks.distanceStandardUncertaintyMm}
          most={200}
          onChange={(distanceStandardUncertaintyMm) => change({ distanceStandardUncertaintyMm })}
        />
        {showsInches && (
          <NumberField
            label="Distance, in"
            value={inchesFromMm(marks.distanceMm)}
            most={190}
            aboveZero
            onChange={(inches) => change({ distanceMm: mmFromInches(inches) })}
          />
        )}
        <ReadingField marks={marks} />
      </div>
      <FaceHeightFields heightMm={marks.heightMm} standardUncertaintyMm={marks.faceHeightStandardUncertaintyMm ?? 0} onChange={change} />
    </>
  );
}

function SideFields({ marks }: { marks: RectangleScale }): ReactElement {
  const { bench } = useWork();
  const change = (part: Partial<RectangleScale>) => changeScale(bench, { ...marks, ...part });
  return (
    <>
      <p className={style['soft']}>Measured it with a caliper? Type your own figures.</p>
      <div className={style['pair']}>
        <NumberField label="Side 1 to 2, mm" value={marks.widthMm} most={5000} aboveZero onChange={(widthMm) => change({ widthMm })} />
        <PlusMinusField
          label="Known to ± mm"
          standardUncertainty={marks.widthStandardUncertaintyMm}
          most={200}
          onChange={(widthStandardUncertaintyMm) => change({ widthStandardUncertaintyMm })}
        />
        <NumberField label="Side 2 to 3, mm" value={marks.heightMm} most={5000} aboveZero onChange={(heightMm) => change({ heightMm })} />
        <PlusMinusField
          label="Known to ± mm"
          standardUncertainty={marks.heightStandardUncertaintyMm}
          most={200}
          onChange={(heightStandardUncertaintyMm) => change({ heightStandardUncertaintyMm })}
        />
        <NumberField label="Thickness, mm" value={marks.thicknessMm} most={100} onChange={(thicknessMm) => change({ thicknessMm })} />
        <ReadingField marks={marks} />
      </div>
      <Button onClick={() => turnRectangle(bench)}>Take the other side for side 1</Button>
    </>
  );
}

function TickFields({ marks }: { marks: RuleTicksScale }): ReactElement {
  const { bench } = useWork();
  const change = (part: Partial<RuleTicksScale>) => changeScale(bench, { ...marks, ...part });
  return (
    <>
      <div className={style['pair']}>
        <NumberField
          label="From tick to tick, mm"
          value={marks.graduationMm}
          most={100}
          aboveZero
          onChange={(graduationMm) => change({ graduationMm })}
        />
        <PlusMinusField
          label="Whole row, ± mm"
          standardUncertainty={marks.spanStandardUncertaintyMm}
          figures={3}
          most={200}
          onChange={(spanStandardUncertaintyMm) => change({ spanStandardUncertaintyMm })}
        />
      </div>
      <FaceHeightFields heightMm={marks.heightMm} standardUncertaintyMm={marks.faceHeightStandardUncertaintyMm ?? 0} onChange={change} />
    </>
  );
}

function ReadingField({ marks }: { marks: TwoPointScale | RectangleScale }): ReactElement {
  const { bench } = useWork();
  return (
    <PlusMinusField
      label="Marks placed to ± px"
      standardUncertainty={marks.pointingPx}
      most={200}
      aboveZero
      onChange={(pointingPx) => changeScale(bench, { ...marks, pointingPx })}
    />
  );
}
