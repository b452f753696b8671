/**
 * Sentences for the technician, read as text: English words only, nothing of the machine. What cannot be told for
 * certain is left alone; findings from here are quiet.
 *
 * - sentences.ts: `sentencesIn(text)`, `countWords(sentence)` as ASD-STE100 counts
 * - commands.ts: `isCommand(clause)`, `isInstruction(sentence)`
 * - instructions.ts: `secondInstructionIn`, `notImperativeIn`, `approximateIn`
 * - word-lists.ts: `VAGUE`, `latin()`, `SAME_THING`
 * - place.ts: from a place in a text's value to the place in the file
 */
export * from './commands.ts';
export * from './instructions.ts';
export * from './sentences.ts';
export * from './word-lists.ts';
