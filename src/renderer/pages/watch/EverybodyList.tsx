import type { ReactElement } from 'react';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import { dayInWords } from '../../../words/dates.ts';
import style from './EverybodyList.module.css';

interface Props {
  animals: readonly WatchedAnimal[];
  chosen: string | null;
  onChoose: (specimenId: string) => void;
}

/** Every animal kept, as one large key each: the first of two taps. */
export function EverybodyList({ animals, chosen, onChoose }: Props): ReactElement {
  return (
    <section aria-labelledby="watch-everybody">
      <h2 id="watch-everybody" className={style['heading']}>
        Everybody
      </h2>
      <ul className={style['keys']}>
        {animals.map(({ specimen, suspicion, hold }) => (
          <li key={specimen.id}>
            <button type="button" className={style['key']} aria-pressed={chosen === specimen.id} onClick={() => onChoose(specimen.id)}>
              <strong>{specimen.code}</strong> {specimen.name}
              <small>{mealInWords(suspicion.lastMealOn ?? hold?.ateOn ?? null)}</small>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function mealInWords(lastMealOn: CalendarDay | null): string {
  return lastMealOn === null ? 'no meal of this instar noted' : `ate ${dayInWords(lastMealOn)}`;
}
