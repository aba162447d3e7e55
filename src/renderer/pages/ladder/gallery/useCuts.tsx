import { createContext, type ReactElement, type ReactNode, useContext, useEffect, useRef } from 'react';
import type { GalleryItem } from '../../../../api/contract/growth.ts';
import type { TaskSnapshot } from '../../../../domain/intake/task.ts';
import { useChange } from '../../../client/queries.ts';
import { useTask } from '../../../client/tasks.ts';

type CutState = 'ready' | 'waiting' | 'stopped' | 'refused';

const CutsContext = createContext<TaskSnapshot | null>(null);

/** Has the cuts prepared that are not kept yet, and tells those below it how far that is. */
export function CutsProvider({
  specimenId,
  items,
  children,
}: {
  specimenId: string;
  items: readonly GalleryItem[];
  children: ReactNode;
}): ReactElement {
  const prepare = useChange('POST /api/specimens/{specimenId}/cuts');
  const { snapshot } = useTask(prepare.data?.id ?? null);
  // A cut that cannot be made, or was stopped, stays missing: each is asked for once, and again when its marks have changed.
  const asked = useRef(new Set<string>());
  const { mutate } = prepare;
  useEffect(() => {
    const missing = items.filter(({ cutReady, calibration }) => !cutReady && calibration.marks).map(nameOf);
    if (missing.every((name) => asked.current.has(name))) return;
    for (const name of missing) asked.current.add(name);
    mutate({ path: { specimenId } });
  }, [items, mutate, specimenId]);
  return <CutsContext value={snapshot}>{children}</CutsContext>;
}

function nameOf({ photo, cutKey }: GalleryItem): string {
  return `${photo.id} ${cutKey}`;
}

/** The task that prepares, while it runs. */
export function usePreparing(): TaskSnapshot | null {
  const snapshot = useContext(CutsContext);
  return snapshot?.state === 'running' ? snapshot : null;
}

export function useCutState(item: GalleryItem): CutState {
  const snapshot = useContext(CutsContext);
  if (item.cutReady) return 'ready';
  const outcomes = (snapshot?.files ?? []).filter(({ name }) => name === item.photo.originalName).map(({ outcome }) => outcome);
  if (outcomes.some((outcome) => outcome.kind === 'added' && outcome.photoId === item.photo.id)) return 'ready';
  const ended = snapshot !== null && snapshot.state !== 'running';
  if (ended && outcomes.some(({ kind }) => kind === 'waiting')) return 'stopped';
  return ended && outcomes.length > 0 && outcomes.every(({ kind }) => kind === 'refused') ? 'refused' : 'waiting';
}
