import { fail, type Result, succeed } from '../result.ts';
import type { Acquisition } from './instarAnchors.ts';
import { inDateOrder } from './instars.ts';
import type { Molt } from './molt.ts';

type Shed = Pick<Molt, 'happenedFrom' | 'happenedTo' | 'instarShed'>;

/**
 * Whether the instar of the animal on the day it was acquired fits its molts: one surely before that day shed a lower instar;
 * the first surely after it sheds that instar or, where molts went unrecorded, a higher one, and each further one at least one
 * more. Molts that may have happened on the very day say nothing. Failure: `acquired-instar-contradicted`.
 */
export function checkAcquisition(acquisition: Acquisition, molts: readonly Shed[]): Result<null> {
  const { acquiredOn, acquiredInstar } = acquisition;
  if (acquiredOn === null || acquiredInstar === null) return succeed(null);
  const before = molts.filter((molt) => molt.happenedTo < acquiredOn);
  const after = inDateOrder(molts.filter((molt) => molt.happenedFrom > acquiredOn));
  const clash =
    before.find(({ instarShed }) => instarShed !== null && instarShed >= acquiredInstar) ??
    after.find(({ instarShed }, place) => instarShed !== null && instarShed < acquiredInstar + place);
  if (!clash || clash.instarShed === null) return succeed(null);
  return fail({
    code: 'acquired-instar-contradicted',
    acquiredInstar,
    acquiredOn,
    instarShed: clash.instarShed,
    moltDate: clash.happenedFrom,
  });
}
