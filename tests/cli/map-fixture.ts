/** What `map` prints. */
export interface PrintedMap {
  readonly across: {
    readonly kind: string;
    readonly of?: string;
    readonly surfaceL?: readonly number[];
    readonly moreLeadKg?: readonly number[];
    readonly speedMpmin?: readonly number[];
  };
  readonly topM: number;
  readonly bottomM: number;
  readonly here: Readonly<Record<string, number>>;
  readonly columns: readonly (readonly PrintedBand[])[];
  readonly caution: string;
}

export interface PrintedBand {
  readonly fromM: number;
  readonly toM: number;
  readonly means: string;
  readonly way: number;
}

/** What `map --out` prints. */
export interface PrintedFile {
  readonly file: string;
  readonly across: string;
  readonly columns: number;
  readonly rows: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly topM: number;
  readonly bottomM: number;
  readonly here: Readonly<Record<string, number>>;
}
