import type { SizeNow } from '../domain/growth/sizeNow.ts';
import { counted } from './counts.ts';

/** "about 19.5 mm, nine chances in ten 18.2 to 21.0 mm", with no more decimals than the width of the interval lets stand. */
export function sizeNowInWords({ middleMm, low90Mm, high90Mm }: Pick<SizeNow, 'middleMm' | 'low90Mm' | 'high90Mm'>): string {
  const widthMm = high90Mm - low90Mm;
  const digits = widthMm < 0.2 ? 2 : widthMm < 10 ? 1 : 0;
  return `about ${middleMm.toFixed(digits)} mm, nine chances in ten ${low90Mm.toFixed(digits)} to ${high90Mm.toFixed(digits)} mm`;
}

/** From which skin, where that is not the one of the last molt. `skin` as it stands within a sentence: "instar 9". */
export function fromSkinInWords({ moltsSince: { fewest, most } }: Pick<SizeNow, 'moltsSince'>, skin: string): string | null {
  if (most === 1) return null;
  return `from the skin of ${skin}, ${fewest === most ? counted(most, 'molt') : `${fewest} to ${most} molts`} back`;
}

/** What these sizes are, and what they are not. `lastSkin` as it begins a sentence: "Instar 9". */
export function foretoldInWords(called: string, lastSkin: string): string {
  return `${lastSkin} is the instar that ended with the last molt on record, and its skin shows that one. ${called} has grown since: these sizes are foretold, by its own growth and that of its kin, not measured. The forecast of the next skin and Watch rest on the same.`;
}

/** Why a size is not foretold. `size` as in "carapace length". */
export function notForetoldInWords(size: string): string {
  return `not foretold: no skin whose place in the row is known shows a ${size}`;
}

/** Where the skin that a size would be foretold from is itself in doubt. */
export const DOUBTED_SKIN = 'not foretold before the question above about its last measured skin is settled';

/** What makes a span read off a skin too short. */
export const SPAN_CAUTION =
  'How the legs of a skin lay is counted in with 15 %, an assumption of ours. They curl as they dry, so where leg I and leg IV were measured along their joints and together are longer than the span, their sum is taken.';
