import type { LegPair, PlausibilityWarning } from '../domain/measuring/plausibility.ts';
import { listed } from './counts.ts';
import { capitalized, LEG_LABELS, SEGMENT_LABELS } from './labels.ts';
import { quantityName } from './quantities.ts';

const PAIR_NAMES: Readonly<Record<LegPair, string>> = { 1: 'I', 2: 'II', 3: 'III', 4: 'IV' };

/** What looks like a point with another point's name, and where to look. */
export function doubtInWords(doubt: PlausibilityWarning): string {
  switch (doubt.code) {
    case 'carapace-sides-crossed':
      return 'Left and right of the carapace lie on the wrong sides of the line from its rear to its front. Left is the animal’s own left: on a photo with the head down it is on your right. Or front and rear are exchanged, or the photo itself is mirrored, as some front cameras save it.';
    case 'legs-on-other-side':
      return `${capitalized(listed(doubt.legs.map((leg) => LEG_LABELS[leg])))} ${doubt.legs.length === 1 ? 'begins' : 'begin'} on the other side of the carapace. Left and right may be exchanged, or front and rear.`;
    case 'carapace-proportion':
      return `This carapace would be ${doubt.lengthToWidth.toFixed(2)} times as long as wide; tarantulas have about 1.0 to 1.2. One of its four points may lie wrong.`;
    case 'sides-differ': {
      const what =
        doubt.segment === null ? `Leg ${PAIR_NAMES[doubt.pair]}` : `The ${SEGMENT_LABELS[doubt.segment]} of leg ${PAIR_NAMES[doubt.pair]}`;
      return `${what} measures ${doubt.leftMm.toFixed(1)} mm left and ${doubt.rightMm.toFixed(1)} mm right. A joint may lie wrong, or a leg has grown again: then mark it as regenerated.`;
    }
    case 'leg-proportion': {
      const what =
        doubt.segment === null ? capitalized(LEG_LABELS[doubt.leg]) : `The ${SEGMENT_LABELS[doubt.segment]} of ${LEG_LABELS[doubt.leg]}`;
      return `${what} measures ${doubt.lengthMm.toFixed(1)} mm beside a carapace of ${doubt.carapaceMm.toFixed(1)} mm; no tarantula is built so. A joint may lie wrong, or have another joint’s name.`;
    }
    case 'span-too-long':
      return `${quantityName(doubt.span)}, ${doubt.spanMm.toFixed(1)} mm, is longer than both its legs and the carapace allow (${doubt.legsAndCarapaceMm.toFixed(1)} mm). A tip or a first joint may lie wrong.`;
    case 'span-too-short':
      return `${quantityName(doubt.span)}, ${doubt.spanMm.toFixed(1)} mm, is much shorter than both its legs and the carapace (${doubt.legsAndCarapaceMm.toFixed(1)} mm). A tip may lie wrong, or the skin lies folded.`;
  }
}
