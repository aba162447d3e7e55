import { z } from 'zod';
import { Failure } from '../domain/failure.ts';
import { contract, type RouteKey } from './contract/contract.ts';
import { BYTES, type Endpoint, EVENTS, NOTHING } from './contract/endpoint.ts';
import { partsOf } from './router.ts';

type Json = Record<string, unknown>;

/** The contract as an OpenAPI 3.1 description, generated from the same schemas that check the requests. */
export function openApiDescription(version: string): Json {
  const components: Json = {};
  const paths: Record<string, Json> = {};
  for (const [key, endpoint] of Object.entries(contract) as [RouteKey, Endpoint][]) {
    const { method, path } = partsOf(key);
    paths[path] = { ...paths[path], [method.toLowerCase()]: operationOf(key, endpoint, components) };
  }
  const failure = schemaOf(z.object({ failure: Failure }), components);
  return {
    openapi: '3.1.0',
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    info: {
      title: 'Exuviary',
      version,
      description: 'The archive of one keeper: specimens, molts, shed skins, photographs, measurements and determinations of sex.',
    },
    paths,
    components: {
      schemas: components,
      responses: { Failure: { description: 'What was wrong, as data', content: { 'application/json': { schema: failure } } } },
      securitySchemes: { bearer: { type: 'http', scheme: 'bearer', description: 'The token of the file named by --token-file' } },
    },
    security: [{ bearer: [] }],
  };
}

function operationOf(key: RouteKey, endpoint: Endpoint, components: Json): Json {
  const { path } = partsOf(key);
  const fromPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string', minLength: 1, maxLength: 200 },
  }));
  const ifMatch = {
    name: 'If-Match',
    in: 'header',
    required: true,
    description: 'Version the change is based on, in quotes',
    schema: { type: 'string', pattern: '^"\\d{1,15}"$' },
  };
  const parameters = [...fromPath, ...queryParametersOf(endpoint, components), ...(endpoint.versioned ? [ifMatch] : [])];
  return {
    operationId: operationIdOf(key),
    summary: endpoint.summary,
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(endpoint.body === undefined ? {} : { requestBody: { required: true, content: bodyContentOf(endpoint.body, components) } }),
    responses: { ...successOf(endpoint, components), default: { $ref: '#/components/responses/Failure' } },
  };
}

/** `GET /api/photos/{photoId}/bench` becomes `get-photos-photoId-bench`. */
function operationIdOf(key: RouteKey): string {
  const { method, path } = partsOf(key);
  return [method.toLowerCase(), ...path.replace('/api/', '').split(/\W+/)].filter((word) => word !== '').join('-');
}

function queryParametersOf(endpoint: Endpoint, components: Json): Json[] {
  return Object.entries(endpoint.query?.shape ?? {}).map(([name, schema]) => ({
    name,
    in: 'query',
    required: !z.safeParse(schema as z.ZodType, undefined).success,
    schema: schemaOf(schema as z.ZodType, components),
  }));
}

function bodyContentOf(body: z.ZodType | typeof BYTES, components: Json): Json {
  return body === BYTES ? { 'application/octet-stream': {} } : { 'application/json': { schema: schemaOf(body, components) } };
}

function successOf(endpoint: Endpoint, components: Json): Json {
  const { answer, summary: description } = endpoint;
  if (answer === NOTHING) return { 204: { description } };
  if (answer === BYTES) return { 200: { description, content: { '*/*': {} } } };
  if (answer === EVENTS) return { 200: { description, content: { 'text/event-stream': { schema: { type: 'string' } } } } };
  return { [endpoint.status ?? 200]: { description, content: { 'application/json': { schema: schemaOf(answer, components) } } } };
}

/**
 * The schema as JSON Schema 2020-12. Named schemas move into `components` and are referred to; the wrapper makes zod name
 * the outermost one too.
 */
function schemaOf(schema: z.ZodType, components: Json): unknown {
  const { $defs, properties } = z.toJSONSchema(z.object({ root: schema }), { io: 'input' });
  for (const [name, definition] of Object.entries($defs ?? {})) {
    const incoming = atComponents(definition);
    const known = components[name];
    if (known !== undefined && JSON.stringify(known) !== JSON.stringify(incoming)) {
      throw new TypeError(`Expected one schema named ${name} but found two that differ`);
    }
    components[name] = incoming;
  }
  return atComponents(properties?.['root']);
}

function atComponents(schema: unknown): unknown {
  return JSON.parse(JSON.stringify(schema).replaceAll('"#/$defs/', '"#/components/schemas/'));
}
