/** What one cut map shows. Millimetres, from the stock's lower left corner. */
export interface CutMap {
  readonly title: string;
  /** 1 for the first layout of the plan. */
  readonly number: number;
  /** How many different layouts the plan has. */
  readonly of: number;
  /** How many of this stock to cut like this. */
  readonly count: number;
  readonly stock: {
    readonly name: string;
    readonly kind: 'sheet' | 'offcut';
    readonly length: number;
    readonly width: number;
    /** How it is rolled, seen along its length; absent where it is not told. */
    readonly rolled?: 'along' | 'across';
    /** Where to find it, in words; absent where there is nothing to say. */
    readonly lies?: string;
  };
  readonly pieces: readonly {
    /** The blank's number in the order's list of strips. */
    readonly number: number;
    readonly name: string;
    readonly x: number;
    readonly y: number;
    /** Extent along x, as it lies. */
    readonly length: number;
    readonly width: number;
    readonly turned: boolean;
  }[];
  /** In the order they are made, which is how they are numbered. Stage 0 trims the edges. */
  readonly cuts: readonly {
    readonly stage: number;
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  }[];
  readonly remnants: readonly {
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
    /** True for an offcut to put on the rack, false for scrap. */
    readonly keep: boolean;
  }[];
  /** The strips that the cutting list calls by letters; none where absent. */
  readonly strips?: readonly {
    readonly letter: string;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
  }[];
  /** What every cut turns into dust beyond its line, in millimetres; 0 where absent. */
  readonly kerf?: number;
  /** What is trimmed off each edge of this stock before all else; 0 where absent. */
  readonly trim?: number;
  /** How many stages of cuts there are before the last trim; 2 where absent. */
  readonly stages?: 2 | 3 | 'free';
  /** Prints a length the way the shop writes it, with its unit. */
  readonly printLength: (millimetres: number) => string;
}
