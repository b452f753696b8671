/**
 * Which diameter and pitch pairs the standards list. Data only; reading is in threads.ts.
 *
 * Metric: ISO 261 (general plan), up to 68 mm. The coarse pitches M3..M39 and the sixteen fine pairs of
 * ISO 898-1 were checked against a published table; the other rows are from memory.
 * Unified: ASME B1.1. UNC and UNF rows #4..1-1/2 were checked against a published table; the other rows,
 * UNEF and 8UN are from memory.
 */

/** Nominal diameter and pitches in millimetres, as the trade writes them. */
export interface MetricSize {
  readonly diameter: number;
  /** Absent where ISO 261 gives the size no coarse pitch (M15, M25 ...). */
  readonly coarse?: number;
  readonly fine: readonly number[];
}

export type UnifiedSeries = 'UNC' | 'UNF' | 'UNEF' | '8UN' | 'UNS';

/** One inch thread: size as written (`1/2`, `#10`, `1-1/8`), diameter in inches, threads per inch. */
export interface UnifiedSize {
  readonly size: string;
  readonly diameter: number;
  readonly threadsPerInch: number;
  readonly series: UnifiedSeries;
}

/** ISO 261. Beyond its last row this table says nothing. */
export const METRIC_SIZES: readonly MetricSize[] = [
  { diameter: 1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.2, coarse: 0.25, fine: [0.2] },
  { diameter: 1.4, coarse: 0.3, fine: [0.2] },
  { diameter: 1.6, coarse: 0.35, fine: [0.2] },
  { diameter: 1.8, coarse: 0.35, fine: [0.2] },
  { diameter: 2, coarse: 0.4, fine: [0.25] },
  { diameter: 2.2, coarse: 0.45, fine: [0.25] },
  { diameter: 2.5, coarse: 0.45, fine: [0.35] },
  { diameter: 3, coarse: 0.5, fine: [0.35] },
  { diameter: 3.5, coarse: 0.6, fine: [0.35] },
  { diameter: 4, coarse: 0.7, fine: [0.5] },
  { diameter: 4.5, coarse: 0.75, fine: [0.5] },
  { diameter: 5, coarse: 0.8, fine: [0.5] },
  { diameter: 5.5, fine: [0.5] },
  { diameter: 6, coarse: 1, fine: [0.75] },
  { diameter: 7, coarse: 1, fine: [0.75] },
  { diameter: 8, coarse: 1.25, fine: [1, 0.75] },
  { diameter: 9, coarse: 1.25, fine: [1, 0.75] },
  { diameter: 10, coarse: 1.5, fine: [1.25, 1, 0.75] },
  { diameter: 11, coarse: 1.5, fine: [1, 0.75] },
  { diameter: 12, coarse: 1.75, fine: [1.5, 1.25, 1] },
  { diameter: 14, coarse: 2, fine: [1.5, 1.25, 1] },
  { diameter: 15, fine: [1.5, 1] },
  { diameter: 16, coarse: 2, fine: [1.5, 1] },
  { diameter: 17, fine: [1.5, 1] },
  { diameter: 18, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 20, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 22, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 24, coarse: 3, fine: [2, 1.5, 1] },
  { diameter: 25, fine: [2, 1.5, 1] },
  { diameter: 26, fine: [1.5] },
  { diameter: 27, coarse: 3, fine: [2, 1.5, 1] },
  { diameter: 28, fine: [2, 1.5, 1] },
  { diameter: 30, coarse: 3.5, fine: [3, 2, 1.5, 1] },
  { diameter: 32, fine: [2, 1.5] },
  { diameter: 33, coarse: 3.5, fine: [3, 2, 1.5] },
  { diameter: 35, fine: [1.5] },
  { diameter: 36, coarse: 4, fine: [3, 2, 1.5] },
  { diameter: 38, fine: [1.5] },
  { diameter: 39, coarse: 4, fine: [3, 2, 1.5] },
  { diameter: 40, fine: [3, 2, 1.5] },
  { diameter: 42, coarse: 4.5, fine: [4, 3, 2, 1.5] },
  { diameter: 45, coarse: 4.5, fine: [4, 3, 2, 1.5] },
  { diameter: 48, coarse: 5, fine: [4, 3, 2, 1.5] },
  { diameter: 50, fine: [3, 2, 1.5] },
  { diameter: 52, coarse: 5, fine: [4, 3, 2, 1.5] },
  { diameter: 55, fine: [4, 3, 2, 1.5] },
  { diameter: 56, coarse: 5.5, fine: [4, 3, 2, 1.5] },
  { diameter: 58, fine: [4, 3, 2, 1.5] },
  { diameter: 60, coarse: 5.5, fine: [4, 3, 2, 1.5] },
  { diameter: 62, fine: [4, 3, 2, 1.5] },
  { diameter: 64, coarse: 6, fine: [4, 3, 2, 1.5] },
  { diameter: 65, fine: [4, 3, 2, 1.5] },
  { diameter: 68, coarse: 6, fine: [4, 3, 2, 1.5] },
];

