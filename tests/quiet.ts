import { afterEach, beforeEach, expect, vi } from 'vitest';

// A test that makes the program print has found something nobody asked for. One that expects it puts its own spy in place.
const kinds = ['debug', 'info', 'log', 'warn', 'error'] as const;
let printed: string[] = [];

beforeEach(() => {
  printed = [];
  for (const kind of kinds) {
    vi.spyOn(console, kind).mockImplementation((...parts: unknown[]) => {
      printed.push(`${kind}: ${parts.map(String).join(' ')}`);
    });
  }
});

afterEach(() => {
  vi.restoreAllMocks();
  expect(printed, 'a test printed to the console').toEqual([]);
});
