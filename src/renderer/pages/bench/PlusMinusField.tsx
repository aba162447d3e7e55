import type { ReactElement, ReactNode } from 'react';
import { COVERAGE_FACTOR } from '../../../domain/measuring/quantity.ts';
import { NumberField } from './NumberField.tsx';

interface Props {
  label: string;
  hint?: ReactNode;
  /** In the unit that the label names. */
  standardUncertainty: number;
  /** Of the expanded uncertainty, as it is typed. */
  most: number;
  aboveZero?: boolean;
  figures?: number;
  /** Counts with each key, for a field that a button beside it waits for. */
  atOnce?: boolean;
  onChange: (standardUncertainty: number) => void;
}

/** How well something is known, typed as ± (expanded, k = 2) and kept as a standard uncertainty. */
export function PlusMinusField({ standardUncertainty, onChange, figures = 2, ...field }: Props): ReactElement {
  return (
    <NumberField
      {...field}
      figures={figures}
      value={COVERAGE_FACTOR * standardUncertainty}
      onChange={(expanded) => onChange(expanded / COVERAGE_FACTOR)}
    />
  );
}
