/**
 * Hazards: signal words by convention, which actions come near which hazards, what a notice says, what a person can
 * lift. Pure functions over plain data; knows nothing of the parser, the model or any file. Nothing here certifies
 * that work is safe.
 *
 * - signal-words.ts: `signalFor(harm, convention)`, `isMilder`, `meaningOf`
 * - activities.ts: `isNear`, `isNearSystem`, `begins`, words after `when`
 * - notice-sentences.ts: `noticeParts(sentence)`, `instructionsIn(sentence)`
 * - lifting-filter.ts: the HSE filter; `liftWeight`, `teamWeight`, `mostByHand`
 * - lifting-equation.ts: the NIOSH equation; `recommendedWeight`, `liftingIndex`
 */

export * from './activities.ts';
export * from './lifting-equation.ts';
export * from './lifting-filter.ts';
export * from './notice-sentences.ts';
export * from './signal-words.ts';
