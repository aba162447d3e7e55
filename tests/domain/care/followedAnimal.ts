import { CAUTIOUS_FEEDING_TABLE, type FeedingTable } from '../../../src/domain/care/feedingTable.ts';
import { type AnimalRecords, follow, type KnownGrowth } from '../../../src/domain/care/followed.ts';
import { CARAPACE } from '../../../src/domain/growth/belief/foretoldSize.ts';
import type { ExpectedMolt } from '../../../src/domain/growth/forecast/expectedMolt.ts';
import type { GroundOfSize, LengthBehind } from '../../../src/domain/growth/sizeNow.ts';
import { beliefOn } from '../../support/believedGrowth.ts';

const NOW = '2026-06-15T12:00:00.000Z';
export const TODAY = '2026-06-15';
const once = { fewest: 1, most: 1 };
const UNSEXED = { sex: 'unsexed', level: null, conflict: false } as const;
export const MALE = { sex: 'male', level: 'probable', conflict: false } as const;
export const FEMALE = { sex: 'female', level: 'probable', conflict: false } as const;

export const expected = (stage: ExpectedMolt['stage'], assumed = false): ExpectedMolt => {
  return { from: '2026-06-16', likely: '2026-06-20', to: '2026-07-01', stage, told: true, assumed };
};

export const behind = (lengthMm: number): LengthBehind => ({
  moltId: 'm1',
  lengthMm,
  uncertaintyMm: lengthMm / 100,
  instar: 6,
  moltsSince: once,
});
export const onSkins = (part: Partial<GroundOfSize>): GroundOfSize => {
  return { growth: beliefOn([]).growth, carapace: null, span: null, spanPower: CARAPACE, ...part };
};
export const growth = (part: Partial<GroundOfSize> | null) => (): KnownGrowth => ({ onSkins: part && onSkins(part), liveSpanMm: null });

/** With nothing known of it but what is said, as it stands on `TODAY`. */
export function animal(id: string, part: Partial<AnimalRecords> = {}, table: FeedingTable = CAUTIOUS_FEEDING_TABLE) {
  const records: AnimalRecords = {
    specimen: { id, habit: null },
    observations: [],
    molts: [],
    skins: [],
    growth: growth(null),
    sex: UNSEXED,
    determinations: [],
    liveSigns: [],
    forecast: null,
    ...part,
  };
  return follow(records, { now: NOW, today: TODAY, table });
}
