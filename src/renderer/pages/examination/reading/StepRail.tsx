import type { ReactElement } from 'react';
import { ReadingStep, type UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';
import style from './StepRail.module.css';
import { type Asked, askedIn, STEP_NAMES } from './steps.ts';

interface Props {
  reading: UnfinishedDetermination;
  /** Whether anything has been answered: before that, a grade is the one that the skin has on record. */
  begun: boolean;
  observer: string;
  step: ReadingStep;
  onGo: (step: ReadingStep) => void;
}

/** All steps of the reading in one row: where one is, what each has answers to, and what it lacks. Any can be gone to. */
export function StepRail({ reading, begun, observer, step, onGo }: Props): ReactElement {
  return (
    <nav aria-label="Steps of the reading" className={style['rail']}>
      <ol className={style['steps']}>
        {ReadingStep.options.map((one) => {
          const asked = askedIn(one, reading, observer);
          return (
            <li key={one}>
              <button type="button" className={style['step']} aria-current={one === step ? 'step' : undefined} onClick={() => onGo(one)}>
                <span className={style['name']}>{STEP_NAMES[one]}</span>
                {asked.length > 0 && (
                  <span className={style['count']}>
                    {one === 'grade' && !begun && reading.checklist.grade ? 'on record' : answeredOf(asked)}
                  </span>
                )}
                <span className={style['ticks']} aria-hidden="true">
                  {asked.map(({ label, answered }) => (
                    <span key={label} className={answered ? style['answered'] : style['open']} />
                  ))}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

function answeredOf(asked: readonly Asked[]): string {
  return `${asked.filter(({ answered }) => answered).length}/${asked.length}`;
}
