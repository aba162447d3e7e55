import { z } from 'zod';

const JsonValue = z.json();
type JsonValue = z.infer<typeof JsonValue>;
type JsonObject = Readonly<Record<string, JsonValue>>;

/** Those keywords of JSON Schema 2020-12 that set a bound, and whether a greater one is the stricter. */
const BOUNDS = {
  minimum: 1,
  exclusiveMinimum: 1,
  minLength: 1,
  minItems: 1,
  maximum: -1,
  exclusiveMaximum: -1,
  maxLength: -1,
  maxItems: -1,
};

/**
 * What `before` lets pass and `after` may not, each as "path: reason"; empty where everything written under the one can be read under
 * the other. Both are JSON Schemas 2020-12 as zod writes them, whole (their `$defs` inside). It errs towards telling: two schemas
 * it can't compare, such as patterns that differ, count as narrower. Refinements in code don't show in a JSON Schema.
 */
export function narrowingsBetween(before: JsonValue, after: JsonValue): readonly string[] {
  return compare(resolved(before, before), resolved(after, after), '');

  function compare(was: JsonObject, is: JsonObject, path: string): readonly string[] {
    const alternativesBefore = alternatives(was, before);
    if (alternativesBefore) return alternativesBefore.flatMap((each) => compare(each, is, path));
    const alternativesNow = alternatives(is, after);
    if (alternativesNow) return fewest(alternativesNow.map((each) => compare(was, each, path)));
    if (Array.isArray(was['enum']))
      return was['enum'].flatMap((value) => (allows(is, value) ? [] : [`${path}: no longer ${JSON.stringify(value)}`]));
    if ('const' in was) return allows(is, was['const']) ? [] : [`${path}: no longer ${JSON.stringify(was['const'])}`];
    if ('const' in is || 'enum' in is) return [`${path}: only certain values now`];
    if (is['type'] !== undefined && is['type'] !== was['type'] && !(was['type'] === 'integer' && is['type'] === 'number')) {
      return [`${path}: was ${String(was['type'])}, is ${String(is['type'])}`];
    }
    return [...bounds(was, is, path), ...members(was, is, path), ...items(was, is, path)];
  }

  function members(was: JsonObject, is: JsonObject, path: string): readonly string[] {
    if (was['type'] !== 'object') return [];
    const had = objectAt(was, 'properties');
    const has = objectAt(is, 'properties');
    const required = arrayAt(was, 'required');
    const demanded = arrayAt(is, 'required').filter((name) => !required.includes(name));
    const kept = Object.entries(had).flatMap(([name, schema]) => {
      const now = has[name] ?? is['additionalProperties'];
      if (now === false) return [`${path}.${name}: no longer allowed`];
      return now === undefined || now === true ? [] : compare(resolved(schema, before), resolved(now, after), `${path}.${name}`);
    });
    const free = was['additionalProperties'];
    const freeNow = is['additionalProperties'];
    const others = isObject(free) && isObject(freeNow) ? compare(resolved(free, before), resolved(freeNow, after), `${path}.*`) : [];
    return [...demanded.map((name) => `${path}.${String(name)}: demanded now`), ...kept, ...others];
  }

  function items(was: JsonObject, is: JsonObject, path: string): readonly string[] {
    if (was['type'] !== 'array') return [];
    const fixed = arrayAt(was, 'prefixItems');
    const fixedNow = arrayAt(is, 'prefixItems');
    if (fixed.length !== fixedNow.length) return [`${path}: had ${fixed.length} fixed places, has ${fixedNow.length}`];
    const places = fixed.flatMap((schema, place) =>
      compare(resolved(schema, before), resolved(fixedNow[place], after), `${path}[${place}]`),
    );
    if (!isObject(was['items']) || !isObject(is['items'])) return places;
    return [...places, ...compare(resolved(was['items'], before), resolved(is['items'], after), `${path}[]`)];
  }
}

function bounds(was: JsonObject, is: JsonObject, path: string): readonly string[] {
  const stricter = Object.entries(BOUNDS).flatMap(([keyword, sign]) => {
    const now = is[keyword];
    if (now === undefined) return [];
    const then = was[keyword];
    return then !== undefined && (Number(now) - Number(then)) * sign <= 0
      ? []
      : [`${path}: ${keyword} ${String(now)}, was ${String(then)}`];
  });
  const others = ['pattern', 'format', 'multipleOf'].flatMap((keyword) =>
    is[keyword] === undefined || is[keyword] === was[keyword] ? [] : [`${path}: another ${keyword}`],
  );
  return [...stricter, ...others];
}

function allows(schema: JsonObject, value: JsonValue): boolean {
  if (Array.isArray(schema['enum'])) return schema['enum'].includes(value);
  if ('const' in schema) return schema['const'] === value;
  const type = schema['type'];
  if (value === null) return type === undefined || type === 'null';
  return type === undefined || type === typeof value || ((type === 'integer' || type === 'number') && typeof value === 'number');
}

function alternatives(schema: JsonObject, whole: JsonValue): readonly JsonObject[] | null {
  const types = schema['type'];
  if (Array.isArray(types)) return types.map((type) => ({ ...schema, type }));
  const found = schema['anyOf'] ?? schema['oneOf'];
  return Array.isArray(found) ? found.map((each) => resolved(each, whole)) : null;
}

function resolved(schema: JsonValue | undefined, whole: JsonValue): JsonObject {
  if (!isObject(schema)) throw new TypeError(`Expected a schema but found ${JSON.stringify(schema)}`);
  const reference = schema['$ref'];
  if (reference === undefined) return schema;
  const name = /^#\/\$defs\/(.+)$/.exec(String(reference))?.[1];
  if (name === undefined || !isObject(whole)) throw new TypeError(`Expected a reference into $defs but found ${String(reference)}`);
  return resolved(objectAt(whole, '$defs')[name], whole);
}

function fewest(each: readonly (readonly string[])[]): readonly string[] {
  return each.reduce((best, next) => (next.length < best.length ? next : best), each[0] ?? []);
}

function objectAt(schema: JsonObject, name: string): JsonObject {
  const value = schema[name];
  return isObject(value) ? value : {};
}

function arrayAt(schema: JsonObject, name: string): readonly JsonValue[] {
  const value = schema[name];
  return Array.isArray(value) ? value : [];
}

function isObject(value: JsonValue | undefined): value is JsonObject & { [key: string]: JsonValue } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
