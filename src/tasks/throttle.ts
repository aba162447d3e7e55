export interface Throttle {
  /** Calls at once if the last call lies far enough back, else once when it does. */
  request(): void;
  /** Forgets a call that is still to come. */
  cancel(): void;
}

/** @param elapsedMs a clock that never goes back, in milliseconds. */
export function createThrottle(everyMs: number, elapsedMs: () => number, call: () => void): Throttle {
  let calledMs = Number.NEGATIVE_INFINITY;
  let waiting: NodeJS.Timeout | null = null;
  const callNow = (): void => {
    waiting = null;
    calledMs = elapsedMs();
    call();
  };
  return {
    request() {
      if (waiting !== null) return;
      const dueInMs = calledMs + everyMs - elapsedMs();
      if (dueInMs <= 0) callNow();
      else waiting = setTimeout(callNow, dueInMs);
    },
    cancel() {
      if (waiting !== null) clearTimeout(waiting);
      waiting = null;
    },
  };
}
