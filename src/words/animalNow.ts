import type { SizeAfterMolt } from '../domain/growth/afterMolt.ts';

/** "about 19.5 mm, 95 % interval 18.2 to 21.0 mm", with no more decimals than the width of the interval lets stand. */
export function sizeNowInWords({ middleMm, low95Mm, high95Mm }: SizeAfterMolt): string {
  const widthMm = high95Mm - low95Mm;
  const digits = widthMm < 0.2 ? 2 : widthMm < 10 ? 1 : 0;
  return `about ${middleMm.toFixed(digits)} mm, 95 % interval ${low95Mm.toFixed(digits)} to ${high95Mm.toFixed(digits)} mm`;
}

/** What these sizes are, and what they are not. `lastSkin` as it begins a sentence: "Instar 9". */
export function foretoldInWords(called: string, lastSkin: string): string {
  return `${lastSkin} is the instar that ended with the last molt, and its skin shows that one. ${called} has grown since: these sizes are foretold from that skin, not measured.`;
}

/** Why a size is not foretold. `size` as in "carapace length". */
export function notForetoldInWords(size: string): string {
  return `not foretold: the skin of the last molt has no ${size}, or too little is known of the growth`;
}

/** What makes a span read off a skin too short. */
export const SPAN_CAUTION = 'The legs of a dry skin curl, so a span taken from it tends to come out too short.';
