import { stateNumbers, type DiveState } from './state.ts';

/**
 * Hash of all bits of a state as 16 hexadecimal digits: two 32-bit FNV-1a sums, the second seeded apart, over the IEEE 754
 * bytes in stored order. Equal bits give equal hashes in every engine; −0 counts as 0.
 * @source FNV-1a constants: Fowler, Noll, Vo, recalled
 */
export function hashOf(state: DiveState): string {
  const numbers = stateNumbers(state).map((value) => value + 0);
  const view = new DataView(new ArrayBuffer(8));
  let first = 0x811c9dc5;
  let second = 0x9e3779b9;
  for (const value of numbers) {
    view.setFloat64(0, value);
    for (let i = 0; i < 8; i++) {
      const byte = view.getUint8(i);
      first = Math.imul(first ^ byte, 0x01000193);
      second = Math.imul(second ^ byte, 0x01000193);
    }
  }
  return hex(first) + hex(second);
}

function hex(word: number): string {
  return (word >>> 0).toString(16).padStart(8, '0');
}
