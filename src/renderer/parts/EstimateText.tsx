import type { ReactElement } from 'react';
import type { Estimate } from '../../domain/measuring/quantity.ts';
import { type EstimateUnit, estimateInWords, unusualCoverage } from '../../words/estimates.ts';
import { useShowsInches } from '../client/preferences.ts';
import style from './EstimateText.module.css';

/**
 * A measured value with its expanded uncertainty, rounded to it, and its coverage factor where that is not 2; inches beside millimeters
 * where the keeper asked for them.
 */
export function EstimateText({ estimate, unit = 'mm' }: { estimate: Estimate; unit?: 'mm' | '1' }): ReactElement {
  const showsInches = useShowsInches();
  const coverage = unusualCoverage(estimate);
  return (
    <span>
      <OneUnit estimate={estimate} unit={unit} />
      {unit === 'mm' && showsInches && (
        <span className={style['inches']}>
          {' '}
          <OneUnit estimate={estimate} unit="in" />
        </span>
      )}
      {coverage !== null && <span className={style['coverage']}> ({coverage})</span>}
    </span>
  );
}

function OneUnit({ estimate, unit }: { estimate: Estimate; unit: EstimateUnit }): ReactElement {
  const words = estimateInWords(estimate, unit);
  return (
    <span className={`figures ${style['value']}`}>
      {words.value}
      <span className={style['uncertainty']}> ± {words.expandedUncertainty}</span>
      {unit !== '1' && <span className={style['unit']}> {unit}</span>}
    </span>
  );
}
