import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';
import type { LastMeasuredSkin, SpecimenSummary } from '../../../api/contract/specimens.ts';
import { isOverdue } from '../../../domain/growth/forecast/expectedMolt.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import { dueInWords, watchedShortly } from '../../../words/forecast.ts';
import { instarInWords, numberedInWords, recordedInWords } from '../../../words/instars.ts';
import { STATUS_LABELS } from '../../../words/labels.ts';
import { DayText } from '../../parts/DayText.tsx';
import { EstimateText } from '../../parts/EstimateText.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import style from './CabinetList.module.css';
import { type CabinetView, type SortKey, sortedBy } from './cabinetView.ts';

const COLUMNS: readonly { keys: readonly { key: SortKey; label: string }[] }[] = [
  {
    keys: [
      { key: 'code', label: 'Code' },
      { key: 'taxon', label: 'Species' },
    ],
  },
  { keys: [{ key: 'sex', label: 'Sex' }] },
  { keys: [{ key: 'instar', label: 'Instar now' }] },
  { keys: [{ key: 'size', label: 'Carapace, last measured skin' }] },
  { keys: [{ key: 'lastMolt', label: 'Last molt' }] },
  { keys: [{ key: 'nextMolt', label: 'Next due' }] },
  { keys: [{ key: 'status', label: 'Status' }] },
];

interface Props {
  summaries: readonly SpecimenSummary[];
  view: CabinetView;
  onView: (view: CabinetView) => void;
}

/** The ledger of animals. Sizes are those of skins, so of instars that have ended; the heading says so. */
export function CabinetList({ summaries, view, onView }: Props): ReactElement {
  return (
    <div className={style['ledger']}>
      <fieldset className={style['head']}>
        <legend className="spoken-only">Sort by</legend>
        {COLUMNS.map((column) => (
          <div key={column.keys[0]?.key} className={style['column']}>
            {column.keys.map(({ key, label }) => (
              <SortButton
                key={key}
                label={label}
                active={view.sortBy === key}
                descending={view.descending}
                onSort={() => onView(sortedBy(view, key))}
              />
            ))}
          </div>
        ))}
      </fieldset>
      <ul className={style['rows']}>
        {summaries.map((summary) => (
          <CabinetRow key={summary.specimen.id} summary={summary} />
        ))}
      </ul>
    </div>
  );
}

function SortButton(props: { label: string; active: boolean; descending: boolean; onSort: () => void }): ReactElement {
  return (
    <button type="button" className={style['sort']} aria-pressed={props.active} onClick={props.onSort}>
      {props.label}
      {props.active && <Icon name={props.descending ? 'down' : 'up'} sizePx={14} />}
      {props.active && <span className="spoken-only">{props.descending ? ', falling' : ', rising'}</span>}
    </button>
  );
}

function CabinetRow({ summary }: { summary: SpecimenSummary }): ReactElement {
  const { specimen } = summary;
  return (
    <li className={style['row']}>
      <Thumb photoId={summary.coverPhotoId} alt="" className={style['photo']} />
      <div className={style['who']}>
        <Link to={`/specimens/${specimen.id}`} className={style['link']}>
          <span className={style['code']}>{specimen.code}</span>
          <Taxon name={specimen.taxon} />
        </Link>
        {(specimen.name || specimen.sample) && (
          <div className={style['name']}>
            {specimen.name}
            {specimen.sample && <span className={style['sample']}>sample</span>}
          </div>
        )}
      </div>
      <dl className={style['facts']}>
        <Fact label="Sex">
          <SexMark sign={summary.sex} />
        </Fact>
        <Fact label="Instar now">{summary.instarNow ? numberedInWords(summary.instarNow) : <Unknown words="unknown" />}</Fact>
        <Fact label="Carapace, last measured skin">
          {summary.lastMeasuredSkin ? <LastMeasured skin={summary.lastMeasuredSkin} /> : <Unknown words="not measured" />}
        </Fact>
        <Fact label="Last molt">
          <LastMolt summary={summary} />
        </Fact>
        <Fact label="Next due">{summary.nextMolt ? <Due due={summary.nextMolt} /> : <Unknown words={whyNotForetold(summary)} />}</Fact>
        <Fact label="Status">{STATUS_LABELS[specimen.status]}</Fact>
      </dl>
    </li>
  );
}

function Fact({ label, children }: { label: string; children: ReactNode }): ReactElement {
  return (
    <div className={style['fact']}>
      <dt>{label}</dt>
      <dd className="figures">{children}</dd>
    </div>
  );
}

/** The size with the instar that had it: a skin always shows one that has ended, and the last one may not be measured. */
function LastMeasured({ skin: { carapaceLengthMm, instar, recordedMolt, isOfLastMolt } }: { skin: LastMeasuredSkin }): ReactElement {
  return (
    <>
      <EstimateText estimate={carapaceLengthMm} />
      <span className={style['beneath']}>
        {instar ? instarInWords(instar) : recordedInWords(recordedMolt)}
        {!isOfLastMolt && ', not the last molt'}
      </span>
    </>
  );
}

/** One that was watched to its end counts before it is on record. */
function LastMolt({ summary: { lastMolt, moltWatched } }: { summary: SpecimenSummary }): ReactElement {
  if (moltWatched?.state === 'not-recorded') {
    return (
      <>
        <DayText day={moltWatched.on} />
        <span className={style['beneath']}>not yet on record</span>
      </>
    );
  }
  if (!lastMolt) return <Unknown words="none on record" />;
  return (
    <span className={style['span']}>
      <DayText day={lastMolt.from} to={lastMolt.to} />
    </span>
  );
}

function Due({ due }: { due: NonNullable<SpecimenSummary['nextMolt']> }): ReactElement {
  return (
    <>
      {isOverdue(due) && <span className={style['overdue']}>overdue</span>}
      <span>{dueInWords(due)}</span>
    </>
  );
}

function whyNotForetold({ specimen, matureMaleBy, maleContradicted, moltWatched }: SpecimenSummary): string {
  if (!isKept(specimen.status)) return 'no forecast';
  if (matureMaleBy) return 'mature male: none foretold';
  if (maleContradicted) return 'male or not? none foretold';
  return moltWatched ? watchedShortly(moltWatched) : 'no forecast';
}

function Unknown({ words }: { words: string }): ReactElement {
  return <span className={style['unknown']}>{words}</span>;
}
