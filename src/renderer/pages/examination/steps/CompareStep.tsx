import type { ReactElement } from 'react';
import { Link } from 'wouter';
import { GenusPanel } from '../genera/GenusPanel.tsx';
import style from './CompareStep.module.css';
import { HeldBeside, type OtherSkin } from './HeldBeside.tsx';
import { QuestionRow } from './QuestionRow.tsx';
import type { StepProps } from './StepProps.ts';

/** The genus, the earlier skins of the animal, skins of known sex, and the animal itself. */
export function CompareStep({ earlier, ...step }: StepProps & { earlier: readonly OtherSkin[] }): ReactElement {
  const { sheet } = step;
  const references = sheet.references.map(({ exuviaId, specimen, sex, sizeClass, coverPhotoId }) => ({
    exuviaId,
    name: `${specimen.name ?? specimen.code}, ${sex}`,
    photoId: coverPhotoId,
    words: sizeClass === null ? 'established; size not said' : `established; size class ${sizeClass} (A is the smallest, D the largest)`,
  }));
  return (
    <div className={style['compare']}>
      <GenusPanel profile={sheet.genus} />
      <section aria-labelledby="earlier-skins">
        <h3 id="earlier-skins">Other skins of this animal</h3>
        <HeldBeside skins={earlier} none="No other skin of this animal is on record." shown={step.table.shown} />
      </section>
      <section aria-labelledby="reference-skins">
        <h3 id="reference-skins">Skins of this genus whose sex is established</h3>
        <HeldBeside skins={references} none="None in this archive yet." shown={step.table.shown} />
      </section>
      <QuestionRow name="comparedWithReference" {...step} />
      <section aria-labelledby="animal-itself">
        <h3 id="animal-itself">On the animal itself, not on this skin</h3>
        <p className={style['soft']}>
          Hooks, a sperm web and a look from below are recorded on{' '}
          <Link to={`/specimens/${sheet.specimen.id}`}>the page of the animal</Link>, and count here too.
        </p>
        <QuestionRow name="palpalBulbsOnAnimal" {...step} />
        <QuestionRow name="eggSacLaid" {...step} />
      </section>
    </div>
  );
}
