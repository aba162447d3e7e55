import { area, line } from 'd3-shape';
import type { AlignedSize, Alignment } from '../../../../domain/growth/compare/aligned.ts';
import type { GroupBand } from '../../../../domain/growth/compare/group.ts';

type ToPx = (value: number) => number;

/** A stub for an instar whose beginning is not on record. */
const STUB_PX = 14;

/** Along instars from skin to skin; along days a tread for the life of each instar, with a riser to the next where nothing lies between. */
export function animalPath(sizes: readonly AlignedSize[], alignment: Alignment, x: ToPx, y: ToPx): string {
  if (alignment === 'instar') {
    const path = line<AlignedSize>()
      .x(({ at }) => x(at))
      .y(({ size }) => y(size.value));
    return path([...sizes]) ?? '';
  }
  return sizes
    .map(({ from, at, size }, index) => {
      const yPx = y(size.value);
      const before = sizes[index - 1];
      if (from === null) return `M${x(at) - STUB_PX} ${yPx}H${x(at)}`;
      const joined = before && before.at === from;
      return `${joined ? `M${x(from)} ${y(before.size.value)}V${yPx}` : `M${x(from)} ${yPx}`}H${x(at)}`;
    })
    .join('');
}

/** The band of the group: along instars from one to the next, along days constant until one of them molts, with holes where too few are known. */
export function bandPath(band: readonly GroupBand[], alignment: Alignment, x: ToPx, y: ToPx): string {
  if (alignment === 'instar') {
    const path = area<GroupBand>()
      .x(({ from }) => x(from))
      .y0(({ lowMm }) => y(lowMm))
      .y1(({ highMm }) => y(highMm));
    return path([...band]) ?? '';
  }
  return band.map(({ from, to, lowMm, highMm }) => `M${x(from)} ${y(highMm)}H${x(to)}V${y(lowMm)}H${x(from)}Z`).join('');
}
