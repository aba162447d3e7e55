import type { ReactElement } from 'react';
import style from './OuterPlate.module.css';

const WALL = 'M150 20C90 16 42 48 32 108C27 150 42 190 62 216M238 216C258 190 273 150 268 108C258 48 210 16 150 20';
const OPEN_END = 'M62 216q18 6 36 0t36 0 36 0 36 0 32 0';

/** Both differ a little in the furrow and how the front lungs lie, too weakly to be read by; the arc is what counts. */
const SEXES = {
  male: {
    name: 'Male',
    furrow: 'M104 150Q150 156 196 150',
    lungTurnDegrees: 5,
    description:
      'Line drawing of the outer side of the skin of a male, front end up: between the front book lungs, just in front of the furrow, ' +
      'a dense crescent of small spigots, its arc forward, among setae that stand farther apart.',
    words: 'A dense patch or crescent of fusillae, its arc forward; it may or may not be darker.',
  },
  female: {
    name: 'Female',
    furrow: 'M100 144Q150 168 200 144',
    lungTurnDegrees: 20,
    description:
      'Line drawing of the outer side of the skin of a female, front end up: the strip between the front book lungs carries the same setae as ' +
      'everything around it, without a patch; the furrow is a little more curved.',
    words: 'The strip is haired like all around it, without a patch. That alone makes no female.',
  },
} as const;

/** Where the strip lies whose setae differ in a male. */
const inCrescent = (x: number, y: number) => Math.hypot(x - 150, y - 150) < 42 && y < 152;
const onLung = (x: number, y: number) => Math.abs(Math.abs(x - 150) - 70) < 34 && Math.abs(y - 128) < 25;
const onFurrow = (x: number, y: number) => Math.abs(y - 152) < 14 && Math.abs(x - 150) < 54;
const onWall = (x: number, y: number) => ((x - 150) / 108) ** 2 + ((y - 122) / 96) ** 2 < 1;

/** Short strokes in a brick pattern over the wall, lungs and furrow left out. */
function setae(bare: (x: number, y: number) => boolean): string {
  const rows = Array.from({ length: 12 }, (_, row) => 38 + row * 15);
  return rows
    .flatMap((y, row) => Array.from({ length: 15 }, (_, column) => ({ x: 38 + column * 16 + (row % 2) * 8, y })))
    .filter(({ x, y }) => onWall(x, y) && !onLung(x, y) && !onFurrow(x, y) && !bare(x, y))
    .map(({ x, y }) => `M${x} ${y}v6`)
    .join('');
}

/** Dots in four arcs, from left over the front to right. */
const FUSILLAE = [18, 23, 28, 33].flatMap((radius) =>
  Array.from({ length: 13 }, (_, step) => {
    const angle = Math.PI * (1.06 + (0.88 * step) / 12);
    return { x: 150 + radius * Math.cos(angle), y: 150 + radius * Math.sin(angle) };
  }),
);

/** The outer side of a skin: where fusillae stand in a male, and what a female shows there. Drawn for this app; not after any animal. */
export function OuterPlate(): ReactElement {
  return (
    <figure className={style['plate']} aria-label="The outer side of a skin, of both sexes">
      <ul className={style['sexes']}>
        {(['male', 'female'] as const).map((sex) => {
          const { name, furrow, lungTurnDegrees, description, words } = SEXES[sex];
          return (
            <li key={sex}>
              <svg viewBox="0 0 300 230" role="img" aria-label={description} className={style['drawing']}>
                <path d={WALL} />
                <path className={style['hair']} d={OPEN_END} />
                <path className={style['hair']} d={setae(sex === 'male' ? inCrescent : () => false)} />
                {[-1, 1].map((side) => (
                  <rect
                    key={side}
                    className={style['lung']}
                    x="-28"
                    y="-19"
                    width="56"
                    height="38"
                    rx="17"
                    transform={`translate(${150 + side * 70} 128) rotate(${side * lungTurnDegrees})`}
                  />
                ))}
                <path className={style['furrow']} d={furrow} />
                {sex === 'male' &&
                  FUSILLAE.map(({ x, y }) => <circle key={`${x} ${y}`} className={style['spigot']} cx={x} cy={y} r="1.9" />)}
              </svg>
              <strong>{name}</strong>
              <span>{words}</span>
            </li>
          );
        })}
      </ul>
      <figcaption className={style['note']}>
        Seen from outside, front end up: left and right are as on a picture of the underside, and swapped against the drawings from inside.
        Turn the strip over and light it from the side; small animals show next to nothing here.
      </figcaption>
    </figure>
  );
}
