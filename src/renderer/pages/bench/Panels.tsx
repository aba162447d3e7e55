import type { KeyboardEvent, ReactElement } from 'react';
import { takeUp } from '../../bench/deeds/travel.ts';
import type { BenchTask } from '../../bench/store.ts';
import { LandmarksPanel } from './landmarks/LandmarksPanel.tsx';
import { LengthsPanel } from './lengths/LengthsPanel.tsx';
import style from './Panels.module.css';
import panel from './panel.module.css';
import { BlindPass } from './passes/BlindPass.tsx';
import type { PassVerbs } from './passes/Passes.tsx';
import type { OpenPicture } from './picture/picture.ts';
import { Finding } from './scale/PointingAt.tsx';
import { ScalePanel } from './scale/ScalePanel.tsx';
import { focusTask, tabId } from './tasks.ts';
import { useBench, useWork } from './useWork.ts';

const TASKS: readonly { readonly task: BenchTask; readonly name: string }[] = [
  { task: 'scale', name: 'Known size' },
  { task: 'landmarks', name: 'Points' },
  { task: 'lengths', name: 'Lengths' },
];

interface Props {
  picture: OpenPicture;
  headLines: readonly string[];
  verbs: PassVerbs;
}

/** The three jobs as tabs; the open one decides what a click on the photo does. */
export function Panels({ picture, headLines, verbs }: Props): ReactElement {
  const { bench } = useWork();
  const task = useBench((state) => state.task);
  const walk = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    const next = TASKS.at((TASKS.findIndex((entry) => entry.task === task) + by) % TASKS.length);
    if (next === undefined) return;
    takeUp(bench, next.task);
    focusTask(next.task);
  };
  return (
    <aside className={style['panels']} aria-label="Measuring">
      <div role="tablist" aria-label="Steps" className={style['tabs']} onKeyDown={walk}>
        {TASKS.map((entry) => (
          <button
            key={entry.task}
            type="button"
            role="tab"
            id={tabId(entry.task)}
            aria-selected={entry.task === task}
            aria-controls="bench-panel"
            tabIndex={entry.task === task ? 0 : -1}
            className={style['tab']}
            onClick={() => takeUp(bench, entry.task)}
          >
            {entry.name}
          </button>
        ))}
      </div>
      <BlindPass />
      {task !== 'scale' && <StillFinding />}
      {/* The key lets each job begin at its top, wherever the one before was scrolled to. */}
      <div key={task} id="bench-panel" role="tabpanel" aria-labelledby={tabId(task)} className={style['body']}>
        {task === 'scale' && <ScalePanel picture={picture} />}
        {task === 'landmarks' && <LandmarksPanel />}
        {task === 'lengths' && <LengthsPanel picture={picture} headLines={headLines} verbs={verbs} />}
      </div>
    </aside>
  );
}

/** What was pointed at is looked for while the keeper goes on: how that stands, wherever they are. */
function StillFinding(): ReactElement | null {
  const refining = useBench((state) => state.refining);
  return refining === null ? null : (
    <div className={panel['standing']}>
      <Finding refining={refining} />
    </div>
  );
}
