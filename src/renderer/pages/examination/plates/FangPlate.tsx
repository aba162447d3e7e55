import type { ReactElement } from 'react';
import style from './FangPlate.module.css';

const STAGES = [
  { name: 'White', words: 'Just molted: soft. No prey, no handling.', className: 'white' },
  { name: 'Red-brown', words: 'Hardening: still soft enough to break. Wait.', className: 'brown' },
  { name: 'Black', words: 'Hard. With the date reached as well, the wait is over.', className: 'black' },
] as const;

/** The colors of the fangs as they harden. Drawn for this app. */
export function FangPlate(): ReactElement {
  return (
    <figure className={style['plate']} aria-label="Colors of the fangs as they harden">
      <ol className={style['stages']}>
        {STAGES.map(({ name, words, className }) => (
          <li key={name}>
            <svg viewBox="0 0 120 90" role="img" aria-label={`Two fangs, ${name.toLowerCase()}`} className={style['drawing']}>
              <path
                className={style['base']}
                d="M34 10c12-6 24 0 24 16 0 10-8 16-18 14S22 16 34 10ZM86 10c-12-6-24 0-24 16 0 10 8 16 18 14S98 16 86 10Z"
              />
              <path className={style[className]} d="M34 38c0 16 4 32 18 44 2-16 2-30-2-44ZM86 38c0 16-4 32-18 44-2-16-2-30 2-44Z" />
            </svg>
            <strong>{name}</strong>
            <span>{words}</span>
          </li>
        ))}
      </ol>
      <figcaption className={style['note']}>
        The order is common practice among keepers; the days differ between animals. So the wait ends by both together: its date is reached,
        and the fangs are black.
      </figcaption>
    </figure>
  );
}
