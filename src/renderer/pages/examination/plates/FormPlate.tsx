import type { ReactElement } from 'react';
import style from './FormPlate.module.css';

interface Form {
  readonly name: string;
  readonly words: string;
  /** Outlines of receptacles or organs; drawn upward from the furrow at y = 78. */
  readonly organs: readonly string[];
  readonly lip: boolean;
}

const FORMS: readonly Form[] = [
  {
    name: 'Two, separate',
    words: 'A pair of stalks with rounded ends, apart down to the furrow.',
    organs: ['M44 76C42 62 36 54 36 42a8 8 0 0 1 16 0C52 54 50 62 50 76Z', 'M76 76C78 62 84 54 84 42a8 8 0 0 0-16 0C68 54 70 62 70 76Z'],
    lip: true,
  },
  {
    name: 'Two on a joined base',
    words: 'Two ends on one broad foot.',
    organs: ['M30 76C30 58 34 42 42 38c8-3 10 10 12 20q6 4 12 0c2-10 4-23 12-20 8 4 12 20 12 38Z'],
    lip: true,
  },
  {
    name: 'One, undivided',
    words: 'A single flap or pocket, wide or narrow.',
    organs: ['M32 76C30 52 38 36 60 36s30 16 28 40Z'],
    lip: true,
  },
  {
    name: 'One, notched',
    words: 'A single flap with a dent at the top; a deep dent can look like a pair.',
    organs: ['M30 76C28 50 36 36 48 36c6 0 9 6 12 14 3-8 6-14 12-14 12 0 20 14 18 40Z'],
    lip: true,
  },
  {
    name: 'Many lobes',
    words: 'Each stalk ends in several lobes, like a small tree.',
    organs: [
      'M46 76C46 64 44 58 38 54c-8 2-10-8-3-10-4-8 6-12 8-5 4-7 12-1 7 5 7 2 5 10-1 10 1 8 1 14 2 22Z',
      'M74 76C74 64 76 58 82 54c8 2 10-8 3-10 4-8-6-12-8-5-4-7-12-1-7 5-7 2-5 10 1 10-1 8-1 14-2 22Z',
    ],
    lip: true,
  },
  {
    name: 'Male, nothing',
    words: 'A low, plain furrow, and nothing that lifts.',
    organs: [],
    lip: false,
  },
  {
    name: 'Male with accessory organs',
    words: 'Small, close-set, low bodies without a lip: not receptacles.',
    organs: ['M53 77c-3-6-3-12 1-14 4 2 4 8 3 14Z', 'M67 77c3-6 3-12-1-14-4 2-4 8-3 14Z'],
    lip: false,
  },
];

/** The forms of receptacles, and what a male shows in their place. Drawn for this app; not after any animal. */
export function FormPlate(): ReactElement {
  return (
    <figure className={style['plate']} aria-label="Forms of receptacles, drawn, and what a male shows in their place">
      <ul className={style['forms']}>
        {FORMS.map((form) => (
          <li key={form.name}>
            <svg
              viewBox="0 0 120 104"
              role="img"
              aria-label={`${form.name}: ${form.words}${form.lip ? ' Before the furrow the upper lip, behind it the lower lip.' : ' No lips.'}`}
              className={style['drawing']}
            >
              <path className={style['fold']} d="M12 98Q34 104 60 101T108 98M14 22Q40 12 60 16T106 22" />
              {form.lip && <path className={style['lip']} d="M24 78Q60 66 96 78Q60 90 24 78ZM22 83Q60 103 98 83Q60 94 22 83Z" />}
              {form.organs.map((outline) => (
                <path key={outline} className={form.lip ? style['organ'] : style['lookalike']} d={outline} />
              ))}
              <path className={style['furrow']} d="M10 78Q60 90 110 78" />
            </svg>
            <strong>{form.name}</strong>
            <span>{form.words}</span>
          </li>
        ))}
      </ul>
      <figcaption className={style['note']}>
        Seen from inside, front end up; the thick line is the furrow, the pale wedge before it the upper lip, the crescent behind it the
        lower lip; a male has neither. What a genus shows stands at Look, and with all its sources at Compare. In some it changes with age.
      </figcaption>
    </figure>
  );
}
