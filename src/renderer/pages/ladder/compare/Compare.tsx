import { type ReactElement, useRef, useState } from 'react';
import { type AlignedAnimal, type Alignment, alignAnimal } from '../../../../domain/growth/compare/aligned.ts';
import { FEWEST_FOR_BAND, groupBand, instarsIn } from '../../../../domain/growth/compare/group.ts';
import type { Specimen } from '../../../../domain/specimen/specimen.ts';
import { listed } from '../../../../words/counts.ts';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { ChartExport } from '../chart/ChartExport.tsx';
import { Choice } from '../chart/Choice.tsx';
import { useElementWidth } from '../useElementWidth.ts';
import { ChooseAnimals } from './ChooseAnimals.tsx';
import style from './Compare.module.css';
import { ComparePlot } from './ComparePlot.tsx';
import { compareRows } from './compareRows.ts';
import { RankTable } from './RankTable.tsx';
import { SizeTable } from './SizeTable.tsx';
import { useCompared } from './useCompared.ts';

const ALIGNMENTS = [
  { value: 'instar', label: 'By instar' },
  { value: 'date', label: 'By date' },
  { value: 'since-molt', label: 'By days since a molt' },
] as const;
const WAYS = { instar: 'by instar', date: 'by date', 'since-molt': 'by days since a molt' } as const;

/** The animal beside its siblings, or any others. */
export function Compare({ specimen }: { specimen: Specimen }): ReactElement {
  const canvas = useRef<HTMLDivElement>(null);
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const [alignment, setAlignment] = useState<Alignment>('instar');
  const [since, setSince] = useState<number | null>(null);
  const [instar, setInstar] = useState<number | null>(null);
  const compared = useCompared(specimen);
  const byInstar = compared.animals.map((animal) => alignAnimal(animal, 'instar', null));
  const animals = alignment === 'instar' ? byInstar : compared.animals.map((animal) => alignAnimal(animal, alignment, since));
  const band = groupBand(animals, alignment);
  const left = animals.filter((animal) => animal.left > 0);
  const unmeasured = animals.filter(({ sizes, left: unplaced }) => sizes.length + unplaced === 0);
  const legend = compareLegend(alignment, band.length > 0, { left, unmeasured });
  const isEmpty = animals.every(({ sizes }) => sizes.length === 0);
  return (
    <div ref={ref} className={style['compare']}>
      <ChooseAnimals specimen={specimen} others={compared.others} chosen={compared.chosen} onChoose={compared.choose} />
      {compared.error && <FailureNotice error={compared.error} />}
      <div className={style['choices']}>
        <Choice legend="Lay them" value={alignment} options={ALIGNMENTS} onChange={setAlignment} />
        {alignment === 'since-molt' && (
          <Select
            label="Day 0 is the molt of"
            value={since === null ? '' : String(since)}
            options={[
              { value: '', label: 'the first skin on record' },
              ...instarsIn(byInstar).map((value) => ({ value: String(value), label: `instar ${value}` })),
            ]}
            onChange={(value) => setSince(value === '' ? null : Number(value))}
          />
        )}
      </div>
      {compared.isPending && <p role="status">Fetching the other ladders …</p>}
      {isEmpty ? (
        <p className={style['small']}>
          None of the chosen animals has a measured skin with a place on this axis. Try another one, or note instars at their molts.
        </p>
      ) : (
        <>
          <div ref={canvas} className={style['canvas']}>
            {widthPx > 0 && <ComparePlot animals={animals} ownId={specimen.id} alignment={alignment} band={band} widthPx={widthPx} />}
          </div>
          <p className={style['small']}>{legend}</p>
          <ChartExport
            canvas={canvas}
            subject={specimen}
            title={`Carapace length beside others ${WAYS[alignment]}`}
            figuresName="beside others"
            legend={legend}
            rows={() => compareRows(animals, band, { alignment, subjects: compared.subjects })}
          />
          <SizeTable animals={animals} band={band} alignment={alignment} />
        </>
      )}
      <RankTable animals={byInstar} ownId={specimen.id} instar={instar} onInstar={setInstar} />
    </div>
  );
}

function compareLegend(
  alignment: Alignment,
  hasBand: boolean,
  { left, unmeasured }: Readonly<Record<'left' | 'unmeasured', readonly AlignedAnimal[]>>,
): string {
  return [
    'The line with filled points is this animal; each other one has its own dashes and signs, and its name at the right.',
    alignment !== 'instar' &&
      'A level stretch is the life of one instar, at the size that its skin shows; a short one has no beginning on record. Points stand at the molts.',
    hasBand
      ? `The band is where one more animal of this group would lie, nine times in ten${alignment === 'instar' ? '' : `; it is left out where fewer than ${FEWEST_FOR_BAND} sizes are known`}.`
      : `A band of the group is drawn where at least ${FEWEST_FOR_BAND} animals can be set side by side.`,
    left.length > 0 &&
      `Skins without a place on this axis are left out: ${left.map((animal) => `${animal.left} of ${animal.called}`).join(', ')}.`,
    unmeasured.length > 0 && `Without a measured skin, so without a line: ${listed(unmeasured.map(({ called }) => called))}.`,
  ]
    .filter(Boolean)
    .join(' ');
}
