import type { PointsScale } from '../../measuring/calibration.ts';
import { CARD_FRAME_MM } from '../../scaleCard/layout.ts';
import { type LightImage, type LightPlanes, mirroredLight, mirroredPlanes } from '../light.ts';
import { boardPoints } from './boardPoints.ts';
import type { FoundMarker, FoundPoints, SeenMarkers } from './found.ts';
import { markerCardPoints, PLAIN_MARKER_CARD } from './markerCard.ts';

/** A printed card that was found. */
export interface PrintedCard {
  readonly object: PointsScale['object'];
  readonly found: FoundPoints;
  /** The picture shows it as in a mirror; its nominal places are mirrored too, so that lengths come out right. */
  readonly mirrored: boolean;
}

/** How wide the nominal places of a card may be: mirrored ones stay between 0 and this. */
const WIDTH_MM: { readonly [Object in PointsScale['object']]: number } = {
  'scale-card': CARD_FRAME_MM.width,
  markers: PLAIN_MARKER_CARD.sideMm,
};

/**
 * The cards with printed markers in a picture, the scale card first; at most one of each kind.
 *
 * A marker that is its own mirror image is seen both ways, so a picture counts as mirrored when more markers of cards are in
 * their places once it is turned over.
 */
export function printedCards(image: LightImage, colors: LightPlanes, { upright, mirrored }: SeenMarkers): readonly PrintedCard[] {
  const shown = cardsIn(image, colors, upright);
  if (mirrored.length <= markersOf(shown)) return shown.map((card) => ({ ...card, mirrored: false }));
  const turned = cardsIn(mirroredLight(image), mirroredPlanes(colors), mirrored);
  if (markersOf(turned) <= markersOf(shown)) return shown.map((card) => ({ ...card, mirrored: false }));
  return turned.map(({ object, found }) => ({ object, found: turnedBack(found, image.widthPx, WIDTH_MM[object]), mirrored: true }));
}

type Card = Omit<PrintedCard, 'mirrored'>;

function cardsIn(image: LightImage, colors: LightPlanes, markers: readonly FoundMarker[]): readonly Card[] {
  const board = boardPoints(image, markers);
  const plain = markerCardPoints(colors, markers, PLAIN_MARKER_CARD);
  return [
    ...(board ? [{ object: 'scale-card' as const, found: board }] : []),
    ...(plain ? [{ object: 'markers' as const, found: plain }] : []),
  ];
}

function markersOf(cards: readonly Card[]): number {
  return cards.reduce((sum, { found }) => sum + found.markers, 0);
}

function turnedBack({ markers, points, pointPx }: FoundPoints, widthPx: number, widthMm: number): FoundPoints {
  return {
    markers,
    points: points.map(({ at, xMm, yMm }) => ({ at: { xPx: widthPx - at.xPx, yPx: at.yPx }, xMm: widthMm - xMm, yMm })),
    pointPx,
  };
}
