/** The checks on names, quantities, machine files and the text itself. */
import type { Check } from './check.ts';
import { torqueDiffers } from './fastening/torque-differs.ts';
import { contractBroken } from './flow/contract-broken.ts';
import { clauseMisplaced } from './machine/clause-misplaced.ts';
import { countDiffers } from './machine/count-differs.ts';
import { coverCycle } from './machine/cover-cycle.ts';
import { holdsNothing } from './machine/holds-nothing.ts';
import { outOfReach } from './machine/out-of-reach.ts';
import { seatCycle } from './machine/seat-cycle.ts';
import { duplicateName } from './names/duplicate-name.ts';
import { fileMissing } from './names/file-missing.ts';
import { machineMissing } from './names/machine-missing.ts';
import { pictureOutside } from './names/picture-outside.ts';
import { procedureMissing } from './names/procedure-missing.ts';
import { unknownName } from './names/unknown-name.ts';
import { unknownPosition } from './names/unknown-position.ts';
import { unusedName } from './names/unused-name.ts';
import { useCycle } from './names/use-cycle.ts';
import { wrongKind } from './names/wrong-kind.ts';
import { decimalComma } from './quantities/decimal-comma.ts';
import { quantityMalformed } from './quantities/quantity-malformed.ts';
import { rangeReversed } from './quantities/range-reversed.ts';
import { secondUnitDiffers } from './quantities/second-unit-differs.ts';
import { toleranceUnit } from './quantities/tolerance-unit.ts';
import { unitAmbiguous } from './quantities/unit-ambiguous.ts';
import { unitMissing } from './quantities/unit-missing.ts';
import { unitWrongKind } from './quantities/unit-wrong-kind.ts';
import { badCharacter } from './text/bad-character.ts';
import { braceMissing } from './text/brace-missing.ts';
import { nestedTooDeep } from './text/nested-too-deep.ts';
import { syntax } from './text/syntax.ts';
import { textNotClosed } from './text/text-not-closed.ts';
import { unknownVerb } from './text/unknown-verb.ts';

export const NAMES: readonly Check[] = [
  unknownName,
  wrongKind,
  unknownPosition,
  duplicateName,
  unusedName,
  useCycle,
  fileMissing,
  machineMissing,
  procedureMissing,
  pictureOutside,
];

export const QUANTITIES: readonly Check[] = [
  torqueDiffers,
  secondUnitDiffers,
  unitMissing,
  unitWrongKind,
  unitAmbiguous,
  toleranceUnit,
  rangeReversed,
  quantityMalformed,
  decimalComma,
];

export const CONTRACTS: readonly Check[] = [contractBroken];

export const MACHINE: readonly Check[] = [
  clauseMisplaced,
  holdsNothing,
  seatCycle,
  coverCycle,
  outOfReach,
  countDiffers,
];

export const TEXT: readonly Check[] = [
  syntax,
  braceMissing,
  textNotClosed,
  unknownVerb,
  badCharacter,
  nestedTooDeep,
];
