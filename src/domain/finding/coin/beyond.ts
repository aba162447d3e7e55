import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import type { LightPlanes } from '../light.ts';
import { type CloseUp, closeUpOf } from './closeUp.ts';
import { misfitPx, type Scene } from './consensus.ts';
import { huesOf } from './hue.ts';
import { BY_HUE, BY_LIGHT, type ClosedOutline, closedOutlines, concentricOutlines } from './outlines.ts';
import type { Rim } from './rim.ts';
import { stepAround } from './stepAround.ts';

/** An outline about another one, of the same middle and shape. */
export interface OuterOutline {
  readonly ellipse: Ellipse;
  /**
   * `clear`: an edge nearly all around, and of one kind: it is the rim, and what lies within is engraved or another metal. `likely`: more
   * of one than is seen about true rims. `faint`: only its strength tells.
   */
  readonly edge: 'clear' | 'likely' | 'faint';
  /** How far it is an edge all around times how much and how evenly light changes there; comparable within one picture. */
  readonly strength: number;
}

/** Looked for about outlines this much larger; each look sees a sixth more and less. */
const LOOKS = [1.25, 1.6];
/** Cores and rings that are taken for a rim are half of it or more; what is nearer than a tenth is told apart by `settleRim`. Own assumption. */
const LEAST_LARGER = 1.1;
const MOST_LARGER = 1.9;
/** Rings of one coin are seen alike but for its height and its wall, within this share of the lesser radius. */
const ALIKE_SHARE = 0.11;
/** Own assumptions, held against rendered coins: about a true rim nothing is closed by half. */
const CLEARLY_CLOSED = 0.7;
const LIKELY_CLOSED = 0.55;
const LEAST_COHERENCE = 0.5;

/**
 * Outlines about one that may be a ring of a coin rather than its rim.
 *
 * @param seen outlines of the same place that were found otherwise; those about `inner` are given back as doubtful ones.
 */
export function outlinesBeyond(planes: LightPlanes, inner: Ellipse, seen: readonly Rim[]): readonly OuterOutline[] {
  const looked = LOOKS.flatMap((larger) =>
    seenAbout(planes, scaled(inner, larger), concentricOutlines)
      .filter(({ outline, view }) => isLargerCopy(inner, view.inPicture(outline.ellipse)))
      .map(outerOutline),
  );
  const known = seen.filter(({ ellipse }) => isLargerCopy(inner, ellipse));
  return [
    ...looked,
    ...known.map((rim) => ({ ellipse: rim.ellipse, edge: 'faint' as const, strength: rim.agreement * stepOf(planes, rim.ellipse) })),
  ];
}

/** Edges of this share of an outline, of light or of color, that meet by chance are rare. Own assumptions, held against rendered photos. */
const CLOSED_BY_LIGHT = 0.58;
const CLOSED_BY_HUE = 0.7;

/** Whether there is an edge within a sixth of an outline that is closed rather than a chance meeting of edges. */
export function isClosed(planes: LightPlanes, about: Ellipse): boolean {
  // Those about the same middle first: they are seen much quicker.
  return [concentricOutlines, closedOutlines].some((outlines) =>
    seenAbout(planes, about, outlines).some(
      ({ outline, by, view }) => outline.closed >= (by === view.scene ? CLOSED_BY_LIGHT : CLOSED_BY_HUE),
    ),
  );
}

interface SeenOutline {
  readonly outline: ClosedOutline;
  /** In light or in color, as it was seen. */
  readonly by: Scene;
  readonly view: CloseUp;
}

/** Closed outlines within a sixth of one, by light and by color. */
function seenAbout(planes: LightPlanes, about: Ellipse, outlines: typeof closedOutlines): readonly SeenOutline[] {
  const view = closeUpOf(planes, about);
  const hues = huesOf(view.scene.planes);
  const colored = hues && { planes: hues, frame: view.scene.frame };
  const look = (by: Scene, across: typeof BY_LIGHT | typeof BY_HUE): readonly SeenOutline[] =>
    outlines(by, view.inScene(about), across).map((outline) => ({ outline, by, view }));
  return [...look(view.scene, BY_LIGHT), ...(colored ? look(colored, BY_HUE) : [])];
}

/** How much and how evenly light changes at an outline, to be held against the strength of those about it. */
export function strengthOf(planes: LightPlanes, { ellipse, agreement }: Pick<Rim, 'ellipse' | 'agreement'>): number {
  return agreement * stepOf(planes, ellipse);
}

function stepOf(planes: LightPlanes, ellipse: Ellipse): number {
  const { scene, inScene } = closeUpOf(planes, ellipse);
  return stepIn(scene, inScene(ellipse));
}

function stepIn(scene: Scene, ellipse: Ellipse): number {
  const { coherence, contrast } = stepAround(scene, ellipse);
  return coherence * contrast;
}

function outerOutline({ outline: { ellipse, closed }, by, view }: SeenOutline): OuterOutline {
  const coherent = stepAround(by, ellipse).coherence >= LEAST_COHERENCE;
  const edge = coherent && closed >= CLEARLY_CLOSED ? 'clear' : coherent && closed >= LIKELY_CLOSED ? 'likely' : 'faint';
  return { ellipse: view.inPicture(ellipse), edge, strength: closed * stepIn(view.scene, ellipse) };
}

function scaled(ellipse: Ellipse, by: number): Ellipse {
  return { ...ellipse, semiMajorPx: by * ellipse.semiMajorPx, semiMinorPx: by * ellipse.semiMinorPx };
}

/** Greater over lesser mean radius. */
export function timesLarger(inner: Ellipse, outer: Ellipse): number {
  return Math.sqrt((outer.semiMajorPx * outer.semiMinorPx) / (inner.semiMajorPx * inner.semiMinorPx));
}

const COMPARED_POINTS = 24;

function isLargerCopy(inner: Ellipse, outer: Ellipse): boolean {
  const larger = timesLarger(inner, outer);
  if (larger < LEAST_LARGER || larger > MOST_LARGER) return false;
  const copy = scaled(inner, larger);
  const leastPx = ALIKE_SHARE * inner.semiMinorPx;
  return Array.from({ length: COMPARED_POINTS }, (_, index) => pointOn(outer, (2 * Math.PI * index) / COMPARED_POINTS)).every(
    (at) => Math.abs(misfitPx(copy, at)) < leastPx,
  );
}
