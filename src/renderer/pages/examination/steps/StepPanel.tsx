import { type ReactElement, type ReactNode, useEffect, useRef } from 'react';
import { ReadingStep } from '../../../../domain/sexing/determination.ts';
import { Button } from '../../../parts/Button.tsx';
import { STEP_NAMES, stepAfter } from '../reading/steps.ts';
import style from './StepPanel.module.css';

const WHAT: Readonly<Record<ReadingStep, string>> = {
  match: 'Whose skin is it? It shows the instar that has ended; the animal that left it is already larger.',
  grade: 'How well can the strip be read?',
  prepare: 'Make the skin ready, and mind your hands and eyes.',
  orient: 'Find the right place, and note how it is looked at.',
  look: '“Readable and absent” is evidence. If the place could not be read, or nobody looked, say that instead: it weighs nothing, either way.',
  compare: 'Hold it against all that is known of the genus, the animal and skins of known sex.',
  conclude: 'What carries it, what would change it, and what you make of it.',
  sign: 'What is still open, and who answers for it.',
};

interface Props {
  step: ReadingStep;
  onGo: (step: ReadingStep) => void;
  children: ReactNode;
}

/** One step of the reading, and the ways to the one before and the one after. */
export function StepPanel({ step, onGo, children }: Props): ReactElement {
  const heading = useRef<HTMLHeadingElement>(null);
  const before = useRef(step);
  // Whoever goes to another step stands at its head, not at the foot of the last one.
  useEffect(() => {
    if (before.current === step) return;
    before.current = step;
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'nearest' });
  }, [step]);
  const last = stepAfter(step, -1);
  const next = stepAfter(step, 1);
  const place = ReadingStep.options.indexOf(step) + 1;
  return (
    <section aria-labelledby="reading-step" className={style['panel']}>
      <header>
        <p className={style['place']}>
          Step {place} of {ReadingStep.options.length}
        </p>
        <h2 id="reading-step" ref={heading} tabIndex={-1} className={style['title']}>
          {STEP_NAMES[step]}
        </h2>
        <p className={style['what']}>{WHAT[step]}</p>
      </header>
      <div>{children}</div>
      <nav aria-label="Step by step" className={style['ways']}>
        {last && <Button onClick={() => onGo(last)}>Back: {STEP_NAMES[last]}</Button>}
        {next && (
          <Button kind={next === 'sign' ? 'plain' : 'primary'} className={style['next']} onClick={() => onGo(next)}>
            Next: {STEP_NAMES[next]}
          </Button>
        )}
      </nav>
    </section>
  );
}
