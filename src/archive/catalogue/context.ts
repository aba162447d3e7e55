import type { Ambient } from '../../domain/ambient.ts';
import { fail, type Result } from '../../domain/result.ts';
import type { ShippedProfile } from '../../domain/sexing/genus/profile.ts';
import type { Catalogue } from './catalogue.ts';
import type { DamageLog } from './decoding.ts';

/** What every kind of record is built on. */
export interface RecordContext {
  readonly catalogue: Catalogue;
  readonly ambient: Ambient;
  readonly damage: DamageLog;
  /** Profiles of genera as shipped; with the keeper's edits they say what a sign of an animal is worth. */
  readonly genera: readonly ShippedProfile[];
}

/** The answer when an update found no row with the expected version: the record is gone, damaged, or has moved on. */
export function outdated(what: string, id: string, current: Result<{ readonly version: number }>): Result<never> {
  return current.ok ? fail({ code: 'changed-meanwhile', what, id, version: current.value.version }) : current;
}
