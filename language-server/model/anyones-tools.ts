/** Things that every workshop has: they may be named without being declared. */
export const ANYONES_TOOLS: ReadonlySet<string> = new Set([
  'hoist',
  'padlock',
  'helper',
  'brush',
  'rag',
  'cloth',
  'solvent',
  'compressed-air',
  'fingers',
]);
