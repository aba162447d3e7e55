import { Validator } from '@seriousme/openapi-schema-validator';
import { describe, expect, it } from 'vitest';
import { contract, type RouteKey } from '../../src/api/contract/contract.ts';
import { openApiDescription } from '../../src/api/openapi.ts';
import { partsOf } from '../../src/api/router.ts';

interface Operation {
  readonly operationId: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly required: boolean }[];
  readonly requestBody?: { readonly content: Record<string, unknown> };
  readonly responses: Record<string, unknown>;
}
type Paths = Record<string, Record<string, Operation>>;

const description = openApiDescription('1.2.3');
const paths = description['paths'] as Paths;

function operationOf(key: RouteKey): Operation {
  const { method, path } = partsOf(key);
  const operation = paths[path]?.[method.toLowerCase()];
  if (!operation) throw new Error(`Expected the description to hold ${key}`);
  return operation;
}

describe('the description of the api', () => {
  it('is valid by the published schema of OpenAPI 3.1 (spec.openapis.org)', async () => {
    const result = await new Validator().validate(structuredClone(description));
    expect(result.errors).toBeUndefined();
    expect(result.valid).toBe(true);
  });
  it('refers to nothing that is not there', async () => {
    const validator = new Validator();
    await validator.validate(structuredClone(description));
    expect(JSON.stringify(validator.resolveRefs())).not.toContain('"$ref":"#/$defs');
    const schemas = Object.keys((description['components'] as { schemas: object }).schemas);
    const referred = [...JSON.stringify(description).matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => name);
    expect(referred.length).toBeGreaterThan(50);
    expect([...new Set(referred)].filter((name) => name === undefined || !schemas.includes(name))).toEqual([]);
  });
  it('holds every route of the contract and nothing else', () => {
    const described = Object.entries(paths).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(described.toSorted()).toEqual(Object.keys(contract).toSorted());
  });
  it('gives every operation a name of its own', () => {
    const names = (Object.keys(contract) as RouteKey[]).map((key) => operationOf(key).operationId);
    expect(new Set(names).size).toBe(names.length);
  });
  it('says which version a change needs, what the path and the query name, and how a failure looks', () => {
    const change = operationOf('PUT /api/molts/{moltId}');
    expect(change.parameters).toMatchObject([
      { name: 'moltId', in: 'path', required: true },
      { name: 'If-Match', in: 'header', required: true },
    ]);
    expect(change.responses).toHaveProperty('default');
    expect(operationOf('GET /api/photos').parameters).toMatchObject([{ name: 'unassigned', in: 'query', required: false }]);
    expect(operationOf('GET /api/removals/preview').parameters).toMatchObject([
      { name: 'kind', required: true },
      { name: 'id', required: true },
    ]);
  });
  it('tells answers of bytes, of events and of nothing apart', () => {
    expect(operationOf('PUT /api/intakes/{intakeId}/files/{index}').requestBody?.content).toHaveProperty(['application/octet-stream']);
    expect(operationOf('PUT /api/intakes/{intakeId}/files/{index}').responses).toHaveProperty('204');
    expect(operationOf('GET /api/tasks/{taskId}/events').responses).toHaveProperty(['200', 'content', 'text/event-stream']);
    expect(operationOf('POST /api/imports').responses).toHaveProperty('202');
    expect(operationOf('POST /api/specimens').responses).toHaveProperty('201');
  });
});
