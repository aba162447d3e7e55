import { type ReactElement, useId } from 'react';
import { ASSUMPTIONS } from '../../../words/assumptions.ts';
import style from './Assumptions.module.css';

/** The figures that every forecast begins with, and what they rest on. */
export function Assumptions(): ReactElement {
  const caption = useId();
  return (
    <details className={style['assumptions']}>
      <summary id={caption}>What is assumed of all tarantulas</summary>
      <div className={style['scroller']}>
        <table aria-labelledby={caption}>
          <thead>
            <tr>
              <th scope="col">Assumed</th>
              <th scope="col">Figure</th>
              <th scope="col">Rests on</th>
            </tr>
          </thead>
          <tbody>
            {ASSUMPTIONS.map(({ what, figure, source }) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td className="figures">{figure}</td>
                <td>{source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>The figures and how far they reach are our own judgment of these sources; what is on record here takes their place as it grows.</p>
    </details>
  );
}
