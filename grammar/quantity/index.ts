/**
 * Quantities: units, exact numbers, reading, comparing and printing. No IO, nothing throws on what an
 * author typed: functions that can fail return `Outcome<T>` = `{ ok: true, value }` or
 * `{ ok: false, problem: { code, message, proposals, from?, to? } }`.
 *
 * For the lexer and completion
 *   matchUnit(text, offset): number        length of the unit that starts at offset (after the blanks
 *                                          behind a number, same line), ambiguous ones too; 0 if none
 *   unitByText(text): UnitLookup?          { is: 'unit', unit } | { is: 'ambiguous', spelling, readings }
 *   unitNamed('N·m'): Unit?                for code
 *   nearUnits(text): Unit[]                "did you mean": `nm` → N·m, `"` → in
 *   units, ambiguousUnits, allSpellings(unit), kinds     the tables
 * For the parser and the tree
 *   readQuantity(text): Outcome<Quantity>  the whole text of one quantity, offsets relative to it;
 *                                          remembered, so it may be called lazily and often
 *   typedNumber(text): TypedNumber?        one number token
 *   plainValue, rangeOf, toleranceOf, percentToleranceOf, oneSided, mixedOf, exactValue   from parts
 * For sentences
 *   findQuantities(sentence): { from, to, quantity }[]
 *   checkSecond(first, second): Outcome<{ verdict: 'agrees' | 'coarse' | 'differs', exact, typed }>
 * Comparing (exact, across units of one kind)
 *   relate(a, b): Outcome<'below' | 'above' | 'equal' | 'within' | 'around' | 'overlapping'>
 *   overlap(a, b), contains(outer, inner), liesWithin(typed, declared): Outcome<boolean>
 *   compareCentres(a, b): Outcome<-1 | 0 | 1>, gap(a, b): Outcome<Rational>, sameQuantity(a, b)
 * Calculating
 *   convert(q, unit), addQuantities, subtractQuantities, multiplyQuantities, divideQuantities
 *   unitsDiffer(a, b): QuantityProblem?, differenceUnit(unit), unitOfDimension(dimension), centre(q)
 * Printing
 *   printSource(q): string                 `5..60 N·m`; reads back as the same quantity
 *   printReader(q): string                 `5 to 60 N·m`
 *   roundedIn(q, unit): Outcome<Quantity>, printReaderIn(q, unit), printBoth(q, unit): Outcome<string>
 *   unitLabel(unit, many): string
 * Numbers: `rational` and the rest of rational.ts, as the namespace `exact` (`exact.add(a, b)`).
 *
 * A quantity is an interval: { form, unit, low?, high?, nominal?, step?, fraction?, percent?, parts? } with
 * form 'value' | 'range' | 'tolerance' | 'at least' | 'at most' | 'over' | 'below'. A plain value has
 * low = high = nominal.
 */

export {
  addQuantities,
  divideQuantities,
  multiplyQuantities,
  subtractQuantities,
  unitOfDimension,
} from './arithmetic.ts';
export { compareCentres, contains, gap, liesWithin, overlap, type Relation, relate } from './compare.ts';
export { convert, convertNumber, convertSize, differenceUnit, unitsDiffer } from './convert.ts';
export { type FoundQuantity, findQuantities } from './find.ts';
export { type Dimension, type Kind, type KindName, kindNamed, kinds } from './kinds.ts';
export { matchUnit, nearUnits, type UnitLookup, unitByText, unitNamed } from './lexical.ts';
export { printBoth, printReader, printReaderIn, printSource, roundedIn, unitLabel } from './print.ts';
export type { Outcome, QuantityProblem, QuantityProblemCode } from './problem.ts';
export {
  centre,
  exactValue,
  mixedOf,
  oneSided,
  percentToleranceOf,
  plainValue,
  type Quantity,
  type QuantityForm,
  rangeOf,
  sameQuantity,
  type TypedNumber,
  toleranceOf,
  typedNumber,
} from './quantity.ts';
export type { Rational } from './rational.ts';
export * as exact from './rational.ts';
export { readQuantity } from './read.ts';
export { checkSecond, type SecondCheck, type SecondVerdict } from './second.ts';
export { type AmbiguousUnit, allSpellings, ambiguousUnits, numberUnit, type Unit, units } from './units.ts';
