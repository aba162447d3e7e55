import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { GrowthRecord } from '../../src/domain/growth/belief/growthRecord.ts';
import { readCabinet } from '../../src/domain/growth/forecast/cabinetForecast.ts';
import { coverageOf } from '../../src/domain/growth/forecast/coverage.ts';
import { simulateCabinet, USUAL_TRUTH } from '../../src/domain/growth/simulation/simulatedCabinet.ts';
import { forecastFor } from '../support/forecastFor.ts';
import { scoresOf } from '../support/simulatedForecasts.ts';
import { atMost, between, type Figure, median, reported } from './figure.ts';

const TODAY = '2026-11-25';
/** Of one cabinet of 2,000 animals alone the share within 90 % is known to no better than 0.7 percentage points. */
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];
const TURNS = 5;
/** Lives long enough that 1,000 animals left 15,000 molts. */
const LARGE = { ...USUAL_TRUTH, animals: 1000, oldestDays: 4600, interval: { ...USUAL_TRUTH.interval, level: Math.log(75) } };
const LEAST_MOLTS = 15_000;

/** How well forecasts hold in eight cabinets of 2,000 simulated animals, and what forecasting 1,000 costs beside reading their rows. */
export async function forecasts(): Promise<Figure[]> {
  const { due, size } = coverageOf(SEEDS.flatMap((seed) => scoresOf(simulateCabinet(USUAL_TRUTH, TODAY, seed), TODAY)));
  return [
    between('forecast-coverage-50-pct', (100 * due.within50) / due.scored, '%', 47, 53),
    between('forecast-coverage-90-pct', (100 * due.within90) / due.scored, '%', 88, 92),
    between('forecast-size-coverage-50-pct', (100 * size.within50) / size.scored, '%', 47, 53),
    between('forecast-size-coverage-90-pct', (100 * size.within90) / size.scored, '%', 88, 92),
    ...(await fits()),
  ];
}

async function fits(): Promise<Figure[]> {
  const records = simulateCabinet(LARGE, TODAY, 2).map(({ record }) => record);
  const molts = records.reduce((sum, record) => sum + record.molts.length, 0);
  if (molts < LEAST_MOLTS) throw new Error(`Expected ${LEAST_MOLTS} molts but received ${molts}`);
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  const database = new Database(join(folder, 'molts.db'));
  try {
    writeMolts(database, records);
    const read = database.prepare('SELECT * FROM molt ORDER BY specimen_id, happened_from');
    const readMs: number[] = [];
    const fitMs: number[] = [];
    for (let turn = 0; turn < TURNS; turn += 1) {
      readMs.push(timed(() => read.all().length));
      fitMs.push(
        timed(() => {
          const cabinet = readCabinet(records, TODAY);
          return records.filter(({ specimenId }) => forecastFor(cabinet, specimenId) !== null).length;
        }),
      );
    }
    return [
      reported('fits-1000-animals-vs-read-ratio', median(fitMs) / median(readMs), '1'),
      atMost('fits-1000-animals-ms', median(fitMs), 'ms', 2000),
    ];
  } finally {
    database.close();
    await rm(folder, { recursive: true, force: true });
  }
}

function writeMolts(database: Database.Database, records: readonly GrowthRecord[]): void {
  database.exec(`CREATE TABLE molt (id TEXT PRIMARY KEY, specimen_id TEXT NOT NULL, happened_from TEXT NOT NULL,
    happened_to TEXT NOT NULL, instar_shed INTEGER, length_mm REAL, uncertainty_mm REAL) STRICT;
    CREATE INDEX molt_by_specimen ON molt (specimen_id, happened_from)`);
  const insert = database.prepare('INSERT INTO molt VALUES (?, ?, ?, ?, ?, ?, ?)');
  database.transaction(() => {
    for (const { specimenId, molts, sizes } of records) {
      const sizeOf = new Map(sizes.map((size) => [size.moltId, size]));
      for (const { id, happenedFrom, happenedTo, instarShed } of molts) {
        const size = sizeOf.get(id);
        insert.run(id, specimenId, happenedFrom, happenedTo, instarShed, size?.lengthMm ?? null, size?.uncertaintyMm ?? null);
      }
    }
  })();
}

function timed(work: () => number): number {
  const start = performance.now();
  if (work() === 0) throw new Error('Expected something to be done');
  return performance.now() - start;
}
