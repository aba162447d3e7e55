import { LEG_IDS } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import { CARAPACE_WIDTH_SHARE, DRAWING_SIZE, type DrawnPlaces, type DrawnSkin, placesOf } from './drawnSkin.ts';

const PAPER = '#ece4d4';
const LINE = '#2b221b';
const PALE = '#fbf8f1';
const GRID = '#b9c3c4';

/** Widths of the segments in carapace lengths, from femur to tarsus. */
const SEGMENT_WIDTHS = [0.17, 0.15, 0.14, 0.11, 0.09] as const;

/** The drawing of a skin from above with its scale object, as SVG. */
export function drawingOf(skin: DrawnSkin): string {
  const places = placesOf(skin);
  const unit = skin.carapaceLengthMm * places.pxPerMm;
  const { widthPx, heightPx } = DRAWING_SIZE;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}">`,
    `<rect width="100%" height="100%" fill="${PAPER}"/>`,
    scaleObject(places),
    LEG_IDS.map((leg) => legDrawing(places.legs[leg], unit, skin.ink)).join(''),
    bodyDrawing(skin, places, unit),
    '</svg>',
  ].join('\n');
}

function scaleObject({ scale, pxPerMm }: DrawnPlaces): string {
  const { xPx, yPx } = scale.at;
  const [width, height] = [scale.widthMm * pxPerMm, scale.heightMm * pxPerMm];
  const outline = `<rect x="${r(xPx)}" y="${r(yPx)}" width="${r(width)}" height="${r(height)}" fill="${PALE}" stroke="${LINE}" stroke-width="1"/>`;
  if (scale.object === 'id-1') return outline;
  const lines = Array.from({ length: scale.widthMm - 1 }, (_, index) => {
    const along = (index + 1) * pxPerMm;
    const strength = (index + 1) % 5 === 0 ? 2 : 1;
    const stroke = `stroke="${GRID}" stroke-width="${strength}"`;
    return (
      `<line x1="${r(xPx + along)}" y1="${r(yPx)}" x2="${r(xPx + along)}" y2="${r(yPx + height)}" ${stroke}/>` +
      `<line x1="${r(xPx)}" y1="${r(yPx + along)}" x2="${r(xPx + width)}" y2="${r(yPx + along)}" ${stroke}/>`
    );
  });
  return outline + lines.join('');
}

/** Each segment dark first and then lighter on top, so that it has an outline. */
function legDrawing(joints: readonly ImagePoint[], unit: number, ink: string): string {
  const segments = joints.slice(1).map((to, index) => ({ from: joints[index] ?? to, to, width: (SEGMENT_WIDTHS[index] ?? 0.1) * unit }));
  const line = ({ from, to, width }: (typeof segments)[number], color: string, less: number): string =>
    `<line x1="${r(from.xPx)}" y1="${r(from.yPx)}" x2="${r(to.xPx)}" y2="${r(to.yPx)}" stroke="${color}" stroke-width="${r(width - less)}" stroke-linecap="round"/>`;
  const knees = joints.slice(1, -1).map(({ xPx, yPx }) => `<circle cx="${r(xPx)}" cy="${r(yPx)}" r="3" fill="${PALE}"/>`);
  return [...segments.map((one) => line(one, LINE, 0)), ...segments.map((one) => line(one, ink, 4)), ...knees].join('');
}

