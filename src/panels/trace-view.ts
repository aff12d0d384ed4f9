import type { DiveEvent, Recording } from '../dive/index.ts';
import type { Units } from './settings.ts';
import type { TraceId, TraceKind } from './trace-kinds.ts';

/** A place to be, seconds and metres; an end of null lasts on. */
export interface TraceBand {
  readonly fromS: number;
  readonly toS: number | null;
  readonly topM: number;
  readonly bottomM: number;
}

/** Vertical speeds allowed, m/s, both positive, from a moment on; null: none in force. */
export interface TraceLimits {
  readonly fromS: number;
  readonly limits: { readonly upMps: number | null; readonly downMps: number | null };
}

/** What was recorded of a dive, and what it was held against. */
export interface Traced {
  readonly recording: Recording;
  readonly kinds: readonly TraceKind[];
  readonly bands: readonly TraceBand[];
  readonly limits: readonly TraceLimits[];
  readonly events: readonly DiveEvent[];
  /** That of a second diver on the same axis of time; left out where there is none. */
  readonly second?: Recording | null;
}

/** All that the panel of traces shows; a new object whenever something of it changed. */
export interface TracesView extends Traced {
  readonly chosen: readonly TraceId[];
  readonly units: Units;
  readonly theme: 'light' | 'dark';
  readonly projector: boolean;
  /** Moment that the water shows instead of the end, seconds. */
  readonly shownAtS: number | null;
}

/** What is asked of the traces. */
export type TraceAsk =
  | { readonly do: 'toggle' | 'close' }
  /** The browser made no file of it. */
  | { readonly do: 'not-saved' }
  | { readonly do: 'choose'; readonly id: TraceId }
  /** The reading line stands at a moment, or follows the dive again. */
  | { readonly do: 'read'; readonly atS: number | null }
  | { readonly do: 'save'; readonly bytes: Uint8Array; readonly name: string };
