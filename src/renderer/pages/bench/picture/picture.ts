import { createStore, type StoreApi } from 'zustand/vanilla';
import { benchSourceOf, type Photo } from '../../../../domain/photo/photo.ts';
import type { Size } from '../../../bench/view.ts';
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
  const levelsOf = (bytes: () => Promise<Blob>) => levelsFrom(bytes, size, (level) => keep(level, 'levels'), stop.signal);
  const showOriginal = async () => {
    const { id, originalName } = photo;
    if (benchSourceOf(photo) === 'original') {
      const made = await levelsOf(() => askBytes('GET /api/photos/{photoId}/original', { photoId: id }, stop.signal));
      if (made.kind === 'done') return;
    }
    // Not decoded by this browser, or turned otherwise than by the archive: the archive's own upright copy.
    const made = await levelsOf(() => askBytes('GET /api/photos/{photoId}/renditions/{kind}', { photoId: id, kind: 'full' }, stop.signal));
    if (made.kind === 'wrong-size') {
      const { width, height } = made.found;
      throw new Error(`Expected ${originalName} to be ${size.width} by ${size.height} pixels but its copy is ${width} by ${height}.`);
    }
    if (made.kind === 'not-decoded') throw new Error(`Could not decode ${originalName}: ${made.reason}`);
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

/**
 * Has a worker make the levels; it starts up while the bytes are still on their way. Answers how that ended: no level was
 * made unless it is done.
 */
async function levelsFrom(
  bytes: () => Promise<Blob>,
  picture: Size,
  take: (level: PictureLevel) => void,
  signal: AbortSignal,
): Promise<Exclude<LevelNews, { kind: 'level' }>> {
  signal.throwIfAborted();
  const worker = startWorker();
  try {
    return await new Promise((resolve, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason), { once: true });
      worker.addEventListener('error', (event) => reject(new Error(event.message)));
      worker.addEventListener('message', ({ data }: MessageEvent<LevelNews>) => {
        if (data.kind === 'level') take(data.level);
        else resolve(data);
      });
      bytes().then((arrived) => worker.postMessage({ bytes: arrived, picture } satisfies LevelsWanted), reject);
    });
  } finally {
    worker.terminate();
  }
}

function closeLevel(level: PictureLevel): void {
  for (const tile of level.tiles) tile.bitmap.close();
}
