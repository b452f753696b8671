/**
 * A fastener sheet as text: one row a value, metric and inch side by side. Three or four digits, as much as the
 * inputs are worth. No colours and no width of a terminal; the caller decides where it goes.
 */

import type { Band, Known } from './problem.ts';
import type { FastenerSheet } from './sheet.ts';
import { KSI, MEGAPASCAL } from './strength.ts';
import type { Thread } from './threads.ts';
import { INCH } from './threads.ts';

/** Exact: 0.45359237 kg times standard gravity 9.80665 m/s2. */
const POUND_FORCE = 4.4482216152605;
const POUND_FORCE_INCH = POUND_FORCE * INCH;
const POUND_FORCE_FOOT = 12 * POUND_FORCE_INCH;

/** The words that stand under every sheet. */
export const SHEET_CAUTION = [
  'This is a computed guide. K is assumed where it is not stated, and real friction scatters.',
  "The machine's own documentation governs.",
] as const;

/** The whole sheet, ending with a line end. */
export function sheetText(sheet: FastenerSheet): string {
  const rows = [['', 'metric', 'inch'], ...threadRows(sheet), ...strengthRows(sheet), ...torqueRows(sheet)];
  const lines = [heading(sheet), '', ...table(rows)];
  if (sheet.notes.length > 0) {
    lines.push('');
    for (const { message, remedy } of sheet.notes)
      lines.push(`Note: ${message}${remedy ? ` ${remedy}` : ''}`);
  }
  lines.push('', ...SHEET_CAUTION);
  return `${lines.join('\n')}\n`;
}

function heading(sheet: FastenerSheet): string {
  const parts = [
    sheet.thread.known ? sheet.thread.value.designation : undefined,
    sheet.strength.known ? sheet.strength.value.title : undefined,
  ].filter((part) => part !== undefined);
  const what = parts.length > 0 ? parts.join(', ') : 'unknown thread';
  return sheet.name === undefined ? `Fastener: ${what}` : `${sheet.name}: ${what}`;
}

function threadRows({ thread }: FastenerSheet): string[][] {
  if (!thread.known) return [['Thread', unknownText(thread)]];
  const value = thread.value;
  return [
    ['Series', seriesText(value)],
    ['Diameter d', millimetres(value.nominalDiameter), inches(value.nominalDiameter)],
    ['Pitch P', millimetres(value.pitch), `${digits(INCH / value.pitch)} per in`],
    ['Pitch diameter d2', millimetres(value.pitchDiameter), inches(value.pitchDiameter)],
    ['Minor diameter d1', millimetres(value.minorDiameter), inches(value.minorDiameter)],
    ['Root diameter d3', millimetres(value.rootDiameter), inches(value.rootDiameter)],
    ['Stress area', `${digits(value.stressArea * 1e6)} mm²`, `${digits(value.stressArea / INCH ** 2)} in²`],
  ];
}

function strengthRows({ thread, strength, proofLoad }: FastenerSheet): string[][] {
  // A class on an unknown thread is unknown for the reason that is already printed.
  if (!strength.known) return thread.known ? [['Strength', unknownText(strength)]] : [];
  const stress = (pascals: number) => [`${digits(pascals / MEGAPASCAL)} MPa`, `${digits(pascals / KSI)} ksi`];
  const { proof, yield: yieldStress, tensile } = strength.value;
  return [
    ['Proof stress', ...stress(proof)],
    ['Yield, least', ...stress(yieldStress)],
    ['Tensile, least', ...stress(tensile)],
    proofLoad.known
      ? ['Proof load', kilonewtons(proofLoad.value), poundsForce(proofLoad.value)]
      : ['Proof load', unknownText(proofLoad)],
  ];
}

