/** Times, masses and volumes in one unit each. Factors: SI Brochure, and the pound as 0.45359237 kg exactly. */
import type { Amount, Clause, Declaration } from './shape.ts';

const SECONDS: Record<string, number> = {
  s: 1,
  min: 60,
  h: 3600,
  hours: 3600,
  d: 86400,
  day: 86400,
  days: 86400,
};
const KILOGRAMS: Record<string, number> = { kg: 1, g: 0.001, t: 1000, lb: 0.45359237, lbs: 0.45359237 };
const LITRES: Record<string, number> = { L: 1, l: 1, mL: 0.001, ml: 0.001, dL: 0.1, cl: 0.01, cc: 0.001 };
const VOLTS: Record<string, number> = { V: 1, kV: 1000, mV: 0.001 };

const inUnit = (table: Record<string, number>) => (amount: Amount | undefined) => {
  const factor = amount && table[amount.unit];
  return factor === undefined ? undefined : amount!.value * factor;
};

export const seconds = inUnit(SECONDS);
export const kilograms = inUnit(KILOGRAMS);
export const litres = inUnit(LITRES);
export const volts = inUnit(VOLTS);

export function clauseOf(declaration: Declaration, name: string): Clause | undefined {
  return declaration.clauses.find(({ clause }) => clause === name);
}
