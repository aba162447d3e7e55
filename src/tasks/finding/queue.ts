import { fail, type Result } from '../../domain/result.ts';

/** One thing after another. Whoever waits for a person's drag goes before what merely looks round. */
export interface FindingQueue {
  /** Fails with `finding-stopped` when its turn comes and the asker has gone, or when the queue was closed. */
  add<Value>(urgency: 'now' | 'whenever', signal: AbortSignal, work: () => Promise<Result<Value>>): Promise<Result<Value>>;
  /** What waits is stopped; ends when nothing is in hand. */
  close(): Promise<void>;
}

export function openFindingQueue(): FindingQueue {
  const urgent: (() => Promise<void>)[] = [];
  const patient: (() => Promise<void>)[] = [];
  let closed = false;
  let running: Promise<void> | null = null;

  async function runAll(): Promise<void> {
    for (let next = urgent.shift() ?? patient.shift(); next; next = urgent.shift() ?? patient.shift()) await next();
    running = null;
  }

  return {
    add: (urgency, signal, work) =>
      new Promise((resolve, reject) => {
        const turn = async (): Promise<void> => {
          if (closed || signal.aborted) return resolve(fail({ code: 'finding-stopped' }));
          try {
            resolve(await work());
          } catch (error) {
            reject(error);
          }
        };
        (urgency === 'now' ? urgent : patient).push(turn);
        running ??= runAll();
      }),
    async close() {
      closed = true;
      await running;
    },
  };
}