function torqueRows(sheet: FastenerSheet): string[][] {
  const { torque, nutFactor, preload, shareOfProof, usualTorque, angle } = sheet;
  const rows: string[][] = [];
  rows.push(torque.known ? ['Torque', ...torques(torque.value)] : ['Torque', unknownText(torque)]);
  rows.push(['Nut factor K', `${range(nutFactor, '', twoDecimals)} (${nutFactorText(sheet)})`]);
  if (torque.known && preload.known) {
    rows.push([
      'Preload',
      range(scaled(preload.value, 1000), ' kN'),
      range(scaled(preload.value, POUND_FORCE), ' lbf'),
    ]);
    if (shareOfProof.known)
      rows.push(['Share of proof load', range(scaled(shareOfProof.value, 0.01), ' %', whole)]);
  }
  if (sheet.setting.known) rows.push(['Wrench setting with adapter', ...torques(sheet.setting.value)]);
  if (usualTorque.known) rows.push(['Torque for 75 % of proof', ...torques(usualTorque.value)]);
  if (angle.known) {
    rows.push([
      `Advance in ${digits(angle.value.degrees)}°`,
      millimetres(angle.value.advance),
      inches(angle.value.advance),
    ]);
  }
  return rows;
}

function nutFactorText({ nutFactor, condition }: FastenerSheet): string {
  switch (nutFactor.from) {
    case 'stated':
      return 'as stated';
    case 'condition':
      return `${condition?.title ?? 'condition'}, usual ${condition?.usual ?? ''} with scatter`;
    case 'assumed':
      return 'assumed: nothing is said about the surface';
  }
}

function seriesText(thread: Thread): string {
  const system = thread.system === 'metric' ? 'ISO metric' : 'Unified inch';
  const hand = thread.leftHand ? ', left-hand' : '';
  if (thread.listed === 'yes') return `${system}, ${thread.series}${hand}`;
  return `${system}, ${thread.listed === 'no' ? 'in no series' : 'beyond the table'}${hand}`;
}

/** Below 20 N·m the inch trade counts in lbf·in (common practice, no source). */
function torques(torque: Band): [string, string] {
  const small = torque.high < 20;
  const inch = small ? POUND_FORCE_INCH : POUND_FORCE_FOOT;
  return [range(torque, ' N·m'), range(scaled(torque, inch), small ? ' lbf·in' : ' lbf·ft')];
}

function table(rows: readonly string[][]): string[] {
  const first = Math.max(...rows.map((row) => (row[0] ?? '').length));
  const second = Math.max(...rows.filter((row) => row.length > 2).map((row) => (row[1] ?? '').length));
  return rows.map(([label = '', metric = '', inch]) => {
    const left = `${label.padEnd(first)}  ${inch === undefined ? metric : metric.padEnd(second)}`;
    return (inch === undefined ? left : `${left}  ${inch}`).trimEnd();
  });
}

/** `at least` where there is no upper end. */
function range({ low, high }: Band, unit: string, print: (value: number) => string = digits): string {
  const from = print(low);
  if (!Number.isFinite(high)) return `at least ${from}${unit}`;
  const to = print(high);
  return from === to ? `${from}${unit}` : `${from} to ${to}${unit}`;
}

function scaled({ low, high }: Band, unit: number): Band {
  return { low: low / unit, high: high / unit };
}

function millimetres(metres: number): string {
  return `${digits(metres * 1000, 4)} mm`;
}

function inches(metres: number): string {
  return `${digits(metres / INCH, 4)} in`;
}

function kilonewtons(newtons: number): string {
  return `${digits(newtons / 1000)} kN`;
}

function poundsForce(newtons: number): string {
  return `${digits(newtons / POUND_FORCE)} lbf`;
}

function unknownText(value: Known<unknown>): string {
  if (value.known) return '';
  const { message, remedy } = value.problem;
  return `unknown: ${message}${remedy === undefined ? '' : ` ${remedy}`}`;
}

function whole(value: number): string {
  return value.toFixed(0);
}

function twoDecimals(value: number): string {
  return value.toFixed(2);
}

function digits(value: number, significant = 3): string {
  return String(Number(value.toPrecision(significant)));
}
