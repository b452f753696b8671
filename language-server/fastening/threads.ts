/**
 * Thread designations and what follows from them: diameters, pitch, stress area.
 * Screw threads with a 60 degree profile only (ISO metric M, Unified inch). Pipe, trapezoidal and other
 * threads are answered with a problem. Lengths in metres, areas in square metres.
 *
 * Sources: basic profile ISO 68-1 / ASME B1.1 (the same proportions), designations ISO 965-1 and ASME B1.1,
 * pitches ISO 261 and ASME B1.1, stress area ISO 898-1 (metric) and ASME B1.1 (Unified).
 */

import type { FasteningProblem } from './problem.ts';
import { problem } from './problem.ts';
import type { UnifiedSize } from './thread-tables.ts';
import { METRIC_SIZES, numberedDiameterInches, UNIFIED_SIZES } from './thread-tables.ts';

export type ThreadSystem = 'metric' | 'inch';

/** `special` is listed by name but belongs to no regular series; `unknown` is a pair no table here lists. */
export type ThreadSeries = 'coarse' | 'fine' | 'extra-fine' | 'constant-pitch' | 'special' | 'unknown';

/** Whether the standard lists this pair; `beyond-table` where our table ends before the size. */
export type Listed = 'yes' | 'no' | 'beyond-table';

export interface Thread {
  /** As the trade writes it, with the pitch spelled out: `M8x1.25`, `1/2-13 UNC`, `#10-32 UNF`. */
  readonly designation: string;
  readonly system: ThreadSystem;
  readonly series: ThreadSeries;
  readonly listed: Listed;
  /** Whether the author wrote the pitch or the coarse (or named) series supplied it. */
  readonly pitchStated: boolean;
  readonly leftHand: boolean;
  /** d, m. */
  readonly nominalDiameter: number;
  /** P, m. */
  readonly pitch: number;
  /** Inch threads only. */
  readonly threadsPerInch?: number;
  /** d2 = d - 0.649519 P, m. */
  readonly pitchDiameter: number;
  /** d1 = d - 1.082532 P, m. */
  readonly minorDiameter: number;
  /** d3 = d - 1.226869 P, m. */
  readonly rootDiameter: number;
  /** As, m2. */
  readonly stressArea: number;
}

/** A thread, perhaps with notes (a pair that no table lists), or the reason why there is none. */
export type ThreadReading =
  | {
      readonly ok: true;
      readonly thread: Thread;
      readonly notes: readonly FasteningProblem[];
    }
  | { readonly ok: false; readonly problem: FasteningProblem };

/** One inch in metres, exact. */
export const INCH = 0.0254;
const MILLIMETRE = 0.001;

/**
 * Reads a thread designation: `M8x1.25`, `M8` (coarse), `M10x1 LH`, `1/2-13`, `3/8-24 UNF`, `#10-32`,
 * `1-1/8-7`, `1/2 UNC`, with or without a tolerance class (`-6g`, `-2A`). Never throws.
 */
