import type { BenchTask } from '../../bench/store.ts';

export function tabId(task: BenchTask): string {
  return `bench-tab-${task}`;
}

/** For buttons that are gone once they have led to another job: the keys go on from its tab. */
export function focusTask(task: BenchTask): void {
  document.getElementById(tabId(task))?.focus();
}