/** Carapace, chelicerae, palps and the crumpled abdomen, drawn head up about the middle and then turned. */
function bodyDrawing({ turnDeg, ink }: DrawnSkin, { center }: DrawnPlaces, unit: number): string {
  const x = (share: number): number => r(center.xPx + share * unit);
  const y = (share: number): number => r(center.yPx + share * unit);
  const half = CARAPACE_WIDTH_SHARE / 2;
  const fill = `fill="${ink}" stroke="${LINE}" stroke-width="2"`;
  const thin = `fill="none" stroke="${LINE}" stroke-width="2" stroke-linecap="round"`;
  const carapace =
    `M ${x(0)} ${y(-0.5)} C ${x(0.24)} ${y(-0.5)} ${x(0.28)} ${y(-0.4)} ${x(0.33)} ${y(-0.25)} ` +
    `C ${x(0.4)} ${y(-0.12)} ${x(half)} ${y(-0.08)} ${x(half)} ${y(0.05)} C ${x(half)} ${y(0.3)} ${x(0.26)} ${y(0.5)} ${x(0)} ${y(0.5)} ` +
    `C ${x(-0.26)} ${y(0.5)} ${x(-half)} ${y(0.3)} ${x(-half)} ${y(0.05)} C ${x(-half)} ${y(-0.08)} ${x(-0.4)} ${y(-0.12)} ${x(-0.33)} ${y(-0.25)} ` +
    `C ${x(-0.28)} ${y(-0.4)} ${x(-0.24)} ${y(-0.5)} ${x(0)} ${y(-0.5)} Z`;
  const abdomen =
    `M ${x(-0.1)} ${y(0.48)} C ${x(-0.4)} ${y(0.6)} ${x(-0.34)} ${y(0.86)} ${x(-0.42)} ${y(1.02)} C ${x(-0.3)} ${y(1.3)} ${x(-0.12)} ${y(1.2)} ${x(0.02)} ${y(1.34)} ` +
    `C ${x(0.2)} ${y(1.24)} ${x(0.36)} ${y(1.22)} ${x(0.36)} ${y(0.98)} C ${x(0.4)} ${y(0.78)} ${x(0.3)} ${y(0.6)} ${x(0.1)} ${y(0.48)} Z`;
  const palp = (side: -1 | 1): string =>
    `<path d="M ${x(side * 0.28)} ${y(-0.36)} L ${x(side * 0.52)} ${y(-0.72)} L ${x(side * 0.5)} ${y(-1.2)} L ${x(side * 0.4)} ${y(-1.5)}" ` +
    `fill="none" stroke="${LINE}" stroke-width="${r(0.12 * unit)}" stroke-linejoin="round" stroke-linecap="round"/>`;
  const chelicera = (side: -1 | 1): string =>
    `<ellipse cx="${x(side * 0.14)}" cy="${y(-0.58)}" rx="${r(0.13 * unit)}" ry="${r(0.21 * unit)}" ${fill}/>`;
  const furrows = [40, 75, 110, 145, 215, 250, 285, 320].map((degrees) => {
    const [sine, cosine] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
    return `M ${x(0.1 * sine)} ${y(0.08 - 0.1 * cosine)} L ${x(0.32 * sine)} ${y(0.06 - 0.36 * cosine)}`;
  });
  return [
    `<g transform="rotate(${turnDeg} ${center.xPx} ${center.yPx})">`,
    `<path d="${abdomen}" ${fill} fill-opacity="0.75"/>`,
    `<path d="M ${x(-0.2)} ${y(0.7)} Q ${x(0)} ${y(0.9)} ${x(-0.1)} ${y(1.2)} M ${x(0.12)} ${y(0.62)} Q ${x(0.26)} ${y(0.9)} ${x(0.14)} ${y(1.16)}" ${thin}/>`,
    palp(-1),
    palp(1),
    chelicera(-1),
    chelicera(1),
    `<path d="${carapace}" ${fill}/>`,
    `<path d="${furrows.join(' ')}" ${thin} stroke-opacity="0.45"/>`,
    `<path d="M ${x(-0.08)} ${y(0.1)} Q ${x(0)} ${y(0.05)} ${x(0.08)} ${y(0.1)}" ${thin}/>`,
    `<ellipse cx="${x(0)}" cy="${y(-0.4)}" rx="${r(0.08 * unit)}" ry="${r(0.05 * unit)}" fill="${LINE}"/>`,
    '</g>',
  ].join('\n');
}

/** Two decimals are more than any picture shows. */
function r(value: number): number {
  return Math.round(value * 100) / 100;
}
