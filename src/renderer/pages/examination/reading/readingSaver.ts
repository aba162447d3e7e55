import { Refusal } from '../../../../domain/failure.ts';
import type { ExaminationUnderWay, UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';

/** How a reading under way stands: what it says now, and whether the archive has it. */
export interface ReadingState {
  /** Null until something is answered: what a reading begins with may change before that, such as the grade of the skin. */
  readonly kept: UnfinishedDetermination | null;
  readonly saving: 'saved' | 'saving' | 'unsaved';
  /** Why the archive has not taken it. */
  readonly error: unknown;
}

export type SendReading = (reading: UnfinishedDetermination | null, version: number) => Promise<ExaminationUnderWay>;

/**
 * Keeps a reading under way in the archive as it is answered: one request at a time, and the latest answers after it. Where
 * another window has changed the same reading, it stops and lets the keeper say which one counts.
 */
export class ReadingSaver {
  readonly #send: SendReading;
  readonly #listeners = new Set<() => void>();
  #state: ReadingState;
  #version: number;
  #dirty = false;
  #running: Promise<void> | null = null;

  constructor(underWay: Pick<ExaminationUnderWay, 'reading' | 'version'>, send: SendReading) {
    this.#send = send;
    this.#version = underWay.version;
    this.#state = { kept: underWay.reading, saving: 'saved', error: null };
  }

  readonly state = (): ReadingState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Takes the reading as it is now; null gives it up. */
  keep(kept: UnfinishedDetermination | null): void {
    this.#dirty = true;
    this.#tell({ kept, saving: 'saving' });
    if (!this.#isContested()) this.#run();
  }

  /** Sends again what was not taken; over the reading of another window where that one stood in the way. */
  insist(): void {
    const { error } = this.#state;
    if (error instanceof Refusal && error.failure.code === 'changed-meanwhile') this.#version = error.failure.version;
    this.#dirty = true;
    this.#tell({ error: null, saving: 'saving' });
    this.#run();
  }

  /** What the archive holds takes the place of what stands here. */
  replace({ reading, version }: Pick<ExaminationUnderWay, 'reading' | 'version'>): void {
    this.#dirty = false;
    this.#version = version;
    this.#tell({ kept: reading, saving: 'saved', error: null });
  }

  /** When nothing is on its way any more, whether or not it arrived: the version this window knows of. */
  async settled(): Promise<number> {
    while (this.#running !== null) await this.#running;
    return this.#version;
  }

  /** Another window turned out to have changed this reading. */
  contest(refusal: Refusal): void {
    this.#tell({ error: refusal, saving: 'unsaved' });
  }

  #isContested(): boolean {
    const { error } = this.#state;
    return error instanceof Refusal && error.failure.code === 'changed-meanwhile';
  }

  #run(): void {
    this.#running ??= this.#sendAll().finally(() => {
      this.#running = null;
    });
  }

  async #sendAll(): Promise<void> {
    while (this.#dirty) {
      this.#dirty = false;
      try {
        const { version } = await this.#send(this.#state.kept, this.#version);
        this.#version = version;
        this.#tell({ error: null, saving: this.#dirty ? 'saving' : 'saved' });
      } catch (error) {
        this.#tell({ error, saving: 'unsaved' });
        return;
      }
    }
  }

  #tell(change: Partial<ReadingState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}
