import { createStore, type StoreApi } from 'zustand/vanilla';
import { benchSourceOf, type Photo } from '../../../../domain/photo/photo.ts';
import { askBytes } from '../../../client/ask.ts';
import type { LevelNews, LevelsWanted, PictureLevel } from './levelMessages.ts';
import { startWorker } from './startWorker.ts';

/** What can be drawn of the photo by now. */
export interface PictureState {
  /** From the smaller copy made at import; shown until the photo itself is there. */
  readonly screen: PictureLevel | null;
  /** From the photo itself. */
  readonly levels: readonly PictureLevel[];
  /** All levels have come. */
  readonly complete: boolean;
  /** Why the photo itself cannot be shown; the smaller copy stays. */
  readonly trouble: unknown;
}

export type PictureStore = StoreApi<PictureState>;

export interface OpenPicture {
  readonly store: PictureStore;
  /** Stops what is under way and frees the pixels. */
  close(): void;
}

/** Shows the smaller copy at once and then the photo itself, decoded and halved in a worker. */
export function openPicture(photo: Photo): OpenPicture {
  const store = createStore<PictureState>(() => ({ screen: null, levels: [], complete: false, trouble: null }));
  const stop = new AbortController();
  const size = { width: photo.widthPx, height: photo.heightPx };

  const keep = (level: PictureLevel, as: 'screen' | 'levels') => {
    if (stop.signal.aborted) closeLevel(level);
    else if (as === 'screen') store.setState({ screen: level });
    else store.setState((state) => ({ levels: [...state.levels, level] }));
  };
  const fail = (trouble: unknown) => {
    if (!stop.signal.aborted) store.setState({ trouble });
  };

  const showScreenCopy = async () => {
    const bytes = await askBytes('GET /api/photos/{photoId}/renditions/{kind}', { photoId: photo.id, kind: 'screen' }, stop.signal);
    const bitmap = await createImageBitmap(bytes);
    keep({ scale: bitmap.width / size.width, tiles: [{ x: 0, y: 0, bitmap }] }, 'screen');
  };
  const showOriginal = async () => {
    const source = benchSourceOf(photo);
    if (source === 'original') {
      const bytes = await askBytes('GET /api/photos/{photoId}/original', { photoId: photo.id }, stop.signal);
      if (await levelsFrom({ bytes, picture: size }, (level) => keep(level, 'levels'), stop.signal)) return;
    }
    // No browser decoder for it, or one that turns it otherwise than the archive: the archive's own upright copy.
    const bytes = await askBytes('GET /api/photos/{photoId}/renditions/{kind}', { photoId: photo.id, kind: 'full' }, stop.signal);
    const fits = await levelsFrom({ bytes, picture: size }, (level) => keep(level, 'levels'), stop.signal);
    if (!fits)
      throw new Error(`Expected the full-size copy of ${photo.originalName} to be ${size.width} by ${size.height} pixels but it is not.`);
  };

  showScreenCopy().catch(fail);
  showOriginal()
    .then(() => {
      // With the photo itself there, nobody misses the smaller copy.
      if (!stop.signal.aborted) store.setState({ complete: true, trouble: null });
    })
    .catch(fail);

  return {
    store,
    close() {
      stop.abort();
      const { screen, levels } = store.getState();
      for (const level of screen === null ? levels : [screen, ...levels]) closeLevel(level);
      store.setState({ screen: null, levels: [] });
    },
  };
}

/** Answers whether the decoded picture has the expected size; only then has it sent levels. Rejects when nothing can be decoded. */
function levelsFrom(wanted: LevelsWanted, take: (level: PictureLevel) => void, signal: AbortSignal): Promise<boolean> {
  return new Promise<boolean>((resolve, reject) => {
    if (signal.aborted) return resolve(true);
    const worker = startWorker();
    const end = (settle: () => void) => {
      worker.terminate();
      settle();
    };
    signal.addEventListener('abort', () => end(() => resolve(true)), { once: true });
    worker.addEventListener('error', (event) => end(() => reject(new Error(event.message))));
    worker.addEventListener('message', ({ data }: MessageEvent<LevelNews>) => {
      if (data.kind === 'level') take(data.level);
      else if (data.kind === 'done') end(() => resolve(true));
      else if (data.kind === 'wrong-size') end(() => resolve(false));
      else end(() => reject(new Error(data.reason)));
    });
    worker.postMessage(wanted);
  });
}

function closeLevel(level: PictureLevel): void {
  for (const tile of level.tiles) tile.bitmap.close();
}
