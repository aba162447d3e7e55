/** Draws numbers spread evenly over [0, 1). The same seed gives the same numbers; the domain knows no other chance. */
export type Generator = () => number;

/** Mulberry32 (T. Ettinger, public domain): 2^32 numbers before it repeats, plenty for simulations of this size. */
export function seededGenerator(seed: number): Generator {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A standard normal deviate (Box & Muller 1958, Annals of Mathematical Statistics 29:610). */
export function normalDeviate(draw: Generator): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}
