import type { WrittenPage } from './placed.ts';
import type { Faces } from './typesetting.ts';

const INK = '#1e1a16';

/** A written page as an SVG to lay over its skins, `dotsPerMm` pixels each mm. Letters are drawn, so no font of the machine is asked. */
export function svgPage({ widthMm, heightMm, texts, lines }: WrittenPage, faces: Faces, dotsPerMm: number): string {
  const letters = texts.map(({ text, face, sizeMm, leftMm, baselineMm }) => {
    const scale = sizeMm / faces[face].unitsPerEm;
    const outlines = faces[face].outlinesOf(text).filter(({ path }) => path !== '');
    const drawn = outlines.map(({ path, start }) => `<path transform="translate(${start} 0)" d="${path}"/>`).join('');
    return `<g transform="translate(${leftMm} ${baselineMm}) scale(${scale} ${-scale})">${drawn}</g>`;
  });
  const rules = lines.map(
    ({ fromMm, toMm, thicknessMm }) =>
      `<path d="M${fromMm.join(' ')}L${toMm.join(' ')}" fill="none" stroke="${INK}" stroke-width="${thicknessMm}"/>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.round(widthMm * dotsPerMm)}" height="${Math.round(heightMm * dotsPerMm)}" viewBox="0 0 ${widthMm} ${heightMm}" fill="${INK}">`,
    ...letters,
    ...rules,
    '</svg>',
  ].join('');
}
