/**
 * Edges of color are softer than those of light: cameras and JPEG keep color at half the resolution. What bevel, wear and the
 * wall of a coin displace as a whole, `systematicPx`, is own assumption; color sees the wall where it is in the coin's color.
 */
export const HUE = { roughSigmaPx: 2.2, fineSigmaPx: 2.2, alongShare: 0.16, sweeps: [5, 4, 3], systematicPx: 0.9 } as const;
export const LIGHT = { roughSigmaPx: 1, fineSigmaPx: 1, alongShare: 0.07, sweeps: [4, 2.5, 2], systematicPx: 0.3 } as const;
/** Color decides alone where this share of the rays agrees on it. */
export const HUE_DECIDES = 0.5;

export type Senses = typeof HUE | typeof LIGHT;
