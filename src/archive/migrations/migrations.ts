import { records } from './0001-records.ts';
import { observations } from './0002-observations.ts';
import { printChecks } from './0003-print-checks.ts';
import { sexEvidence } from './0004-sex-evidence.ts';
import { forecasts } from './0005-forecasts.ts';
import { scaleChecks } from './0006-scale-checks.ts';
import { signedEvidence } from './0007-signed-evidence.ts';
import { passesSeen } from './0008-passes-seen.ts';
import type { Migration } from './migration.ts';

/** In order; the length of this list is the version of the catalogue. */
export const migrations: readonly Migration[] = [
  records,
  observations,
  printChecks,
  sexEvidence,
  forecasts,
  scaleChecks,
  signedEvidence,
  passesSeen,
];
