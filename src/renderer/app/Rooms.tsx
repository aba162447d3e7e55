import { type ReactElement, useState } from 'react';
import { Link, Redirect, Route, Switch, useLocation } from 'wouter';
import { BenchPage } from '../pages/bench/BenchPage.tsx';
import { UnsentMarksLines } from '../pages/bench/UnsentMarks.tsx';
import { CabinetPage } from '../pages/cabinet/CabinetPage.tsx';
import { FIRST_VIEW } from '../pages/cabinet/cabinetView.ts';
import { ExaminationPage } from '../pages/examination/ExaminationPage.tsx';
import type { StepsLeft } from '../pages/examination/reading/useReading.ts';
import { IntakePage } from '../pages/intake/IntakePage.tsx';
import { IntakeSign } from '../pages/intake/IntakeSign.tsx';
import { LadderPage } from '../pages/ladder/LadderPage.tsx';
import { SpecimenPage } from '../pages/specimen/SpecimenPage.tsx';
import { useMoltNotices } from '../pages/watch/useMoltNotices.ts';
import { WatchPage } from '../pages/watch/WatchPage.tsx';
import { EmptyState } from '../parts/EmptyState.tsx';
import { IconButton } from '../parts/IconButton.tsx';
import { PageHead } from '../parts/PageHead.tsx';
import { ToastPlace } from '../parts/Toast.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { Mark } from './Mark.tsx';
import style from './Rooms.module.css';
import { SettingsDialog } from './SettingsDialog.tsx';
import { useArrival } from './useArrival.ts';
import { useStrayDrops } from './useStrayDrops.ts';
import { useTheme } from './useTheme.ts';

const ROOMS = [
  { to: '/cabinet', name: 'Cabinet', also: '/specimens' },
  { to: '/intake', name: 'Intake' },
  { to: '/bench', name: 'Bench' },
  { to: '/ladder', name: 'Ladder' },
  { to: '/examination', name: 'Examination' },
  { to: '/watch', name: 'Watch' },
] as const satisfies readonly { to: string; name: string; also?: string }[];

/** While the program behind the page gives no answer. */
const SILENT =
  'Exuviary does not answer, and nothing can be saved until it does. If it was ended, start it again: it opens a window, or prints an address, of its own, with all that was saved. What is not saved yet stays in this window alone: keep it open to see it, and do it again there.';

/** The frame every room stands in: the way between rooms above, the room below. */
export function Rooms({ answers }: { answers: boolean }): ReactElement {
  const [location] = useLocation();
  const [cabinetView, setCabinetView] = useState(FIRST_VIEW);
  const [steps, setSteps] = useState<StepsLeft['steps']>({});
  const left: StepsLeft = { steps, leaveAt: (exuviaId, step) => setSteps((before) => ({ ...before, [exuviaId]: step })) };
  const [settingsOpen, setSettingsOpen] = useState(false);
  const themeIsKnown = useTheme();
  // Choosing an animal in Watch is no other page: its keys take the focus.
  useArrival(inRoom(location, '/watch') ? '/watch' : location);
  useStrayDrops();
  useMoltNotices();
  const onBench = inRoom(location, '/bench');
  return (
    <div className={[style['frame'], onBench && style['dark'], !themeIsKnown && style['unseen']].filter(Boolean).join(' ')}>
      <button type="button" className={style['skip']} onClick={() => document.getElementById('main')?.focus()}>
        Skip to the page
      </button>
      <header className={style['mast']}>
        <div className={style['across']}>
          <Link to="/cabinet" className={style['name']} aria-label="Exuviary, to the Cabinet">
            <Mark />
            <span className={style['wordmark']}>Exuviary</span>
          </Link>
          <nav aria-label="Rooms">
            <ul className={style['rooms']}>
              {ROOMS.map((room) => {
                const here = inRoom(location, room.to) || ('also' in room && inRoom(location, room.also));
                return (
                  <li key={room.to}>
                    <Link to={room.to} className={style['room']} aria-current={here ? 'page' : undefined}>
                      {room.name}
                    </Link>
                  </li>
                );
              })}
            </ul>
          </nav>
          <ToastPlace />
          {!inRoom(location, '/intake') && <IntakeSign />}
          <IconButton icon="settings" label="Settings" onClick={() => setSettingsOpen(true)} />
        </div>
      </header>
      <div role="status">{!answers && <p className={style['silent']}>{SILENT}</p>}</div>
      <UnsentMarksLines />
      <main id="main" tabIndex={-1} className={onBench ? style['bench'] : style['page']}>
        <ErrorBoundary place={location}>
          <Switch>
            <Route path="/">
              <Redirect to="/cabinet" replace />
            </Route>
            <Route path="/cabinet">
              <CabinetPage view={cabinetView} onView={setCabinetView} />
            </Route>
            <Route path="/specimens/:id">{({ id }) => <SpecimenPage key={id} specimenId={id} />}</Route>
            <Route path="/intake/:specimenId?/:moltId?">
              {({ specimenId, moltId }) => <IntakePage specimenId={specimenId ?? null} moltId={moltId ?? null} />}
            </Route>
            <Route path="/bench/:photoId?">{({ photoId }) => <BenchPage photoId={photoId ?? null} />}</Route>
            <Route path="/ladder/:specimenId?">{({ specimenId }) => <LadderPage specimenId={specimenId ?? null} />}</Route>
            <Route path="/watch/:specimenId?">{({ specimenId }) => <WatchPage specimenId={specimenId ?? null} />}</Route>
            <Route path="/examination/:place?">{({ place }) => <ExaminationPage place={place ?? null} left={left} />}</Route>
            <Route>
              <PageHead title="Nothing here" />
              <EmptyState title="No such room">The address leads nowhere. Choose a room above.</EmptyState>
            </Route>
          </Switch>
        </ErrorBoundary>
      </main>
      {settingsOpen && <SettingsDialog onClose={() => setSettingsOpen(false)} />}
    </div>
  );
}

function inRoom(location: string, room: string): boolean {
  return location === room || location.startsWith(`${room}/`);
}
