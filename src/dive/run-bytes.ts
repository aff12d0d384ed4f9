import { Gunzip, strFromU8 } from 'fflate';

/** What a run file may hold: enough for six hours of busy hands, not for a file that inflates without end. */
export const LARGEST_RUN_BYTES = 5 * 1024 * 1024;
/** Deflated bytes are inflated a piece at a time; a piece cannot grow to more than about a thousand times itself. */
const PIECE_BYTES = 4096;
/** A deflated file ends with the checksum and the length of what was deflated, four bytes each. */
const TRAILER_BYTES = 8;

/** Whether bytes begin as deflated files do. */
export function isDeflated(bytes: Uint8Array): boolean {
  return bytes.length > 2 && bytes[0] === 0x1f && bytes[1] === 0x8b;
}

/** What a run file's bytes say, deflated or not; in words what is wrong when they cannot be inflated or are too many. */
export function textOfRunBytes(bytes: Uint8Array): { readonly text: string } | { readonly wrong: string } {
  if (bytes.length > LARGEST_RUN_BYTES) return { wrong: 'a very large file' };
  if (!isDeflated(bytes)) return { text: strFromU8(bytes) };
  const inflated = inflate(bytes);
  if (typeof inflated === 'string') return { wrong: inflated };
  const trailer = new DataView(bytes.buffer, bytes.byteOffset + bytes.length - TRAILER_BYTES, TRAILER_BYTES);
  const sound = trailer.getUint32(0, true) === checksum(inflated) && trailer.getUint32(4, true) === inflated.length;
  return sound
    ? { text: strFromU8(inflated) }
    : { wrong: 'bytes that were damaged on their way: the checksum differs' };
}

/** The inflated bytes, or in words why there are none. Stops as soon as there are more than a run may have. */
function inflate(bytes: Uint8Array): Uint8Array | string {
  const pieces: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  const stream = new Gunzip((piece, last) => {
    pieces.push(piece);
    length += piece.length;
    ended ||= last;
  });
  try {
    for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
      stream.push(bytes.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= bytes.length);
      if (length > LARGEST_RUN_BYTES) return 'a file that inflates to very much';
    }
  } catch {
    return 'bytes that cannot be inflated';
  }
  if (!ended || bytes.length < 18) return 'bytes that end too early';
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** CRC-32 as deflated files carry it. @source RFC 1952 §8, polynomial recalled */
function checksum(bytes: Uint8Array): number {
  let sum = -1;
  for (const byte of bytes) sum = (TABLE[(sum ^ byte) & 0xff] ^ (sum >>> 8)) | 0;
  return ~sum >>> 0;
}

const TABLE = Int32Array.from({ length: 256 }, (_, n) => {
  let word = n;
  for (let bit = 0; bit < 8; bit++) word = word & 1 ? (word >>> 1) ^ 0xedb88320 : word >>> 1;
  return word;
});
