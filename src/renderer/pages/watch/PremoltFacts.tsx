import type { ReactElement } from 'react';
import { STRONGLY_FROM, SUSPECTED_FROM, type Suspicion } from '../../../domain/care/suspicion.ts';
import { counted, listed } from '../../../words/counts.ts';
import { dayInWords, daysInWords } from '../../../words/dates.ts';
import { capitalized } from '../../../words/labels.ts';
import { itemInWords } from './needWords.ts';
import style from './PremoltFacts.module.css';

const LEVELS: Readonly<Record<Suspicion['level'], string>> = {
  none: 'Nothing noted points to a molt soon.',
  little: 'Too little to suspect premolt.',
  suspected: 'Premolt is suspected.',
  'strongly-suspected': 'Premolt is strongly suspected.',
};

const UNKNOWN: Readonly<Record<Suspicion['unknown'][number], string>> = {
  'last-meal': 'its last meal',
  signs: 'any sign',
  forecast: 'enough dates, its own or of its kin, for a forecast',
  habit: 'whether it is arboreal',
};

/** What premolt is suspected from, point by point, and what would tell more. */
export function PremoltFacts({ suspicion, isMatureMale }: { suspicion: Suspicion; isMatureMale: boolean }): ReactElement {
  const { level, items, points, lastMealOn, daysSinceMeal } = suspicion;
  // More dates would give a mature male no forecast.
  const unknown = suspicion.unknown.filter((one) => one !== 'forecast' || !isMatureMale);
  return (
    <details className={style['facts']}>
      <summary>
        {LEVELS[level]}{' '}
        {points > 0 &&
          `${counted(points, 'point')}; suspected from ${SUSPECTED_FROM}, strongly from ${STRONGLY_FROM}, and never from one thing alone.`}
      </summary>
      <ul className={style['items']}>
        {items.map((item) => (
          <li key={item.kind === 'sign' ? item.sign : item.kind}>
            <span>
              {capitalized(itemInWords(item))}
              {item.kind === 'sign' && `, ${dayInWords(item.seenOn)}`}
            </span>
            <span className="figures">{item.points > 0 ? `+${item.points}` : item.points}</span>
          </li>
        ))}
      </ul>
      {lastMealOn && daysSinceMeal !== null && (
        <p>
          Last meal {dayInWords(lastMealOn)}, {daysInWords(daysSinceMeal)} ago.
        </p>
      )}
      {unknown.length > 0 && <p>Not known: {listed(unknown.map((one) => UNKNOWN[one]))}.</p>}
      <p>No single sign proves premolt, and adults fast without molting too. Points are our judgment.</p>
    </details>
  );
}
