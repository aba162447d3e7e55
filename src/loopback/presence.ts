/** Notices when nobody has been here for a while. */
export interface Presence {
  /** Somebody's request began; the answer is called once when it has ended, however it ended. */
  enter(): () => void;
  stop(): void;
}

/**
 * Calls `onDeserted` once when no request has been open for `patienceMs`. Every page holds `GET /api/presence` open, so a
 * page that merely lies there counts as somebody.
 */
export function watchPresence(patienceMs: number, onDeserted: () => void): Presence {
  let open = 0;
  let waiting: NodeJS.Timeout | null = setTimeout(onDeserted, patienceMs);
  const stop = (): void => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
  };
  return {
    enter() {
      open += 1;
      stop();
      let left = false;
      return () => {
        if (left) return;
        left = true;
        open -= 1;
        if (open === 0) waiting = setTimeout(onDeserted, patienceMs);
      };
    },
    stop,
  };
}
