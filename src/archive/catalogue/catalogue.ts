import type Database from 'better-sqlite3';
import { Refusal } from '../../domain/failure.ts';
import type { Result } from '../../domain/result.ts';
import { sqliteRefusal } from './sqliteRefusal.ts';

export type Row = Readonly<Record<string, unknown>>;
/** Named parameters, `:name` in the statement. */
export type Bindings = Readonly<Record<string, string | number | null>>;

/** What the records need of SQLite. Whatever goes wrong with the disk or the file leaves here as a `Refusal`. */
export interface Catalogue {
  one(sql: string, bindings?: Bindings): Row | undefined;
  all(sql: string, bindings?: Bindings): readonly Row[];
  /** Answers how many rows changed. */
  run(sql: string, bindings?: Bindings): number;
  /** Everything `work` wrote goes back when it returns a failure or throws; a refusal comes back as its failure. May be nested. */
  atomically<Value>(work: () => Result<Value>): Result<Value>;
}

/** Unwinds a transaction for a failure that was returned rather than thrown. */
class Rollback extends Error {}

/** Statements are prepared once each: there are few and all of them are constant text. */
export function catalogueOn(database: Database.Database, folder: string): Catalogue {
  const statements = new Map<string, Database.Statement<[Bindings], Row>>();

  function prepared(sql: string): Database.Statement<[Bindings], Row> {
    const known = statements.get(sql);
    if (known) return known;
    const statement = database.prepare<[Bindings], Row>(sql);
    statements.set(sql, statement);
    return statement;
  }

  function translating<Value>(work: () => Value): Value {
    try {
      return work();
    } catch (error) {
      throw sqliteRefusal(error, folder) ?? error;
    }
  }

  return {
    one: (sql, bindings = {}) => translating(() => prepared(sql).get(bindings)),
    all: (sql, bindings = {}) => translating(() => prepared(sql).all(bindings)),
    run: (sql, bindings = {}) => translating(() => prepared(sql).run(bindings).changes),
    atomically<Value>(work: () => Result<Value>): Result<Value> {
      let outcome: Result<Value> | undefined;
      const run = database.transaction(() => {
        outcome = work();
        if (!outcome.ok) throw new Rollback();
        return outcome;
      });
      try {
        return translating(() => run.immediate());
      } catch (error) {
        if (error instanceof Rollback && outcome && !outcome.ok) return outcome;
        if (error instanceof Refusal) return { ok: false, failure: error.failure };
        throw error;
      }
    },
  };
}
