const KEPT_AS = 'exuviary.moltNoticesTold';

/** Which notices this browser has shown; kept there, so that a page that is opened anew does not tell them again. */
export function noticesTold(storage: Storage): ReadonlySet<string> {
  const kept: unknown = JSON.parse(storage.getItem(KEPT_AS) ?? '[]');
  return new Set(Array.isArray(kept) ? kept.filter((tag) => typeof tag === 'string') : []);
}

/** Those of molts that are over are forgotten with it. */
export function keepNoticesTold(storage: Storage, tags: readonly string[]): void {
  storage.setItem(KEPT_AS, JSON.stringify(tags));
}
