import { rectangularStandardUncertainty } from './knownRectangles.ts';

/** Of the length between two marks of a rule: those of class 1 up to 500 mm may be +-0.15 mm off (JIS B 7516:2005). */
export const RULE_STANDARD_UNCERTAINTY_MM = rectangularStandardUncertainty(0.15);
