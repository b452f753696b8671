/**
 * Threads, strengths, torque and preload, tightening orders, wrench settings. Pure functions over plain data;
 * knows nothing of the parser, the model or any file. SI inside: N, m, N·m, Pa; angles in degrees. What cannot
 * be known is `{ known: false, problem }` with a reason; nothing here throws on what an author typed.
 *
 * - threads.ts: `readThread(text)`, stress areas and profile diameters
 * - thread-tables.ts: ISO 261 and ASME B1.1 pairs
 * - strength.ts, strength-tables.ts: `strengthOf(class, thread)`, `proofLoad`, `proofLoadOf`, `strengthNames`
 * - nut-factors.ts: usual K by surface, `nutFactorFor(words)`, scatter by way of tightening
 * - preload.ts: T = K d F both ways, `preloadBand`, long form, VDI 2230 form
 * - angle.ts: `nutAdvance`, turns, `suspiciousAngle`
 * - layout.ts: circles, rows, explicit positions; `placesOf`, `positionNamed`
 * - orders.ts: `crossOrder`, `acrossOrder`, `fromMiddleOrder`, `circularOrder`, `reverseOrder`
 * - order-checks.ts: `isCompleteOrder`, `isAcross`, `startsFromMiddle`, `isReverseOf`, with reasons
 * - wrench.ts: `wrenchFit`, `bestWrench`, adapter settings, prevailing torque, ISO 6789 deviation
 * - sheet.ts, sheet-text.ts: `fastenerSheet(facts)` and `sheetText(sheet)`
 */

export * from './angle.ts';
export * from './layout.ts';
export * from './nut-factors.ts';
export * from './order-checks.ts';
export * from './orders.ts';
export * from './preload.ts';
export * from './problem.ts';
export * from './rings.ts';
export * from './sheet.ts';
export * from './sheet-text.ts';
export * from './strength.ts';
export * from './strength-tables.ts';
export * from './thread-tables.ts';
export * from './threads.ts';
export * from './wrench.ts';