export function readThread(text: string): ThreadReading {
  const written = text.trim().replace(/\s+/g, ' ');
  if (written === '')
    return refuse('thread-empty', 'No thread is given.', 'Write one, such as M8x1.25 or 1/2-13.');
  const other = otherThreadForm(written);
  if (other) return { ok: false, problem: other };
  const { rest, leftHand } = takeHand(written);
  if (/^M\s?\d/i.test(rest)) return readMetric(written, rest, leftHand);
  if (/^(?:#|no\.?\s?)?\d|^\.\d/i.test(rest)) return readUnified(written, rest, leftHand);
  return refuse(
    'thread-not-read',
    `"${short(written)}" is not a thread designation.`,
    'Write a metric thread as M8x1.25 and an inch thread as 1/2-13 or #10-32.',
  );
}

/** ISO 898-1: As = (pi/4)((d2 + d3)/2)^2, diameters in m, result in m2. */
export function metricStressArea(nominalDiameter: number, pitch: number): number {
  const { pitchDiameter, rootDiameter } = profileDiameters(nominalDiameter, pitch);
  return (Math.PI / 4) * ((pitchDiameter + rootDiameter) / 2) ** 2;
}

/** ASME B1.1: As = 0.7854 (D - 0.9743/n)^2, with D in m and the pitch 1/n in m, result in m2. */
export function unifiedStressArea(nominalDiameter: number, pitch: number): number {
  return (Math.PI / 4) * (nominalDiameter - 0.9743 * pitch) ** 2;
}

/** Diameters of the basic 60 degree profile; H = (sqrt 3 / 2) P, d3 = d1 - H/6. All in m. */
export function profileDiameters(
  nominalDiameter: number,
  pitch: number,
): { pitchDiameter: number; minorDiameter: number; rootDiameter: number } {
  const height = (Math.sqrt(3) / 2) * pitch;
  const minorDiameter = nominalDiameter - 1.25 * height;
  return {
    pitchDiameter: nominalDiameter - 0.75 * height,
    minorDiameter,
    rootDiameter: minorDiameter - height / 6,
  };
}

const METRIC =
  /^M ?(\d+(?:\.\d+)?)(?: ?[x×*-] ?(\d+(?:\.\d+)?)(?![\dA-Za-z]))?(?: ?- ?((?:\d[a-zA-Z]){1,2}))?$/i;
const METRIC_WITH_LENGTH = /^M ?(\d+(?:\.\d+)?) ?[x×*] ?(\d+(?:\.\d+)?) ?[x×*] ?\d+(?:\.\d+)?$/i;

function readMetric(written: string, rest: string, leftHand: boolean): ThreadReading {
  if (/\d,\d/.test(rest)) {
    return refuse(
      'thread-decimal-comma',
      `"${short(written)}" has a decimal comma.`,
      `Write ${short(rest.replace(/,/g, '.'))} with a point.`,
    );
  }
  const withLength = METRIC_WITH_LENGTH.exec(rest);
  if (withLength) {
    return refuse(
      'thread-with-length',
      `"${short(written)}" carries a bolt length, which is no part of the thread.`,
      `Write M${withLength[1]}x${withLength[2]}.`,
    );
  }
  const match = METRIC.exec(rest);
  if (!match) {
    return refuse(
      'thread-not-read',
      `"${short(written)}" is not a metric thread designation.`,
      'Write the diameter and, for a fine thread, the pitch in millimetres: M8 or M8x1.',
    );
  }
  const diameter = Number(match[1]);
  const size = METRIC_SIZES.find((row) => row.diameter === diameter);
  if (match[2] === undefined) {
    if (size?.coarse === undefined) return noCoarsePitch(diameter);
    return accept(metricThread(diameter, size.coarse, 'coarse', 'yes', false, leftHand), []);
  }
  const pitch = Number(match[2]);
  const misfit = pitchMisfit(written, diameter, pitch, size?.coarse);
  if (misfit) return { ok: false, problem: misfit };
  if (size?.coarse === pitch)
    return accept(metricThread(diameter, pitch, 'coarse', 'yes', true, leftHand), []);
  if (size?.fine.includes(pitch))
    return accept(metricThread(diameter, pitch, 'fine', 'yes', true, leftHand), []);
  const listed: Listed = diameter > lastMetricDiameter() ? 'beyond-table' : 'no';
  const thread = metricThread(diameter, pitch, 'unknown', listed, true, leftHand);
  return accept(
    thread,
    listed === 'no'
      ? [
          problem(
            'thread-not-standard',
            `ISO 261 lists no ${thread.designation}.`,
            metricRemedy(diameter, pitch),
          ),
        ]
      : [],
  );
}

const UNIFIED =
  /^(#|no\.? ?)?(\d+[- ]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)(?: ?(?:"|in\b))?(?: ?- ?(\d+(?:\.\d+)?)(?![\d/.]|[AB]\b))?(?: ?-? ?(UNR?C|UNR?F|UNR?EF|UNR?S|8 ?-?UN|UNR?|NC|NF))?(?: ?- ?([123][AB]))?$/i;

function readUnified(written: string, rest: string, leftHand: boolean): ThreadReading {
  const match = UNIFIED.exec(rest);
  if (!match) {
    return refuse(
      'thread-not-read',
      `"${short(written)}" is not an inch thread designation.`,
      'Write size and threads per inch with a hyphen: 1/2-13, #10-32 or 1-1/8-7.',
    );
  }
  const series = seriesName(match[4]);
  const threads = match[3] === undefined ? undefined : Number(match[3]);
  const size = inchSize(match[1] !== undefined, match[2] ?? '', threads);
  if (!(size.diameter > 0) || !Number.isFinite(size.diameter)) {
    return refuse(
      'thread-not-read',
      `"${short(written)}" has no usable diameter.`,
      'Write a size such as 1/2-13.',
    );
  }
  const ofSize = UNIFIED_SIZES.filter((row) => Math.abs(row.diameter - size.diameter) < 5e-5);
  if (threads === undefined) return unifiedBySeries(written, size, ofSize, series, leftHand);
  if (!(threads > 0) || 1.3 / threads >= size.diameter) {
    return refuse(
      'thread-pitch-too-large',
      `${threads} threads per inch leave no core in a thread of ${size.name} in.`,
      suggestUnified(ofSize, threads),
    );
  }
  const row = ofSize.find((candidate) => candidate.threadsPerInch === threads);
  if (row) {
    const thread = unifiedThread(row.size, size.diameter, threads, row.series, true, leftHand);
    const contradicts = series !== undefined && series !== 'UN' && series !== 'UNS' && series !== row.series;
    if (!contradicts) return accept(thread, []);
    const meant = ofSize.find((candidate) => candidate.series === series);
    return refuse(
      'thread-series-differs',
      `${row.size}-${threads} is ${row.series}, not ${series}.`,
      meant
        ? `Write ${nameOf(row)} or ${nameOf(meant)}.`
        : `Write ${nameOf(row)}; no ${series} thread of this size is listed.`,
    );
  }
  const thread = unifiedThread(size.name, size.diameter, threads, undefined, true, leftHand);
  return accept(thread, [
    problem(
      'thread-not-standard',
      `${size.name}-${threads} is in none of the Unified series.`,
      suggestUnified(ofSize, threads),
    ),
  ]);
}

function unifiedBySeries(
  written: string,
  size: InchSize,
  ofSize: readonly UnifiedSize[],
  series: string | undefined,
  leftHand: boolean,
): ThreadReading {
  const row = ofSize.find((candidate) => candidate.series === series);
  if (row)
    return accept(
      unifiedThread(row.size, size.diameter, row.threadsPerInch, row.series, false, leftHand),
      [],
    );
  return refuse(
    'thread-pitch-missing',
    series === undefined
      ? `"${short(written)}" does not say how many threads per inch.`
      : `No ${series} thread of ${size.name} in is listed.`,
    suggestUnified(ofSize, undefined),
  );
}

interface InchSize {
  readonly name: string;
  /** Inches. */
  readonly diameter: number;
}

/**
 * A bare whole number is a numbered size where its thread count can only be one (`10-32`, `8-36`): numbered
 * sizes have 24 threads per inch and more, whole-inch sizes at most 20.
 */
function inchSize(marked: boolean, size: string, threads: number | undefined): InchSize {
  if (/^\d+$/.test(size)) {
    const number = Number(size);
    const numbered = marked || number === 0 || (number <= 12 && (threads ?? 0) >= (number === 1 ? 48 : 22));
    if (numbered) return { name: `#${number}`, diameter: numberedDiameterInches(number) };
    return { name: String(number), diameter: number };
  }
  const fraction = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(size);
  if (fraction) {
    const whole = fraction[1] === undefined ? 0 : Number(fraction[1]);
    const name = `${fraction[1] === undefined ? '' : `${fraction[1]}-`}${fraction[2]}/${fraction[3]}`;
    return {
      name,
      diameter: whole + Number(fraction[2]) / Number(fraction[3]),
    };
  }
  return { name: size, diameter: Number(size) };
}

function metricThread(
  diameter: number,
  pitch: number,
  series: ThreadSeries,
  listed: Listed,
  pitchStated: boolean,
  leftHand: boolean,
): Thread {
  const nominalDiameter = diameter * MILLIMETRE;
  const metres = pitch * MILLIMETRE;
  return {
    designation: `M${diameter}x${pitch}${leftHand ? ' LH' : ''}`,
    system: 'metric',
    series,
    listed,
    pitchStated,
    leftHand,
    nominalDiameter,
    pitch: metres,
    ...profileDiameters(nominalDiameter, metres),
    stressArea: metricStressArea(nominalDiameter, metres),
  };
}

function unifiedThread(
  size: string,
  diameter: number,
  threadsPerInch: number,
  series: UnifiedSize['series'] | undefined,
  pitchStated: boolean,
  leftHand: boolean,
): Thread {
  const nominalDiameter = diameter * INCH;
  const pitch = INCH / threadsPerInch;
  return {
    designation: `${size}-${threadsPerInch}${series ? ` ${series}` : ''}${leftHand ? ' LH' : ''}`,
    system: 'inch',
    series: series ? SERIES_KIND[series] : 'unknown',
    listed: series ? 'yes' : 'no',
    pitchStated,
    leftHand,
    nominalDiameter,
    pitch,
    threadsPerInch,
    ...profileDiameters(nominalDiameter, pitch),
    stressArea: unifiedStressArea(nominalDiameter, pitch),
  };
}

const SERIES_KIND: Readonly<Record<UnifiedSize['series'], ThreadSeries>> = {
  UNC: 'coarse',
  UNF: 'fine',
  UNEF: 'extra-fine',
  '8UN': 'constant-pitch',
  UNS: 'special',
};

/** UNR (rounded root) and the older NC, NF name the same pitches. */
function seriesName(written: string | undefined): string | undefined {
  if (written === undefined) return undefined;
  const plain = written.toUpperCase().replace(/[ -]/g, '').replace('UNR', 'UN');
  if (plain === 'NC') return 'UNC';
  if (plain === 'NF') return 'UNF';
  return plain;
}

function pitchMisfit(
  written: string,
  diameter: number,
  pitch: number,
  coarse: number | undefined,
): FasteningProblem | undefined {
  if (diameter > 0 && pitch > 0 && pitch <= diameter / 2) return undefined;
  const meant = coarse === undefined ? '' : ` Did you mean M${diameter}x${coarse}?`;
  if (pitch >= diameter && diameter > 0) {
    return problem(
      'thread-pitch-too-large',
      `"${short(written)}" has a pitch of ${pitch} mm on a diameter of ${diameter} mm.`,
      `A bolt length is no part of the thread.${meant}`,
    );
  }
  return problem(
    'thread-pitch-too-large',
    `A pitch of ${pitch} mm does not fit a diameter of ${diameter} mm.`,
    `Give diameter and pitch in millimetres.${meant}`,
  );
}

function noCoarsePitch(diameter: number): ThreadReading {
  const size = METRIC_SIZES.find((row) => row.diameter === diameter);
  if (size) {
    return refuse(
      'thread-pitch-missing',
      `ISO 261 gives M${diameter} no coarse pitch.`,
      `Say the pitch: ${size.fine.map((pitch) => `M${diameter}x${pitch}`).join(', ')}.`,
    );
  }
  if (diameter > lastMetricDiameter()) {
    return refuse(
      'thread-pitch-missing',
      `The pitch of M${diameter} is not in the table, which ends at M${lastMetricDiameter()}.`,
      'Say the pitch.',
    );
  }
  const near = nearestCoarse(diameter).map((row) => `M${row.diameter}`);
  return refuse(
    'thread-size-unknown',
    `ISO 261 lists no M${diameter}.`,
    `Did you mean ${near.join(' or ')}? Otherwise say the pitch.`,
  );
}

function metricRemedy(diameter: number, pitch: number): string {
  const size = METRIC_SIZES.find((row) => row.diameter === diameter);
  if (!size) {
    const near = nearestCoarse(diameter).map((row) => `M${row.diameter}`);
    return `Did you mean ${near.join(' or ')}?`;
  }
  const pitches = [...(size.coarse === undefined ? [] : [size.coarse]), ...size.fine]
    .sort((a, b) => Math.abs(a - pitch) - Math.abs(b - pitch))
    .slice(0, 2);
  return `Did you mean ${pitches.map((each) => `M${diameter}x${each}`).join(' or ')}?`;
}

function nearestCoarse(diameter: number): { diameter: number }[] {
  return METRIC_SIZES.filter((row) => row.coarse !== undefined)
    .sort((a, b) => Math.abs(a.diameter - diameter) - Math.abs(b.diameter - diameter))
    .slice(0, 2)
    .sort((a, b) => a.diameter - b.diameter);
}

function suggestUnified(ofSize: readonly UnifiedSize[], threads: number | undefined): string {
  if (ofSize.length === 0)
    return 'Write size and threads per inch of a listed thread, such as 1/2-13 or #10-32.';
  const near = [...ofSize];
  if (threads !== undefined)
    near.sort((a, b) => Math.abs(a.threadsPerInch - threads) - Math.abs(b.threadsPerInch - threads));
  const names = near.slice(0, 2).map(nameOf);
  return threads === undefined ? `Write ${names.join(' or ')}.` : `Did you mean ${names.join(' or ')}?`;
}

function nameOf(row: UnifiedSize): string {
  return `${row.size}-${row.threadsPerInch} ${row.series}`;
}

function otherThreadForm(written: string): FasteningProblem | undefined {
  if (/\bNPT[FRS]?\b|\bBSP[PT]?\b|^(?:G|R|Rc|Rp) ?\d/i.test(written)) {
    return problem(
      'thread-not-a-fastener-thread',
      `"${short(written)}" is a pipe thread; no preload is worked out for it.`,
      'Leave the thread out, or give the torque alone.',
    );
  }
  if (/^Tr ?\d|\bACME\b|\bBSW\b|\bBSF\b|\bBA\b/i.test(written)) {
    return problem(
      'thread-form-unknown',
      `"${short(written)}" has a profile other than the 60 degree one of ISO metric and Unified threads.`,
      'Leave the thread out, or give the torque alone.',
    );
  }
  return undefined;
}

function takeHand(written: string): { rest: string; leftHand: boolean } {
  const match = /(?: |-| - )(LH|left[- ]hand|RH|right[- ]hand)$/i.exec(written);
  if (!match) return { rest: written, leftHand: false };
  return {
    rest: written.slice(0, match.index).trim(),
    leftHand: /^L/i.test(match[1] ?? ''),
  };
}

function lastMetricDiameter(): number {
  return METRIC_SIZES.at(-1)?.diameter ?? 0;
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

function accept(thread: Thread, notes: readonly FasteningProblem[]): ThreadReading {
  return { ok: true, thread, notes };
}

function refuse(code: string, message: string, remedy: string): ThreadReading {
  return { ok: false, problem: problem(code, message, remedy) };
}
