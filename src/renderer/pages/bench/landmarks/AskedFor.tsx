import type { ReactElement } from 'react';
import { askFor } from '../../../bench/deeds/points.ts';
import type { Asks } from '../../../bench/steps.ts';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';

const CHOICES: readonly { readonly asks: Asks; readonly label: string }[] = [
  { asks: 'skin', label: 'Carapace, legs and span' },
  { asks: 'abdomen', label: 'Distances on the opened abdomen' },
];

/** What the photo is measured for; left out where it can only be one thing. */
export function AskedFor(): ReactElement | null {
  const { bench, sheet } = useWork();
  const asks = useBench((state) => state.guide.asks);
  const { view, subject } = sheet.photo;
  if (subject.kind === 'animal' || view === 'dorsal') return null;
  return (
    <fieldset>
      <legend className={style['legend']}>What is measured here</legend>
      {CHOICES.map((choice) => (
        <label key={choice.asks} className={style['choiceLine']}>
          <input type="radio" name="asked-for" checked={asks === choice.asks} onChange={() => askFor(bench, choice.asks)} />
          {choice.label}
        </label>
      ))}
    </fieldset>
  );
}
