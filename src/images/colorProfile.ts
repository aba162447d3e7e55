const START_OF_IMAGE_BYTES = 2;
const IDENTIFIER = Buffer.from('ICC_PROFILE\0', 'latin1');
/** A segment's length field counts itself and must fit 16 bits; the identifier and two counters go off (ICC.1:2022, B.4). */
const LARGEST_PIECE_BYTES = 65_535 - 2 - IDENTIFIER.byteLength - 2;

/**
 * Says in a JPEG which color space its numbers are in, changing none of them: the segments of ICC.1:2022, annex B.4.
 */
export function withColorProfile(jpeg: Buffer, profile: Buffer): Buffer {
  const pieces = Math.ceil(profile.byteLength / LARGEST_PIECE_BYTES);
  const segments = Array.from({ length: pieces }, (_, index) => {
    const piece = profile.subarray(index * LARGEST_PIECE_BYTES, (index + 1) * LARGEST_PIECE_BYTES);
    const head = Buffer.from([0xff, 0xe2, 0, 0]);
    head.writeUInt16BE(2 + IDENTIFIER.byteLength + 2 + piece.byteLength, 2);
    return Buffer.concat([head, IDENTIFIER, Buffer.from([index + 1, pieces]), piece]);
  });
  return Buffer.concat([jpeg.subarray(0, START_OF_IMAGE_BYTES), ...segments, jpeg.subarray(START_OF_IMAGE_BYTES)]);
}
