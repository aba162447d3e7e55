import type { ReactElement } from 'react';
import { CautionPanel } from '../../../parts/cautions/CautionPanel.tsx';
import style from './PrepareStep.module.css';

const STEPS = [
  'Label it first: whose it is, the day it was found, the day the animal was last seen without it.',
  'Soften the abdomen for some minutes in water with a drop of dish soap. Only the abdomen needs it.',
  'Spread it under water with two blunt tools, from the edges inward, never pulling across the middle between the front book lungs.',
  'Turn the inner side up and the front end away from you: the stalk of the abdomen on top, the spinnerets below.',
  'Look with light through the skin, then from the side; once wet and once dry: wet, a flap can lie so flat that it does not show.',
  'Photograph each, with all four book lungs in the picture and a scale in the same plane.',
] as const;

/** How a skin is made ready, with what to mind while hands are at it. */
export function PrepareStep(): ReactElement {
  return (
    <>
      <CautionPanel topics={['setae', 'eyes', 'asthma', 'solvents', 'animal', 'bites', 'law']} folded={['bites', 'law']} />
      <ol className={style['steps']}>
        {STEPS.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </>
  );
}
