/** One field: tag, and text or numbers. Numbers are written as LONG, a nested list as a directory of its own. */
type Field = readonly [tag: number, value: string | number | readonly Field[]];

const ASCII = 2;
const LONG = 4;
const PIXELS = 64;
const PIXELS_AT = 8;

/** A little-endian TIFF of 8 by 8 gray pixels with further fields (TIFF 6.0, sections 2 and 4). */
export function smallTiff(further: readonly Field[]): Buffer {
  const fields: readonly Field[] = [
    [256, 8],
    [257, 8],
    [258, 8],
    [259, 1],
    [262, 1],
    [273, PIXELS_AT],
    [277, 1],
    [278, 8],
    [279, PIXELS],
    ...further,
  ];
  const head = Buffer.from([0x49, 0x49, 42, 0, 0, 0, 0, 0]);
  head.writeUInt32LE(PIXELS_AT + PIXELS, 4);
  return Buffer.concat([head, Buffer.alloc(PIXELS, 0x80), directory(fields, PIXELS_AT + PIXELS)]);
}

function directory(fields: readonly Field[], at: number): Buffer {
  const sorted = fields.toSorted(([one], [other]) => one - other);
  const table = Buffer.alloc(2 + 12 * sorted.length + 4);
  table.writeUInt16LE(sorted.length, 0);
  const tail: Buffer[] = [];
  let end = at + table.byteLength;
  for (const [index, [tag, value]] of sorted.entries()) {
    const entry = 2 + 12 * index;
    const outside = typeof value === 'number' ? null : typeof value === 'string' ? Buffer.from(`${value}\0`) : directory(value, end);
    table.writeUInt16LE(tag, entry);
    table.writeUInt16LE(typeof value === 'string' ? ASCII : LONG, entry + 2);
    table.writeUInt32LE(typeof value === 'string' ? value.length + 1 : 1, entry + 4);
    table.writeUInt32LE(typeof value === 'number' ? value : end, entry + 8);
    if (outside) {
      tail.push(outside);
      end += outside.byteLength;
    }
  }
  return Buffer.concat([table, ...tail]);
}
