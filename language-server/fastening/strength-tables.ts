/**
 * Strength of bolts, screws and studs by class or grade and size. Data only; lookup is in strength.ts.
 * ISO 898-1 in MPa and millimetres, SAE J429 and ASTM in ksi and inches, as printed there.
 *
 * ISO 898-1: 4.6, 8.8, 10.9 and 12.9 were checked against a transcription; yield and tensile of the others
 * are from memory (their proof stresses agree with printed proof loads).
 * SAE J429 and ASTM: as in Shigley and Mischke, 5th ed. 1989. ASTM A354 BD above 2-1/2 in is lower in the
 * current edition (distrust list of the fixture), so its row ends there.
 */

export type StrengthStandard = 'ISO 898-1' | 'SAE J429' | 'ASTM';

export interface StrengthRow {
  readonly standard: StrengthStandard;
  /** `8.8`, `5`, `A325`. */
  readonly name: string;
  /** Smallest and largest nominal diameter, mm (ISO) or inches (SAE, ASTM), both included. */
  readonly from: number;
  readonly to: number;
  /** With this the smallest diameter itself is left out (8.8 above 16 mm). */
  readonly fromExcluded?: boolean;
  /** Sp, Rp0.2 or yield, and minimum tensile strength; MPa (ISO) or ksi (SAE, ASTM). */
  readonly proof: number;
  readonly yield: number;
  readonly tensile: number;
}

export const STRENGTH_ROWS: readonly StrengthRow[] = [
  ...iso('4.6', 3, 39, 225, 240, 400),
  ...iso('4.8', 3, 39, 310, 340, 420),
  ...iso('5.6', 3, 39, 280, 300, 500),
  ...iso('5.8', 3, 39, 380, 420, 520),
  ...iso('6.8', 3, 39, 440, 480, 600),
  ...iso('8.8', 3, 16, 580, 640, 800),
  ...iso('8.8', 16, 39, 600, 660, 830, true),
  ...iso('9.8', 3, 16, 650, 720, 900),
  ...iso('10.9', 3, 39, 830, 940, 1040),
  ...iso('12.9', 3, 39, 970, 1100, 1220),
  ...inch('SAE J429', '1', 0.25, 1.5, 33, 36, 60),
  ...inch('SAE J429', '2', 0.25, 0.75, 55, 57, 74),
  ...inch('SAE J429', '2', 0.875, 1.5, 33, 36, 60),
  ...inch('SAE J429', '4', 0.25, 1.5, 65, 100, 115),
  ...inch('SAE J429', '5', 0.25, 1, 85, 92, 120),
  ...inch('SAE J429', '5', 1.125, 1.5, 74, 81, 105),
  ...inch('SAE J429', '5.2', 0.25, 1, 85, 92, 120),
  ...inch('SAE J429', '7', 0.25, 1.5, 105, 115, 133),
  ...inch('SAE J429', '8', 0.25, 1.5, 120, 130, 150),
  ...inch('SAE J429', '8.2', 0.25, 1, 120, 130, 150),
  ...inch('ASTM', 'A307', 0.25, 1.5, 33, 36, 60),
  ...inch('ASTM', 'A325', 0.5, 1, 85, 92, 120),
  ...inch('ASTM', 'A325', 1.125, 1.5, 74, 81, 105),
  ...inch('ASTM', 'A354 BD', 0.25, 2.5, 120, 130, 150),
  ...inch('ASTM', 'A449', 0.25, 1, 85, 92, 120),
  ...inch('ASTM', 'A449', 1.125, 1.5, 74, 81, 105),
  ...inch('ASTM', 'A449', 1.75, 3, 55, 58, 90),
  ...inch('ASTM', 'A490', 0.5, 1.5, 120, 130, 150),
];

function iso(
  name: string,
  from: number,
  to: number,
  proof: number,
  yieldStress: number,
  tensile: number,
  fromExcluded = false,
): StrengthRow[] {
  const row = {
    standard: 'ISO 898-1',
    name,
    from,
    to,
    proof,
    yield: yieldStress,
    tensile,
  } as const;
  return [fromExcluded ? { ...row, fromExcluded } : row];
}

function inch(
  standard: StrengthStandard,
  name: string,
  from: number,
  to: number,
  proof: number,
  yieldStress: number,
  tensile: number,
): StrengthRow[] {
  return [{ standard, name, from, to, proof, yield: yieldStress, tensile }];
}