/** ASME B1.1: numbered sizes grow by 0.013 in from 0.060 in. */
export function numberedDiameterInches(number: number): number {
  return Math.round((0.06 + 0.013 * number) * 1000) / 1000;
}

const NUMBERED: readonly (readonly [UnifiedSeries, Readonly<Record<number, number>>])[] = [
  ['UNC', { 1: 64, 2: 56, 3: 48, 4: 40, 5: 40, 6: 32, 8: 32, 10: 24, 12: 24 }],
  ['UNF', { 0: 80, 1: 72, 2: 64, 3: 56, 4: 48, 5: 44, 6: 40, 8: 36, 10: 32, 12: 28 }],
  ['UNEF', { 12: 32 }],
];

const INCH: readonly (readonly [UnifiedSeries, string])[] = [
  [
    'UNC',
    '1/4:20 5/16:18 3/8:16 7/16:14 1/2:13 9/16:12 5/8:11 3/4:10 7/8:9 1:8 1-1/8:7 1-1/4:7 1-3/8:6 1-1/2:6 ' +
      '1-3/4:5 2:4.5 2-1/4:4.5 2-1/2:4 2-3/4:4 3:4 3-1/4:4 3-1/2:4 3-3/4:4 4:4',
  ],
  [
    'UNF',
    '1/4:28 5/16:24 3/8:24 7/16:20 1/2:20 9/16:18 5/8:18 3/4:16 7/8:14 1:12 1-1/8:12 1-1/4:12 1-3/8:12 ' +
      '1-1/2:12',
  ],
  [
    'UNEF',
    '1/4:32 5/16:32 3/8:32 7/16:28 1/2:28 9/16:24 5/8:24 11/16:24 3/4:20 13/16:20 7/8:20 15/16:20 1:20 ' +
      '1-1/16:18 1-1/8:18 1-3/16:18 1-1/4:18 1-5/16:18 1-3/8:18 1-7/16:18 1-1/2:18 1-9/16:18 1-5/8:18 ' +
      '1-11/16:18',
  ],
  // The large bolting series of flange practice; 1-8 is already UNC.
  [
    '8UN',
    '1-1/8:8 1-1/4:8 1-3/8:8 1-1/2:8 1-5/8:8 1-3/4:8 1-7/8:8 2:8 2-1/4:8 2-1/2:8 2-3/4:8 3:8 3-1/4:8 3-1/2:8 ' +
      '3-3/4:8 4:8',
  ],
  // The former 1-14 NF: special today, still named by FAA AC 43.13-1B table 7-1.
  ['UNS', '1:14'],
];

/** ASME B1.1, all listed pairs of this program, coarse first. */
export const UNIFIED_SIZES: readonly UnifiedSize[] = [
  ...NUMBERED.flatMap(([series, rows]) =>
    Object.entries(rows).map(([number, threadsPerInch]) => ({
      size: `#${number}`,
      diameter: numberedDiameterInches(Number(number)),
      threadsPerInch,
      series,
    })),
  ),
  ...INCH.flatMap(([series, rows]) =>
    rows.split(' ').map((row) => {
      const [size = '', threads = ''] = row.split(':');
      return {
        size,
        diameter: inchesOf(size),
        threadsPerInch: Number(threads),
        series,
      };
    }),
  ),
];

/** `1-1/8`, `1/2`, `2` as a number of inches; NaN for anything else. */
export function inchesOf(size: string): number {
  const match = /^(?:(\d+)(?:[- ]|$))?(?:(\d+)\/(\d+))?$/.exec(size);
  if (!match || size === '') return Number.NaN;
  const whole = match[1] === undefined ? 0 : Number(match[1]);
  if (match[2] === undefined) return whole;
  return whole + Number(match[2]) / Number(match[3]);
}
